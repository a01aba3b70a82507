using Grpc.Core;

namespace StudioCalc.Services;

/// <summary>Calls the services in this process: same checks, same answers, same refusals, no network.</summary>
/// <remarks>Calls with a single request only, as the contract has no others. Messages are handed over by reference; neither side
/// keeps them.</remarks>
public sealed class InProcessCallInvoker : CallInvoker
{
    private readonly MethodTable _methods = new();

    /// <inheritdoc/>
    public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request)
    {
        ArgumentNullException.ThrowIfNull(method);
        var response = CallAsync(method, options, request);
        return new(
            response,
            Task.FromResult(Metadata.Empty),
            () => response.IsFaulted && response.Exception.GetBaseException() is RpcException error ? error.Status : Status.DefaultSuccess,
            () => response.IsFaulted && response.Exception.GetBaseException() is RpcException error ? error.Trailers : Metadata.Empty,
            static () => { });
    }

    /// <inheritdoc/>
    public override TResponse BlockingUnaryCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request)
    {
        ArgumentNullException.ThrowIfNull(method);
        return CallAsync(method, options, request).GetAwaiter().GetResult();
    }

    /// <inheritdoc/>
    public override AsyncServerStreamingCall<TResponse> AsyncServerStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request)
    {
        ArgumentNullException.ThrowIfNull(method);
        var answers = new InProcessAnswers<TResponse>(
            async (stream, cancellation) =>
            {
                using var context = new InProcessCallContext(method.FullName, options.Headers, options.Deadline, cancellation);
                await _methods.GetStreaming<TRequest, TResponse>(method.FullName)(request, stream, context).ConfigureAwait(false);
            },
            options.CancellationToken);
        return new(answers, Task.FromResult(Metadata.Empty), () => answers.Status, () => answers.Trailers, answers.Dispose);
    }

    /// <inheritdoc/>
    public override AsyncClientStreamingCall<TRequest, TResponse> AsyncClientStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw OneRequest();

    /// <inheritdoc/>
    public override AsyncDuplexStreamingCall<TRequest, TResponse> AsyncDuplexStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw OneRequest();

    private async Task<TResponse> CallAsync<TRequest, TResponse>(
        Method<TRequest, TResponse> method, CallOptions options, TRequest request)
        where TRequest : class
        where TResponse : class
    {
        using var context = new InProcessCallContext(method.FullName, options.Headers, options.Deadline, options.CancellationToken);
        return await _methods.Get<TRequest, TResponse>(method.FullName)(request, context).ConfigureAwait(false);
    }

    private static NotSupportedException OneRequest() => new("Every call of the contract takes one request.");
}
