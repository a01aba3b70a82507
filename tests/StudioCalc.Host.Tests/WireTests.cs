using Grpc.Core;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class WireTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    private static readonly Marshaller<byte[]> Bytes = Marshallers.Create(bytes => bytes, bytes => bytes);

    [Theory]
    [InlineData(Way.Grpc)]
    [InlineData(Way.GrpcWeb)]
    public async Task Call_BytesThatAreNoMessage_AreNotAnInternalFailure(Way way)
    {
        var method = new Method<byte[], byte[]>(MethodType.Unary, "studiocalc.v1.ExposureService", "EvaluateExposure", Bytes, Bytes);
        using var call = fixture.Host.Invoker(way).AsyncUnaryCall(method, null, default, [0x0A, 0xFF, 0xFF]);

        var error = await Assert.ThrowsAsync<RpcException>(() => call.ResponseAsync);

        Assert.Equal(StatusCode.InvalidArgument, error.StatusCode);
    }

    [Theory]
    [InlineData(Way.Grpc)]
    [InlineData(Way.GrpcWeb)]
    public async Task Call_UnknownMethod_IsUnimplemented(Way way)
    {
        var method = new Method<byte[], byte[]>(MethodType.Unary, "studiocalc.v1.ExposureService", "Nope", Bytes, Bytes);
        using var call = fixture.Host.Invoker(way).AsyncUnaryCall(method, null, default, []);

        var error = await Assert.ThrowsAsync<RpcException>(() => call.ResponseAsync);

        Assert.Equal(StatusCode.Unimplemented, error.StatusCode);
    }
}
