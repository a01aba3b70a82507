using Google.Rpc;

namespace StudioCalc.Host;

/// <summary>What is noted about a request on its way.</summary>
internal sealed class CallNote(WayIn way)
{
    /// <summary>The way in, as it was before gRPC-Web was unwrapped.</summary>
    public WayIn Way => way;

    /// <summary>How the call ended, where no gRPC handler tells.</summary>
    public Code? Code { get; set; }

    /// <summary>Whether a gRPC handler has read the request.</summary>
    public bool IsRead { get; set; }

    /// <summary>Notes the way in of every request.</summary>
    public static void Use(IApplicationBuilder app) => app.Use(static (context, next) =>
    {
        context.Features.Set(new CallNote(WayOf(context.Request.ContentType)));
        return next(context);
    });

    private static WayIn WayOf(string? contentType) => contentType switch
    {
        { } type when type.StartsWith("application/grpc-web", StringComparison.OrdinalIgnoreCase) => WayIn.GrpcWeb,
        { } type when type.StartsWith("application/grpc", StringComparison.OrdinalIgnoreCase) => WayIn.Grpc,
        _ => WayIn.Json,
    };
}
