using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>A host for tests: it answers, refuses and fails as told, and keeps the requests. No network.</summary>
/// <remarks>Only the host is made up; exceptions, cancellation and all else in <see cref="Client"/> is the real thing. What is
/// set later for a request replaces what was set before. A request without an answer fails with UNIMPLEMENTED.</remarks>
public sealed class FakeStudioCalc
{
    private readonly FakeCallInvoker _invoker = new();

    /// <summary>Makes a fake without answers.</summary>
    public FakeStudioCalc() => Client = new(_invoker, Timeout.InfiniteTimeSpan);

    /// <summary>The client to hand to the code under test.</summary>
    public StudioCalcClient Client { get; }

    /// <summary>Copies of all requests, in the order in which they came.</summary>
    public IReadOnlyList<IMessage> Requests => [.. _invoker.Requests];

    /// <summary>Sets the answer to a request; where the call answers with a stream, its only message.</summary>
    /// <exception cref="ArgumentException">No call takes the one and gives the other.</exception>
    public FakeStudioCalc Answer<TRequest, TResponse>(Func<TRequest, TResponse> answer)
        where TRequest : class, IMessage<TRequest>
        where TResponse : class, IMessage<TResponse>
    {
        ArgumentNullException.ThrowIfNull(answer);
        return Set<TRequest, TResponse>(request => [answer(request)], method => true);
    }

    /// <summary>Sets the answers of a call that answers with a stream.</summary>
    /// <exception cref="ArgumentException">No call takes the one and gives a stream of the other.</exception>
    public FakeStudioCalc AnswerStream<TRequest, TResponse>(Func<TRequest, IEnumerable<TResponse>> answers)
        where TRequest : class, IMessage<TRequest>
        where TResponse : class, IMessage<TResponse>
    {
        ArgumentNullException.ThrowIfNull(answers);
        return Set(answers, method => method.IsServerStreaming);
    }

    /// <summary>Refuses a request because of one field.</summary>
    /// <param name="field">Path of the field, such as <c>settings.aperture.mark</c>.</param>
    /// <param name="reason">Why.</param>
    /// <param name="description">What is allowed.</param>
    public FakeStudioCalc Refuse<TRequest>(string field, RefusalReason reason, string description)
        where TRequest : class, IMessage<TRequest> => Refuse<TRequest>(new FieldViolation(field, reason, description));

    /// <summary>Refuses a request because of several fields.</summary>
    public FakeStudioCalc Refuse<TRequest>(params IReadOnlyList<FieldViolation> violations)
        where TRequest : class, IMessage<TRequest>
    {
        ArgumentNullException.ThrowIfNull(violations);
        var bad = new Violations();
        foreach (var (field, reason, description) in violations)
        {
            bad.Add(field, reason, description);
        }

        _invoker.Set(typeof(TRequest), _ => throw Refusal.InvalidFields(bad).ToRpcException());
        return this;
    }

    /// <summary>Lets a request fail.</summary>
    public FakeStudioCalc Fail<TRequest>(StatusCode code, string detail = "The fake was told to fail.")
        where TRequest : class, IMessage<TRequest>
    {
        _invoker.Set(typeof(TRequest), _ => throw new RpcException(new(code, detail)));
        return this;
    }

    private FakeStudioCalc Set<TRequest, TResponse>(Func<TRequest, IEnumerable<TResponse>> answers, Func<MethodDescriptor, bool> allowed)
        where TRequest : class, IMessage<TRequest>
        where TResponse : class, IMessage<TResponse>
    {
        if (!Contract.Services.SelectMany(service => service.Methods).Where(allowed).Any(
            method => method.InputType.ClrType == typeof(TRequest) && method.OutputType.ClrType == typeof(TResponse)))
        {
            throw new ArgumentException($"No such call takes {typeof(TRequest).Name} and gives {typeof(TResponse).Name}.", nameof(answers));
        }

        _invoker.Set(typeof(TRequest), request => answers((TRequest)request));
        return this;
    }
}
