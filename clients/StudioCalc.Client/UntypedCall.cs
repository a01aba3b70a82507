using System.Collections.Concurrent;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;

namespace StudioCalc.Client;

/// <summary>A call whose message types only its descriptor tells.</summary>
internal abstract class UntypedCall
{
    private static readonly ConcurrentDictionary<MethodDescriptor, UntypedCall> Known = new();

    public static UntypedCall Of(MethodDescriptor method) => Known.GetOrAdd(method, static method => (UntypedCall)Activator.CreateInstance(
        typeof(UntypedCall<,>).MakeGenericType(method.InputType.ClrType, method.OutputType.ClrType), method)!);

    public abstract Task<IMessage> RunAsync(CallPath calls, IMessage request, CancellationToken cancellationToken);

    public abstract IAsyncEnumerable<IMessage> StreamAsync(CallPath calls, IMessage request, CancellationToken cancellationToken);
}

/// <summary>The same with its types.</summary>
internal sealed class UntypedCall<TRequest, TResponse>(MethodDescriptor descriptor) : UntypedCall
    where TRequest : class, IMessage<TRequest>, new()
    where TResponse : class, IMessage<TResponse>, new()
{
    private readonly Method<TRequest, TResponse> _method = new(
        descriptor.IsServerStreaming ? MethodType.ServerStreaming : MethodType.Unary, descriptor.Service.FullName, descriptor.Name, MarshallerOf<TRequest>(), MarshallerOf<TResponse>());

    public override async Task<IMessage> RunAsync(CallPath calls, IMessage request, CancellationToken cancellationToken) =>
        await calls.RunAsync<TRequest, TResponse>(
            (message, options) => calls.Invoker.AsyncUnaryCall(_method, null, options, message), Typed(request), cancellationToken)
            .ConfigureAwait(false);

    public override IAsyncEnumerable<IMessage> StreamAsync(CallPath calls, IMessage request, CancellationToken cancellationToken) =>
        calls.StreamAsync<TRequest, TResponse>(
            (message, options) => calls.Invoker.AsyncServerStreamingCall(_method, null, options, message), Typed(request), cancellationToken);

    private TRequest Typed(IMessage request) =>
        request as TRequest ?? throw new ArgumentException($"The call takes a {descriptor.InputType.Name}.", nameof(request));

    private static Marshaller<T> MarshallerOf<T>()
        where T : class, IMessage<T>, new()
    {
        var parser = new MessageParser<T>(() => new T());
        return Marshallers.Create(message => message.ToByteArray(), parser.ParseFrom);
    }
}
