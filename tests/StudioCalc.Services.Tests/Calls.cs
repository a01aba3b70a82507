using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;
using Status = Google.Rpc.Status;

namespace StudioCalc.Services.Tests;

/// <summary>Calls as a caller makes them, by object or by JSON.</summary>
internal static class Calls
{
    private static readonly MethodTable Methods = new();

    public static readonly ExposureService.ExposureServiceClient Exposure = new(new InProcessCallInvoker());

    public static readonly DepthOfFieldService.DepthOfFieldServiceClient DepthOfField = new(new InProcessCallInvoker());

    public static readonly FillPlacementService.FillPlacementServiceClient FillPlacement = new(new InProcessCallInvoker());

    public static readonly FreshnessService.FreshnessServiceClient Freshness = new(new InProcessCallInvoker());

    public static readonly PlateViewService.PlateViewServiceClient PlateView = new(new InProcessCallInvoker());

    public static readonly ShootPlanService.ShootPlanServiceClient ShootPlan = new(new InProcessCallInvoker());

    public static readonly LightingRatioService.LightingRatioServiceClient LightingRatio = new(new InProcessCallInvoker());

    /// <summary>The method that a short name such as <c>ExposureService.EvaluateExposure</c> means.</summary>
    public static MethodDescriptor Method(string name) =>
        Contract.Services.SelectMany(service => service.Methods).SingleOrDefault(method => $"{method.Service.Name}.{method.Name}" == name)
        ?? throw new KeyNotFoundException($"The contract has no call {name}.");

    /// <summary>The answer; the last one of a stream.</summary>
    public static async Task<IMessage> CallAsync(MethodDescriptor method, IMessage request)
    {
        var name = Contract.FullMethodName(method);
        using var context = new InProcessCallContext(name, null, null, CancellationToken.None);
        if (!method.IsServerStreaming)
        {
            return await Methods.CallAsync(name, request, context);
        }

        IMessage? last = null;
        await Methods.StreamAsync(
            name,
            request,
            answer =>
            {
                last = answer;
                return Task.CompletedTask;
            },
            context);
        return last!;
    }

    public static T Parse<T>(string json)
        where T : IMessage, new()
    {
        var message = new T();
        var violations = new Violations();
        ContractJson.Read(message, System.Text.Encoding.UTF8.GetBytes(json), violations);
        return violations.Any ? throw new FormatException(violations.List[0].Field + ": " + violations.List[0].Description) : message;
    }

    /// <summary>The bad fields with their reasons, or none when the call is answered.</summary>
    public static IReadOnlyList<(string Field, string Reason)> Refused(Action call)
    {
        try
        {
            call();
            return [];
        }
        catch (RpcException error)
        {
            return Fields(error);
        }
    }

    public static IReadOnlyList<(string Field, string Reason)> Fields(RpcException error)
    {
        Assert.Equal(StatusCode.InvalidArgument, error.StatusCode);
        return [.. Details(error).Unpack<BadRequest>().FieldViolations.Select(violation => (violation.Field, violation.Reason))];
    }

    public static string Describe(RpcException error) =>
        string.Join(' ', Details(error).Unpack<BadRequest>().FieldViolations.Select(violation => violation.Description));

    public static Status StatusOf(RpcException error) => error.GetRpcStatus() ?? throw new InvalidOperationException("No details.");

    private static Google.Protobuf.WellKnownTypes.Any Details(RpcException error) => StatusOf(error).Details[1];

    /// <summary>The value at a path such as <c>ways[0].solution.ratio</c>; null when a part of it is not set.</summary>
    /// <exception cref="KeyNotFoundException">The contract has no such field.</exception>
    public static object? ValueAt(IMessage message, string path)
    {
        object? value = message;
        foreach (var part in path.Split('.'))
        {
            var (name, index) = Split(part);
            if (value is not IMessage inner)
            {
                return null;
            }

            var field = inner.Descriptor.FindFieldByName(name) ?? throw new KeyNotFoundException($"{inner.Descriptor.Name} has no field {name}.");
            if (field.HasPresence && !field.IsRepeated && !field.Accessor.HasValue(inner))
            {
                return null;
            }

            value = field.Accessor.GetValue(inner);
            if (index is { } i)
            {
                value = ((System.Collections.IList)value)[i];
            }

            if (field.FieldType == FieldType.Enum && value is Enum)
            {
                value = field.EnumType.FindValueByNumber(Convert.ToInt32(value, CultureInfo.InvariantCulture)).Name;
            }
        }

        return value;
    }

    /// <summary>A value of an answer as a number; a process time in seconds.</summary>
    public static double Number(object value) =>
        value is Google.Protobuf.WellKnownTypes.Duration time ? time.ToSeconds() : Convert.ToDouble(value, CultureInfo.InvariantCulture);

    private static (string Name, int? Index) Split(string part) => part.IndexOf('[') is var at && at < 0
        ? (part, null)
        : (part[..at], int.Parse(part.AsSpan(at + 1, part.Length - at - 2), CultureInfo.InvariantCulture));
}
