using Google.Rpc;
using Grpc.Core;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>What a refusal says.</summary>
internal sealed record Refused(Code Code, string? Reason, IReadOnlyList<string> Fields)
{
    public static async Task<Refused> ByAsync<T>(AsyncUnaryCall<T> call)
    {
        var error = await Assert.ThrowsAsync<RpcException>(() => call.ResponseAsync);
        return Of(error.GetRpcStatus() ?? new() { Code = (int)error.StatusCode, Message = error.Status.Detail });
    }

    public static Refused Of(Google.Rpc.Status status) => new(
        (Code)status.Code,
        status.GetDetail<ErrorInfo>()?.Reason,
        [.. (status.GetDetail<BadRequest>()?.FieldViolations ?? []).Select(violation => $"{violation.Field} {violation.Reason}")]);

    public static void Same(Refused expected, Refused actual)
    {
        Assert.Equal((expected.Code, expected.Reason), (actual.Code, actual.Reason));
        Assert.Equal(expected.Fields, actual.Fields);
    }
}
