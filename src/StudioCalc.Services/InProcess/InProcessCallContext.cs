using Grpc.Core;

namespace StudioCalc.Services;

/// <summary>The context of a call that comes without a gRPC transport.</summary>
public sealed class InProcessCallContext : ServerCallContext, IDisposable
{
    private readonly string _method;
    private readonly Metadata _requestHeaders;
    private readonly DateTime _deadline;
    private readonly CancellationTokenSource? _expiry;
    private readonly CancellationToken _cancellation;
    private Metadata? _trailers;

    /// <summary>Makes a context.</summary>
    /// <param name="method">Full name of the call.</param>
    /// <param name="requestHeaders">The caller's headers.</param>
    /// <param name="deadline">When the call must end, in UTC; null for never.</param>
    /// <param name="cancellation">Cancelled when the caller gives up.</param>
    public InProcessCallContext(string method, Metadata? requestHeaders, DateTime? deadline, CancellationToken cancellation)
    {
        _method = method;
        _requestHeaders = requestHeaders ?? Metadata.Empty;
        _deadline = deadline ?? DateTime.MaxValue;
        _cancellation = cancellation;
        if (deadline is { } end)
        {
            _expiry = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            var left = end - TimeProvider.System.GetUtcNow().UtcDateTime;
            if (left <= TimeSpan.Zero)
            {
                _expiry.Cancel();
            }
            else if (left < TimeSpan.FromMilliseconds(int.MaxValue))
            {
                _expiry.CancelAfter(left);
            }

            _cancellation = _expiry.Token;
        }
    }

    /// <inheritdoc/>
    protected override string MethodCore => _method;

    /// <inheritdoc/>
    protected override string HostCore => "in-process";

    /// <inheritdoc/>
    protected override string PeerCore => "in-process";

    /// <inheritdoc/>
    protected override DateTime DeadlineCore => _deadline;

    /// <inheritdoc/>
    protected override Metadata RequestHeadersCore => _requestHeaders;

    /// <inheritdoc/>
    protected override CancellationToken CancellationTokenCore => _cancellation;

    /// <inheritdoc/>
    protected override Metadata ResponseTrailersCore => _trailers ??= [];

    /// <inheritdoc/>
    protected override Status StatusCore { get; set; }

    /// <inheritdoc/>
    protected override WriteOptions? WriteOptionsCore { get; set; }

    /// <inheritdoc/>
    protected override AuthContext AuthContextCore => new(null, []);

    /// <inheritdoc/>
    public void Dispose() => _expiry?.Dispose();

    /// <inheritdoc/>
    protected override ContextPropagationToken CreatePropagationTokenCore(ContextPropagationOptions? options) =>
        throw new NotSupportedException("In-process calls are not propagated.");

    /// <inheritdoc/>
    protected override Task WriteResponseHeadersAsyncCore(Metadata responseHeaders) => Task.CompletedTask;
}
