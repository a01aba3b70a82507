using StudioCalc.Contracts;
using Google.Rpc;
using Grpc.AspNetCore.Server;
using Grpc.Core;
using Grpc.Core.Interceptors;

namespace StudioCalc.Host;

/// <summary>Tells a gRPC caller that its bytes are not a message; the framework would report an unknown failure of ours.</summary>
internal sealed class UnreadableMessages(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        await next(context);
        if (!context.Response.HasStarted
            && context.Response.Headers["grpc-status"] == "2"
            && context.GetEndpoint()?.Metadata.GetMetadata<GrpcMethodMetadata>() is not null
            && context.Features.Get<CallNote>() is { IsRead: false })
        {
            await Replies.WriteAsync(context, Refusal.MalformedMessage());
        }
    }

    /// <summary>Notes that the request of a call has been read.</summary>
    internal sealed class Note : Interceptor
    {
        public override Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
            TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
        {
            IsRead(context);
            return continuation(request, context);
        }

        public override Task ServerStreamingServerHandler<TRequest, TResponse>(
            TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context,
            ServerStreamingServerMethod<TRequest, TResponse> continuation)
        {
            IsRead(context);
            return continuation(request, responseStream, context);
        }

        private static void IsRead(ServerCallContext context) => context.GetHttpContext().Features.Get<CallNote>()?.IsRead = true;
    }
}
