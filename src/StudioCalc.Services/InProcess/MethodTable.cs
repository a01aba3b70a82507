using Google.Protobuf;
using Grpc.Core;

namespace StudioCalc.Services;

/// <summary>Every call of the contract as a delegate with the checks around it, for callers without a network.</summary>
public sealed class MethodTable
{
    private readonly Dictionary<string, Entry> _entries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Stream> _streams = new(StringComparer.Ordinal);

    /// <summary>Binds every service.</summary>
    public MethodTable() => ServiceCatalogue.Bind(new Binder(_entries, _streams));

    /// <summary>The call with the types of its contract.</summary>
    /// <exception cref="RpcException">UNIMPLEMENTED: the contract has no such unary call.</exception>
    public UnaryServerMethod<TRequest, TResponse> Get<TRequest, TResponse>(string fullName)
        where TRequest : class
        where TResponse : class => (UnaryServerMethod<TRequest, TResponse>)Find(fullName).Typed;

    /// <summary>The call that answers with a stream, with the types of its contract.</summary>
    /// <exception cref="RpcException">UNIMPLEMENTED: the contract has no such call.</exception>
    public ServerStreamingServerMethod<TRequest, TResponse> GetStreaming<TRequest, TResponse>(string fullName)
        where TRequest : class
        where TResponse : class => (ServerStreamingServerMethod<TRequest, TResponse>)FindStream(fullName).Typed;

    /// <summary>Calls by name, with messages whose types only the contract knows.</summary>
    /// <exception cref="RpcException">The call is refused, or UNIMPLEMENTED.</exception>
    public Task<IMessage> CallAsync(string fullName, IMessage request, ServerCallContext context) =>
        Find(fullName).Untyped(request, context);

    /// <summary>Calls by name what answers with a stream, with messages whose types only the contract knows.</summary>
    /// <param name="fullName">The call.</param>
    /// <param name="request">Its request.</param>
    /// <param name="take">Takes one answer after another.</param>
    /// <param name="context">Its context.</param>
    /// <exception cref="RpcException">The call is refused, or UNIMPLEMENTED.</exception>
    public Task StreamAsync(string fullName, IMessage request, Func<IMessage, Task> take, ServerCallContext context) =>
        FindStream(fullName).Untyped(request, take, context);

    private Entry Find(string fullName) => _entries.TryGetValue(fullName, out var entry)
        ? entry
        : throw new RpcException(new(StatusCode.Unimplemented, "The contract has no such unary call."));

    private Stream FindStream(string fullName) => _streams.TryGetValue(fullName, out var stream)
        ? stream
        : throw new RpcException(new(StatusCode.Unimplemented, "The contract has no such call that answers with a stream."));

    private sealed record Stream(Delegate Typed, Func<IMessage, Func<IMessage, Task>, ServerCallContext, Task> Untyped);

    private sealed class Taker<T>(Func<IMessage, Task> take) : IServerStreamWriter<T>
    {
        public WriteOptions? WriteOptions { get; set; }

        public Task WriteAsync(T message) => take((IMessage)message!);
    }

    private sealed record Entry(Delegate Typed, Func<IMessage, ServerCallContext, Task<IMessage>> Untyped);

    private sealed class Binder(Dictionary<string, Entry> entries, Dictionary<string, Stream> streams) : ServiceBinderBase
    {
        private readonly ContractInterceptor _checks = new();

        public override void AddMethod<TRequest, TResponse>(
            Method<TRequest, TResponse> method, UnaryServerMethod<TRequest, TResponse>? handler)
        {
            Task<TResponse> Typed(TRequest request, ServerCallContext context) => _checks.UnaryServerHandler(request, context, handler!);
            entries.Add(method.FullName, new(
                (UnaryServerMethod<TRequest, TResponse>)Typed,
                async (request, context) => (IMessage)await Typed((TRequest)request, context).ConfigureAwait(false)));
        }

        public override void AddMethod<TRequest, TResponse>(
            Method<TRequest, TResponse> method, ServerStreamingServerMethod<TRequest, TResponse>? handler)
        {
            Task Typed(TRequest request, IServerStreamWriter<TResponse> answers, ServerCallContext context) =>
                _checks.ServerStreamingServerHandler(request, answers, context, handler!);
            streams.Add(method.FullName, new(
                (ServerStreamingServerMethod<TRequest, TResponse>)Typed,
                (request, take, context) => Typed((TRequest)request, new Taker<TResponse>(take), context)));
        }
    }
}
