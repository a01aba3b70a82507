using System.Collections.Concurrent;
using Google.Protobuf;
using Grpc.Core;
using StudioCalc.Contracts;

namespace StudioCalc.Client;

/// <summary>Answers calls from functions by the type of the request, and keeps what was asked.</summary>
internal sealed class FakeCallInvoker : CallInvoker
{
    private readonly ConcurrentDictionary<Type, Func<IMessage, IMessage>> _answers = new();

    public ConcurrentQueue<IMessage> Requests { get; } = new();

    public void Set(Type request, Func<IMessage, IMessage> answer) => _answers[request] = answer;

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
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request) => throw OnlyUnary();

    public override AsyncClientStreamingCall<TRequest, TResponse> AsyncClientStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw OnlyUnary();

    public override AsyncDuplexStreamingCall<TRequest, TResponse> AsyncDuplexStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw OnlyUnary();

    // Both messages are copied, as the wire would do.
    private Task<TResponse> AnswerAsync<TRequest, TResponse>(Method<TRequest, TResponse> method, TRequest request)
        where TRequest : class
    {
        var received = (IMessage)((IDeepCloneable<TRequest>)request).Clone();
        if (Contract.Services.Any(service => service.FullName == method.ServiceName))
        {
            Requests.Enqueue(received);
        }

        if (!_answers.TryGetValue(typeof(TRequest), out var answer))
        {
            return Task.FromException<TResponse>(
                new RpcException(new(StatusCode.Unimplemented, $"No answer is set for {method.Name}.")));
        }

        try
        {
            return Task.FromResult(((IDeepCloneable<TResponse>)answer(received)).Clone());
        }
        catch (RpcException error)
        {
            return Task.FromException<TResponse>(error);
        }
    }

    private static NotSupportedException OnlyUnary() => new("The contract has unary calls only.");
}
