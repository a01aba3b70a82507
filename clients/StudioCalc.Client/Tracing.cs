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
        if (Start(context.Method) is not { } activity)
        {
            return continuation(request, context);
        }

        var call = continuation(request, context);
        return new(EndAsync(call.ResponseAsync, activity), call.ResponseHeadersAsync, call.GetStatus, call.GetTrailers, call.Dispose);
    }

    public override AsyncServerStreamingCall<TResponse> AsyncServerStreamingCall<TRequest, TResponse>(
        TRequest request, ClientInterceptorContext<TRequest, TResponse> context,
        AsyncServerStreamingCallContinuation<TRequest, TResponse> continuation)
    {
        if (Start(context.Method) is not { } activity)
        {
            return continuation(request, context);
        }

        var call = continuation(request, context);
        return new(
            new Answers<TResponse>(call.ResponseStream, activity), call.ResponseHeadersAsync, call.GetStatus, call.GetTrailers,
            () =>
            {
                call.Dispose();
                activity.Dispose();
            });
    }

    private Activity? Start<TRequest, TResponse>(Method<TRequest, TResponse> method)
        where TRequest : class
        where TResponse : class
    {
        var activity = Source.StartActivity(method.FullName[1..], ActivityKind.Client);
        activity?.SetTag("rpc.system", "grpc").SetTag("rpc.service", method.ServiceName).SetTag("rpc.method", method.Name);
        if (server is { Host.Length: > 0 })
        {
            activity?.SetTag("server.address", server.Host).SetTag("server.port", server.Port);
        }

        return activity;
    }

    private static async Task<TResponse> EndAsync<TResponse>(Task<TResponse> response, Activity activity)
    {
        using (activity)
        {
            try
            {
                var answer = await response.ConfigureAwait(false);
                End(activity, Status.DefaultSuccess);
                return answer;
            }
            catch (RpcException error)
            {
                End(activity, error.Status);
                throw;
            }
        }
    }

    private static void End(Activity activity, Status status)
    {
        activity.SetTag("rpc.grpc.status_code", (int)status.StatusCode);
        if (status.StatusCode != StatusCode.OK)
        {
            activity.SetTag("error.type", status.StatusCode.ToString()).SetStatus(ActivityStatusCode.Error, status.Detail);
        }
    }

    private sealed class Answers<T>(IAsyncStreamReader<T> inner, Activity activity) : IAsyncStreamReader<T>
    {
        public T Current => inner.Current;

        public async Task<bool> MoveNext(CancellationToken cancellationToken)
        {
            try
            {
                var isThere = await inner.MoveNext(cancellationToken).ConfigureAwait(false);
                if (!isThere)
                {
                    End(activity, Status.DefaultSuccess);
                }

                return isThere;
            }
            catch (RpcException error)
            {
                End(activity, error.Status);
                throw;
            }
        }
    }
}
