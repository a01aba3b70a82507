using System.Globalization;
using System.Net.Http;
using System.Net.Sockets;
using System.Security.Authentication;
using Grpc.Core;

namespace StudioCalc.Client;

/// <summary>Words a failure so that its reader knows where to look.</summary>
internal static class ErrorText
{
    private const int Http2ProtocolError = 0x1;
    private const int Http2Http11Required = 0xd;

    public static string Of(RpcException error, TimeSpan timeout, string? trouble)
    {
        if (error.StatusCode == StatusCode.DeadlineExceeded)
        {
            return string.Create(CultureInfo.InvariantCulture,
                $"No answer by the deadline, after the timeout of {timeout.TotalSeconds} s. {trouble ?? "The host is slow, or out of reach."}");
        }

        var causes = CausesOf(error).ToList();
        var text = causes.Exists(IsWrongPort)
            ? "The port seems not to speak HTTP/2, which gRPC needs. In clear text a host serves gRPC and HTTP/1.1 on two ports: "
                + "take the one for gRPC. Behind a proxy, check that it passes HTTP/2."
            : causes.Exists(IsTls)
            ? "No TLS connection could be made: either the port speaks clear text, which an http address asks for, or its "
                + "certificate is not trusted here."
            : causes.Exists(IsCutOff)
            ? "The connection broke without an answer: the host went away, or the port does not speak HTTP/2, or it wants TLS, which an "
                + "https address asks for."
            : $"{error.StatusCode}: {error.Status.Detail}";
        return causes.LastOrDefault() is { } cause && !text.Contains(cause.Message, StringComparison.Ordinal)
            ? $"{text} ({cause.Message})"
            : text;
    }

    // A server that knows HTTP/2 says that it wants HTTP/1.1; from any other the answer is garbage.
    private static bool IsWrongPort(Exception cause) =>
        cause is HttpProtocolException { ErrorCode: Http2ProtocolError or Http2Http11Required };

    private static bool IsTls(Exception cause) =>
        cause is AuthenticationException or HttpRequestException { HttpRequestError: HttpRequestError.SecureConnectionError };

    private static bool IsCutOff(Exception cause) =>
        cause is IOException or HttpRequestException or SocketException { SocketErrorCode: SocketError.ConnectionReset };

    private static IEnumerable<Exception> CausesOf(RpcException error)
    {
        for (var cause = error.Status.DebugException; cause is not null; cause = cause.InnerException)
        {
            yield return cause;
        }
    }
}
