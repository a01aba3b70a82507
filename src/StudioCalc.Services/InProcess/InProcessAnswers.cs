using System.Threading.Channels;
using Grpc.Core;

namespace StudioCalc.Services;

/// <summary>The answers of a call in this process: worked out on the side and handed over one by one.</summary>
/// <remarks>A reader that falls behind holds the call up; one that lets go cancels it.</remarks>
internal sealed class InProcessAnswers<T> : IAsyncStreamReader<T>, IServerStreamWriter<T>, IDisposable
{
    private const int Ahead = 16;

    private readonly Channel<T> _channel = Channel.CreateBounded<T>(new BoundedChannelOptions(Ahead) { SingleReader = true });
    private readonly CancellationToken _caller;
    private readonly CancellationTokenSource _end;
    private readonly Task _work;
    private volatile RpcException? _error;
    private T? _current;

    /// <summary>Starts a call.</summary>
    /// <param name="call">Writes the answers; its token ends with the caller's, or when the caller lets go.</param>
    /// <param name="cancellation">The caller's own.</param>
    public InProcessAnswers(Func<IServerStreamWriter<T>, CancellationToken, Task> call, CancellationToken cancellation)
    {
        _caller = cancellation;
        _end = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var token = _end.Token;
        _work = Task.Run(() => RunAsync(call, token), CancellationToken.None);
    }

    /// <summary>How the call ended.</summary>
    public Status Status => _error?.Status ?? Status.DefaultSuccess;

    /// <summary>What the call left at its end.</summary>
    public Metadata Trailers => _error?.Trailers ?? Metadata.Empty;

    /// <inheritdoc/>
    public T Current => _current ?? throw new InvalidOperationException("There is no answer yet.");

    /// <inheritdoc/>
    public WriteOptions? WriteOptions { get; set; }

    /// <inheritdoc/>
    public async Task<bool> MoveNext(CancellationToken cancellationToken)
    {
        // As over a network: who has cancelled gets nothing more, even what is worked out already.
        if (_caller.IsCancellationRequested)
        {
            throw _error ??= new(new Status(StatusCode.Cancelled, "The caller has cancelled the call."));
        }

        try
        {
            _current = await _channel.Reader.ReadAsync(cancellationToken).ConfigureAwait(false);
            return true;
        }
        catch (ChannelClosedException closed) when (closed.InnerException is null)
        {
            return false;
        }
        catch (ChannelClosedException closed)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(closed.InnerException!);
            return false;
        }
    }

    /// <inheritdoc/>
    public Task WriteAsync(T message) => WriteAsync(message, _end.Token);

    /// <inheritdoc/>
    public Task WriteAsync(T message, CancellationToken cancellationToken) => _channel.Writer.WriteAsync(message, cancellationToken).AsTask();

    /// <inheritdoc/>
    public void Dispose()
    {
        _end.Cancel();
        _ = _work.ContinueWith(static (_, end) => ((CancellationTokenSource)end!).Dispose(), _end, TaskScheduler.Default);
    }

    private async Task RunAsync(Func<IServerStreamWriter<T>, CancellationToken, Task> call, CancellationToken cancellation)
    {
        try
        {
            await call(this, cancellation).ConfigureAwait(false);
            _channel.Writer.Complete();
        }
        catch (Exception error)
        {
            _error ??= error as RpcException;
            _channel.Writer.Complete(error);
        }
    }
}
