using Grpc.Core;

namespace StudioCalc.Client;

/// <summary>Hands over what a fake answers with, one message after another.</summary>
internal sealed class FakeAnswers<T>(IEnumerable<T> messages) : IAsyncStreamReader<T>
{
    private readonly IEnumerator<T> _messages = messages.GetEnumerator();

    public Status Status { get; private set; } = Status.DefaultSuccess;

    public T Current => _messages.Current;

    public Task<bool> MoveNext(CancellationToken cancellationToken)
    {
        if (cancellationToken.IsCancellationRequested)
        {
            return Fail(new(new(StatusCode.Cancelled, "The caller has cancelled the call.")));
        }

        try
        {
            return Task.FromResult(_messages.MoveNext());
        }
        catch (RpcException error)
        {
            return Fail(error);
        }
    }

    private Task<bool> Fail(RpcException error)
    {
        Status = error.Status;
        return Task.FromException<bool>(error);
    }
}
