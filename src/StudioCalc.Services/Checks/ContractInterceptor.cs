using Google.Protobuf;
using Grpc.Core;
using Grpc.Core.Interceptors;
using StudioCalc.Contracts;

namespace StudioCalc.Services;

/// <summary>The checks around every call of the contract, the same for every way in: size, fields, and finite answers.</summary>
public sealed class ContractInterceptor : Interceptor
{
    /// <summary>The largest request, in the binary form of the contract. [bytes]</summary>
    public const int MaxRequestBytes = 1024 * 1024;

    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(continuation);
        CheckRequest(request);
        try
        {
            context.CancellationToken.ThrowIfCancellationRequested();
            var response = await continuation(request, context).ConfigureAwait(false);
            Checked<TResponse>.Response(response);
            return response;
        }
        catch (OperationCanceledException) when (context.CancellationToken.IsCancellationRequested)
        {
            throw Ended(context);
        }
    }

    /// <inheritdoc/>
    public override async Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
        ServerStreamingServerMethod<TRequest, TResponse> continuation)
    {
        ArgumentNullException.ThrowIfNull(responseStream);
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(continuation);
        CheckRequest(request);
        try
        {
            context.CancellationToken.ThrowIfCancellationRequested();
            await continuation(request, new CheckedStream<TResponse>(responseStream), context).ConfigureAwait(false);
        }
        catch (Exception error) when (context.CancellationToken.IsCancellationRequested && error is not RpcException)
        {
            // A transport that is gone reports a write as failed, not as cancelled.
            throw Ended(context);
        }
    }

    /// <summary>Builds the checks of every message of the contract's calls.</summary>
    /// <exception cref="NotSupportedException">The contract has a rule or a type that the checks do not know.</exception>
    public static void BuildChecks()
    {
        foreach (var method in Contract.Services.SelectMany(service => service.Methods))
        {
            Build(method.InputType.ClrType);
            Build(method.OutputType.ClrType);
        }

        static void Build(Type message)
        {
            try
            {
                System.Runtime.CompilerServices.RuntimeHelpers.RunClassConstructor(typeof(Checked<>).MakeGenericType(message).TypeHandle);
            }
            catch (TypeInitializationException error) when (error.GetBaseException() is NotSupportedException cause)
            {
                throw new NotSupportedException(cause.Message, error);
            }
        }
    }

    private static void CheckRequest<TRequest>(TRequest request)
        where TRequest : class
    {
        if (((IMessage)request).CalculateSize() > MaxRequestBytes)
        {
            throw Refusal.RequestTooLarge(MaxRequestBytes).ToRpcException();
        }

        Checked<TRequest>.Request(request);
    }

    private static RpcException Ended(ServerCallContext context) => context.Deadline <= TimeProvider.System.GetUtcNow().UtcDateTime
        ? Refusal.DeadlineExceeded().ToRpcException()
        : new RpcException(new(StatusCode.Cancelled, "The caller has cancelled the call."));

    // Each answer is checked before it leaves.
    private sealed class CheckedStream<T>(IServerStreamWriter<T> inner) : IServerStreamWriter<T>
        where T : class
    {
        public WriteOptions? WriteOptions
        {
            get => inner.WriteOptions;
            set => inner.WriteOptions = value;
        }

        public Task WriteAsync(T message)
        {
            Checked<T>.Response(message);
            return inner.WriteAsync(message);
        }

        public Task WriteAsync(T message, CancellationToken cancellationToken)
        {
            Checked<T>.Response(message);
            return inner.WriteAsync(message, cancellationToken);
        }
    }

    // Bridges the interceptor's unconstrained type parameters to messages, once for each type.
    private static class Checked<T>
        where T : class
    {
        private static readonly Func<T, Violations?, bool> Check = Make();

        public static void Request(T request)
        {
            if (!Check(request, null))
            {
                var violations = new Violations();
                Check(request, violations);
                throw Refusal.InvalidFields(violations).ToRpcException();
            }
        }

        public static void Response(T response)
        {
            if (!Check(response, null))
            {
                throw Refusal.AnswerNotFinite().ToRpcException();
            }
        }

        private static Func<T, Violations?, bool> Make() => typeof(ContractInterceptor)
            .GetMethod(nameof(Bind), System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static)!
            .MakeGenericMethod(typeof(T))
            .Invoke(null, null) as Func<T, Violations?, bool> ?? throw new InvalidOperationException();
    }

    private static Func<T, Violations?, bool> Bind<T>()
        where T : class, IMessage<T> => (message, violations) => MessageCheck<T>.Instance.Check(message, "", violations);
}
