using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using NCalc;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>The working can be redone: an independent evaluator reads each expression with the symbols before it.</summary>
public sealed class WorkingTests
{
    public static TheoryData<string> CallNames => [.. RandomRequests.Methods.Select(method => $"{method.Service.Name}.{method.Name}")];

    public static TheoryData<string> CallNamesWithWorking =>
    [
        .. RandomRequests.Methods.Where(method => method.InputType.FindFieldByName("include_working") is not null)
            .Select(method => $"{method.Service.Name}.{method.Name}"),
    ];

    [Theory]
    [MemberData(nameof(CallNamesWithWorking))]
    public void Working_OfRandomRequests_IsRedoneByAnIndependentEvaluator(string call) => RandomRequests.Sample(Calls.Method(call), 600, (request, answer) =>
    {
        var asked = (bool)request.Descriptor.FindFieldByName("include_working").Accessor.GetValue(request);
        foreach (var (holder, working) in Workings(answer))
        {
            Assert.Equal(asked, working.Count > 0);
            Redo(working);
            Fields(holder, working);
        }
    });

    [Fact]
    public void Working_NotAskedFor_IsNone()
    {
        var (exposure, balance) = (Examples.Exposure(), Examples.Balance());
        exposure.IncludeWorking = balance.IncludeWorking = false;
        Assert.Empty(Calls.Exposure.EvaluateExposure(exposure).Working);
        Assert.All(Calls.LightingRatio.BalanceFill(balance).Ways, way => Assert.Empty(way.Working));
    }

    [Theory]
    [MemberData(nameof(CallNamesWithWorking))]
    public void Working_AskedForOrNot_LeavesTheAnswerAsItIs(string call) => RandomRequests.Sample(Calls.Method(call), 200, (request, answer) =>
    {
        var other = request.Descriptor.Parser.ParseFrom(request.ToByteArray());
        var asked = request.Descriptor.FindFieldByName("include_working");
        asked.Accessor.SetValue(other, !(bool)asked.Accessor.GetValue(request));
        var second = Calls.CallAsync(Calls.Method(call), other).GetAwaiter().GetResult();
        foreach (var (_, working) in Workings(answer).Concat(Workings(second)))
        {
            working.Clear();
        }

        Assert.Equal(answer, second);
    });

    // Every message of the answer that has a working.
    private static IEnumerable<(IMessage Holder, Google.Protobuf.Collections.RepeatedField<WorkingStep> Working)> Workings(IMessage message)
    {
        foreach (var field in message.Descriptor.Fields.InDeclarationOrder().Where(field => field.FieldType == FieldType.Message && !field.IsMap))
        {
            if (field.Accessor.GetValue(message) is Google.Protobuf.Collections.RepeatedField<WorkingStep> working)
            {
                yield return (message, working);
                continue;
            }

            var inner = field.IsRepeated
                ? ((System.Collections.IEnumerable)field.Accessor.GetValue(message)).Cast<IMessage>()
                : field.Accessor.HasValue(message) ? [(IMessage)field.Accessor.GetValue(message)] : [];
            foreach (var found in inner.SelectMany(Workings))
            {
                yield return found;
            }
        }
    }

    private static void Redo(IEnumerable<WorkingStep> working)
    {
        var symbols = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var step in working)
        {
            Assert.NotEmpty(step.Symbol);
            Assert.NotEmpty(step.Section);
            Assert.NotEmpty(step.Source);
            if (step.Expression.Length > 0)
            {
                var value = Evaluate(step.Expression, symbols);
                var size = Math.Max(1, Math.Abs(step.Value));
                Assert.True(Math.Abs(value - step.Value) <= 1e-9 * size, $"{step.Symbol} = {step.Expression}: {value} instead of {step.Value}");
            }

            symbols[step.Symbol] = step.Value;
        }
    }

    private static double Evaluate(string text, Dictionary<string, object> symbols)
    {
        var expression = new Expression(text, CultureInfo.InvariantCulture);
        foreach (var (symbol, value) in symbols)
        {
            expression.Parameters[symbol] = value;
        }

        expression.Functions["Log"] = x => Math.Log(Number(x.Evaluate(0)));
        expression.Functions["Log2"] = x => Math.Log2(Number(x.Evaluate(0)));
        expression.Functions["Pow"] = x => Math.Pow(Number(x.Evaluate(0)), Number(x.Evaluate(1)));
        expression.Functions["Round"] = x => Math.Round(Number(x.Evaluate(0)), MidpointRounding.ToEven);
        return Number(expression.Evaluate());
    }

    private static double Number(object? value) => Convert.ToDouble(value, CultureInfo.InvariantCulture);

    private static void Fields(IMessage holder, Google.Protobuf.Collections.RepeatedField<WorkingStep> working)
    {
        foreach (var step in working.Where(step => step.AnswerField.Length > 0))
        {
            var value = Calls.ValueAt(holder, step.AnswerField);

            // Process times are kept to the nanosecond.
            var rounding = value is Google.Protobuf.WellKnownTypes.Duration ? 1e-9 : 0;
            Assert.True(
                value is not null && Math.Abs(Calls.Number(value) - step.Value) <= rounding, $"{step.AnswerField} is {value}; {step.Symbol} is {step.Value}");
        }

        if (working.Count > 0)
        {
            Assert.NotEmpty(working[^1].AnswerField);
        }
    }
}
