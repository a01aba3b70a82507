using Google.Rpc;
using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;
using Status = Google.Rpc.Status;

namespace StudioCalc.Client;

/// <summary>Turns gRPC errors into the exceptions of this client.</summary>
internal static class Errors
{
    private const string RequestIdHeader = "x-request-id";

    private static readonly Dictionary<string, RefusalReason> Reasons =
        Enum.GetValues<RefusalReason>().ToDictionary(Refusal.NameOf, StringComparer.Ordinal);

    public static StudioCalcException Of(RpcException error, Metadata? headers, TimeSpan timeout, string? trouble)
    {
        var details = error.Trailers.GetRpcStatus(ignoreParseError: true);
        var reason = details?.GetDetail<ErrorInfo>() is { Domain: Contract.ErrorDomain } info ? ReasonOf(info.Reason) : (RefusalReason?)null;
        var requestId = error.Trailers.GetValue(RequestIdHeader) ?? headers?.GetValue(RequestIdHeader);
        return error.StatusCode == StatusCode.InvalidArgument
            ? new InvalidRequestException(error.Status.Detail, ViolationsOf(details), error) { Reason = reason, RequestId = requestId }
            : new StudioCalcException(error.StatusCode, ErrorText.Of(error, timeout, trouble), error)
            {
                Reason = reason,
                RequestId = requestId,
                RetryAfter = details?.GetDetail<RetryInfo>()?.RetryDelay?.ToTimeSpan(),
            };
    }

    private static FieldViolation[] ViolationsOf(Status? details) =>
    [
        .. (details?.GetDetail<BadRequest>()?.FieldViolations ?? [])
            .Select(violation => new FieldViolation(violation.Field, ReasonOf(violation.Reason), violation.Description)),
    ];

    private static RefusalReason ReasonOf(string name) => Reasons.GetValueOrDefault(name);
}
