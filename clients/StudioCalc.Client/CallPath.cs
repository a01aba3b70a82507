using Grpc.Core;
using Grpc.Core.Interceptors;

namespace StudioCalc.Client;

/// <summary>The way that every call takes: headers and deadline on the way out, exceptions on the way back.</summary>
/// <param name="invoker">Carries the calls.</param>
/// <param name="timeout">The time allowed for a call with all its attempts.</param>
/// <param name="headers">Sent with every call.</param>
/// <param name="server">Where the calls go, where that is one place.</param>
/// <param name="connections">Knows why no host can be reached.</param>
internal sealed class CallPath(
    CallInvoker invoker, TimeSpan timeout, Metadata? headers = null, Uri? server = null, Connections? connections = null)
{
    /// <summary>A path that ends in UNIMPLEMENTED, for test doubles that answer some calls themselves.</summary>
    public static CallPath Unanswered { get; } = new(new FakeCallInvoker(), Timeout.InfiniteTimeSpan);

    public CallInvoker Invoker { get; } = invoker.Intercept(new Tracing(server));

    public async Task<TResponse> RunAsync<TRequest, TResponse>(
        Func<TRequest, CallOptions, AsyncUnaryCall<TResponse>> call, TRequest request, CancellationToken cancellationToken)
        where TRequest : class
    {
        ArgumentNullException.ThrowIfNull(request);
        cancellationToken.ThrowIfCancellationRequested();
        using var running = call(request, new(headers, Deadline(), cancellationToken));
        try
        {
            return await running.ResponseAsync.ConfigureAwait(false);
        }
        catch (RpcException error) when (error.StatusCode == StatusCode.Cancelled && cancellationToken.IsCancellationRequested)
        {
            throw new OperationCanceledException("The call was cancelled.", error, cancellationToken);
        }
        catch (RpcException error)
        {
            throw Errors.Of(error, await HeadersAsync(running).ConfigureAwait(false), timeout, connections?.Trouble);
        }
    }

    private DateTime? Deadline() =>
        timeout == Timeout.InfiniteTimeSpan ? null : TimeProvider.System.GetUtcNow().UtcDateTime + timeout;

    private static async Task<Metadata?> HeadersAsync<TResponse>(AsyncUnaryCall<TResponse> call)
    {
        var headers = call.ResponseHeadersAsync;
        return headers.IsCompletedSuccessfully ? await headers.ConfigureAwait(false) : null;
    }
}
