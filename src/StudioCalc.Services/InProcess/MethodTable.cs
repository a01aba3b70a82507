using Google.Protobuf;
using Grpc.Core;

namespace StudioCalc.Services;

/// <summary>Every call of the contract as a delegate with the checks around it, for callers without a network.</summary>
public sealed class MethodTable
{
    private readonly Dictionary<string, Entry> _entries = new(StringComparer.Ordinal);

    /// <summary>Binds every service.</summary>
    public MethodTable() => ServiceCatalogue.Bind(new Binder(_entries));

    /// <summary>The call with the types of its contract.</summary>
    /// <exception cref="RpcException">UNIMPLEMENTED: the contract has no such unary call.</exception>
    public UnaryServerMethod<TRequest, TResponse> Get<TRequest, TResponse>(string fullName)
        where TRequest : class
        where TResponse : class => (UnaryServerMethod<TRequest, TResponse>)Find(fullName).Typed;

    /// <summary>Calls by name, with messages whose types only the contract knows.</summary>
    /// <exception cref="RpcException">The call is refused, or UNIMPLEMENTED.</exception>
    public Task<IMessage> CallAsync(string fullName, IMessage request, ServerCallContext context) =>
        Find(fullName).Untyped(request, context);

    private Entry Find(string fullName) => _entries.TryGetValue(fullName, out var entry)
        ? entry
        : throw new RpcException(new(StatusCode.Unimplemented, "The contract has no such unary call."));

    private sealed record Entry(Delegate Typed, Func<IMessage, ServerCallContext, Task<IMessage>> Untyped);

    private sealed class Binder(Dictionary<string, Entry> entries) : ServiceBinderBase
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
    }
}
