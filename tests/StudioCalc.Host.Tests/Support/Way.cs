namespace StudioCalc.Host.Tests;

/// <summary>The ways to call the services.</summary>
public enum Way
{
    /// <summary>gRPC over HTTP/2.</summary>
    Grpc,

    /// <summary>gRPC-Web over HTTP/1.1.</summary>
    GrpcWeb,

    /// <summary>JSON over HTTP/1.1.</summary>
    Json,

    /// <summary>No network.</summary>
    InProcess,
}
