using System.Globalization;
using System.Net.Http;
using Grpc.Core;

namespace StudioCalc.Client;

/// <summary>Words a failure so that its reader knows where to look.</summary>
internal static class ErrorText
{
    private const int Http11Required = 0xd;

    public static string Of(RpcException error, TimeSpan timeout)
    {
        var causes = CausesOf(error).ToList();
        if (causes.Exists(IsWrongPort))
        {
            return "The port does not speak HTTP/2, which gRPC needs. In clear text a host serves gRPC and HTTP/1.1 on two ports: "
                + "take the one for gRPC. Behind a proxy, check that it passes HTTP/2.";
        }

        var text = error.StatusCode == StatusCode.DeadlineExceeded
            ? string.Create(CultureInfo.InvariantCulture,
                $"No answer within the timeout of {timeout.TotalSeconds} s: the host is slow, or out of reach.")
            : $"{error.StatusCode}: {error.Status.Detail}";
        return causes.LastOrDefault() is { } cause && !text.Contains(cause.Message, StringComparison.Ordinal)
            ? $"{text} ({cause.Message})"
            : text;
    }

    private static bool IsWrongPort(Exception cause) => cause is
        HttpProtocolException { ErrorCode: Http11Required }
        or HttpRequestException { HttpRequestError: HttpRequestError.VersionNegotiationError };

    private static IEnumerable<Exception> CausesOf(RpcException error)
    {
        for (var cause = error.Status.DebugException; cause is not null; cause = cause.InnerException)
        {
            yield return cause;
        }
    }
}
