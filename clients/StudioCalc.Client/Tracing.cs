using System.Diagnostics;
using Grpc.Core;
using Grpc.Core.Interceptors;

namespace StudioCalc.Client;

/// <summary>Makes one activity a call, named and tagged by OpenTelemetry's semantic conventions for RPC. Without a listener it
/// costs nothing.</summary>
/// <param name="server">Where the calls go, where that is one place.</param>
internal sealed class Tracing(Uri? server) : Interceptor
{
    private static readonly ActivitySource Source = new(StudioCalcClient.ActivitySourceName);

    public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
        TRequest request, ClientInterceptorContext<TRequest, TResponse> context, AsyncUnaryCallContinuation<TRequest, TResponse> continuation)
    {
        var method = context.Method;
        if (Source.StartActivity(method.FullName[1..], ActivityKind.Client) is not { } activity)
        {
            return continuation(request, context);
        }

        activity.SetTag("rpc.system", "grpc").SetTag("rpc.service", method.ServiceName).SetTag("rpc.method", method.Name);
        if (server is { Host.Length: > 0 })
        {
            activity.SetTag("server.address", server.Host).SetTag("server.port", server.Port);
        }

        var call = continuation(request, context);
        return new(EndAsync(call.ResponseAsync, activity), call.ResponseHeadersAsync, call.GetStatus, call.GetTrailers, call.Dispose);
    }

    private static async Task<TResponse> EndAsync<TResponse>(Task<TResponse> response, Activity activity)
    {
        using (activity)
        {
            try
            {
                var answer = await response.ConfigureAwait(false);
                activity.SetTag("rpc.grpc.status_code", (int)StatusCode.OK);
                return answer;
            }
            catch (RpcException error)
            {
                activity.SetTag("rpc.grpc.status_code", (int)error.StatusCode)
                    .SetTag("error.type", error.StatusCode.ToString())
                    .SetStatus(ActivityStatusCode.Error, error.Status.Detail);
                throw;
            }
        }
    }
}
