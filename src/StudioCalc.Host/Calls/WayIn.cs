namespace StudioCalc.Host;

/// <summary>How a call comes in.</summary>
internal enum WayIn
{
    /// <summary>JSON over HTTP, and anything that is not gRPC.</summary>
    Json,

    /// <summary>gRPC.</summary>
    Grpc,

    /// <summary>gRPC-Web.</summary>
    GrpcWeb,
}
