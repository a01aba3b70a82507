extern alias evaluated;

using System.Reflection;
using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;
using StudioCalc.Tests;
using Evaluator = evaluated::StudioCalc.Contracts.Evaluated.Evaluator;

namespace StudioCalc.Services.Tests;

/// <summary>Holds the checks against a general evaluator of the same annotations.</summary>
/// <remarks>
/// The contract is compiled twice, the second time against the evaluator's own types; messages pass as bytes. Both sides are brought to the set of (path, reason):
/// a oneof's path ends in its own name on both sides; the evaluator's rule identifiers become the contract's reasons;
/// several broken rules of one reason at one path count once; and items of a list with too many of them are left out,
/// as the checks do not look at those. Durations are normal here; the evaluator does not look for others.
/// </remarks>
public sealed class EvaluatorComparisonTests
{
    private static readonly string[] Names =
        [.. Contract.Files.SelectMany(file => file.MessageTypes).Where(HasRules).Select(type => type.FullName)];

    public static TheoryData<string> MessagesWithRules => [.. Names];

    [Fact]
    public void EveryRequestThatTakesValues_IsCompared() => Assert.Subset(
        Names.ToHashSet(StringComparer.Ordinal),
        Contract.Services.SelectMany(service => service.Methods).Select(method => method.InputType)
            .Where(type => type.Fields.InDeclarationOrder().Count > 0).Select(type => type.FullName).ToHashSet(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(MessagesWithRules))]
    public void RandomMessage_CheckedByBoth_BreaksTheSameRules(string name)
    {
        var type = Contract.Files.SelectMany(file => file.MessageTypes).Single(candidate => candidate.FullName == name);
        var check = CheckOf(type);
        // A message of many kinds of messages needs fewer: each kind that has rules is compared by itself as well.
        var samples = Math.Clamp(800 / KindsIn(type).Count, 24, 400);
        var (broken, held) = (0, 0);
        new RandomMessage(RandomValues.Boundary).Of(type).Sample(
            message =>
            {
                var ours = check(message);
                Assert.Equal(ByEvaluator(message), ours);
                _ = ours.Count > 0 ? broken++ : held++;
            },
            iter: samples,
            threads: 1,
            print: message => message.ToString()!);
        new RandomMessage(RandomValues.Valid).Of(type).Sample(
            message =>
            {
                Assert.Empty(check(message));
                Assert.Empty(ByEvaluator(message));
            },
            iter: samples / 4,
            threads: 1,
            print: message => message.ToString()!);
        Assert.True(broken > 0, $"{broken} of {broken + held} broke a rule");
    }

    private static bool HasRules(MessageDescriptor type) =>
        type.Oneofs.Any(oneof => !oneof.IsSynthetic && FieldRules.IsRequired(oneof))
        || type.Fields.InDeclarationOrder().Any(field => FieldRules.Of(field) != new FieldRules());

    private static HashSet<MessageDescriptor> KindsIn(MessageDescriptor type)
    {
        HashSet<MessageDescriptor> found = [];
        Add(type);
        return found;

        void Add(MessageDescriptor one)
        {
            if (found.Add(one))
            {
                one.Fields.InDeclarationOrder().Where(field => field.FieldType == FieldType.Message).ToList().ForEach(field => Add(field.MessageType));
            }
        }
    }

    private static SortedSet<(string Path, string Reason)> ByEvaluator(IMessage message)
    {
        var found = Evaluator.BrokenRules(message.Descriptor.FullName, message.ToByteArray())
            .Select(broken => (broken.Path, ReasonOf(broken.Rule))).ToHashSet();
        var lists = found.Where(one => one.Item2 == "ITEM_COUNT").Select(one => one.Item1 + "[").ToList();
        return [.. found.Where(one => !lists.Exists(list => one.Item1.StartsWith(list, StringComparison.Ordinal)))];
    }

    private static string ReasonOf(string rule) => rule.Split('.') switch
    {
        ["required"] => "REQUIRED",
        ["double" or "uint32" or "int32" or "sint32" or "duration", ..] => "OUT_OF_RANGE",
        ["enum", ..] => "UNKNOWN_VALUE",
        ["string", "min_len" or "max_len"] => "TEXT_LENGTH",
        ["repeated", "min_items" or "max_items"] => "ITEM_COUNT",
        _ => throw new NotSupportedException(rule),
    };

    private static Func<IMessage, SortedSet<(string Path, string Reason)>> CheckOf(MessageDescriptor type)
    {
        var check = typeof(EvaluatorComparisonTests).GetMethod(nameof(Check), BindingFlags.NonPublic | BindingFlags.Static)!
            .MakeGenericMethod(type.ClrType);
        return message => (SortedSet<(string, string)>)check.Invoke(null, [message])!;
    }

    private static SortedSet<(string Path, string Reason)> Check<T>(T message)
        where T : class, IMessage<T>
    {
        var violations = new Violations();
        var holds = MessageCheck<T>.Instance.Check(message, "", violations);
        Assert.Equal(!violations.Any, holds);
        Assert.Equal(holds, MessageCheck<T>.Instance.Check(message, "", null));
        return [.. violations.List.Select(violation => (violation.Field, violation.Reason))];
    }
}
