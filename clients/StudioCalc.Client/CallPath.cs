using System.Runtime.CompilerServices;
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
        catch (RpcException error)
        {
            throw await ErrorAsync(error, running.ResponseHeadersAsync, cancellationToken).ConfigureAwait(false);
        }
    }

    /// <summary>The same for a call that answers with a stream. It starts when its answers are asked for; letting go of them ends it.</summary>
    public IAsyncEnumerable<TResponse> StreamAsync<TRequest, TResponse>(
        Func<TRequest, CallOptions, AsyncServerStreamingCall<TResponse>> call, TRequest request, CancellationToken cancellationToken)
        where TRequest : class
    {
        ArgumentNullException.ThrowIfNull(request);
        return AnswersAsync(call, request, cancellationToken);
    }

    private async IAsyncEnumerable<TResponse> AnswersAsync<TRequest, TResponse>(
        Func<TRequest, CallOptions, AsyncServerStreamingCall<TResponse>> call, TRequest request,
        [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        using var running = call(request, new(headers, Deadline(), cancellationToken));
        while (await NextAsync(running, cancellationToken).ConfigureAwait(false))
        {
            yield return running.ResponseStream.Current;
        }
    }

    private async Task<bool> NextAsync<TResponse>(AsyncServerStreamingCall<TResponse> running, CancellationToken cancellationToken)
    {
        try
        {
            return await running.ResponseStream.MoveNext(cancellationToken).ConfigureAwait(false);
        }
        catch (RpcException error)
        {
            throw await ErrorAsync(error, running.ResponseHeadersAsync, cancellationToken).ConfigureAwait(false);
        }
    }

    private async Task<Exception> ErrorAsync(RpcException error, Task<Metadata> answered, CancellationToken cancellationToken) =>
        error.StatusCode == StatusCode.Cancelled && cancellationToken.IsCancellationRequested
            ? new OperationCanceledException("The call was cancelled.", error, cancellationToken)
            : Errors.Of(
                error, answered.IsCompletedSuccessfully ? await answered.ConfigureAwait(false) : null, timeout, connections?.Trouble);

    private DateTime? Deadline() =>
        timeout == Timeout.InfiniteTimeSpan ? null : TimeProvider.System.GetUtcNow().UtcDateTime + timeout;
}
