using System.Collections.Concurrent;
using Google.Protobuf;
using Grpc.Core;
using StudioCalc.Contracts;

namespace StudioCalc.Client;

/// <summary>Answers calls from functions by the type of the request, and keeps what was asked.</summary>
internal sealed class FakeCallInvoker : CallInvoker
{
    private readonly ConcurrentDictionary<Type, Func<IMessage, IEnumerable<IMessage>>> _answers = new();

    public ConcurrentQueue<IMessage> Requests { get; } = new();

    public void Set(Type request, Func<IMessage, IEnumerable<IMessage>> answer) => _answers[request] = answer;

    public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request)
    {
        var response = AnswerAsync(method, request);
        return new(
            response,
            Task.FromResult(Metadata.Empty),
            () => response.Exception?.GetBaseException() is RpcException error ? error.Status : Status.DefaultSuccess,
            () => response.Exception?.GetBaseException() is RpcException error ? error.Trailers : Metadata.Empty,
            static () => { });
    }

    public override TResponse BlockingUnaryCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request) =>
        AnswerAsync(method, request).GetAwaiter().GetResult();

    public override AsyncServerStreamingCall<TResponse> AsyncServerStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request)
    {
        var answers = new FakeAnswers<TResponse>(Answers<TRequest, TResponse>(method, request));
        return new(answers, Task.FromResult(Metadata.Empty), () => answers.Status, static () => Metadata.Empty, static () => { });
    }

    public override AsyncClientStreamingCall<TRequest, TResponse> AsyncClientStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw OneRequest();

    public override AsyncDuplexStreamingCall<TRequest, TResponse> AsyncDuplexStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw OneRequest();

    private Task<TResponse> AnswerAsync<TRequest, TResponse>(Method<TRequest, TResponse> method, TRequest request)
        where TRequest : class
    {
        try
        {
            return Task.FromResult(Answers<TRequest, TResponse>(method, request).First());
        }
        catch (RpcException error)
        {
            return Task.FromException<TResponse>(error);
        }
    }

    // All messages are copied, as the wire would do.
    private IEnumerable<TResponse> Answers<TRequest, TResponse>(Method<TRequest, TResponse> method, TRequest request)
        where TRequest : class
    {
        var received = (IMessage)((IDeepCloneable<TRequest>)request).Clone();
        if (Contract.Services.Any(service => service.FullName == method.ServiceName))
        {
            Requests.Enqueue(received);
        }

        if (!_answers.TryGetValue(typeof(TRequest), out var answer))
        {
            throw new RpcException(new(StatusCode.Unimplemented, $"No answer is set for {method.Name}."));
        }

        foreach (var message in answer(received))
        {
            yield return ((IDeepCloneable<TResponse>)message).Clone();
        }
    }

    private static NotSupportedException OneRequest() => new("Every call of the contract takes one request.");
}
