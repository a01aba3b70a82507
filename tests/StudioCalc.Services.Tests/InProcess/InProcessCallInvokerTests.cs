using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class InProcessCallInvokerTests
{
    private static readonly InProcessCallInvoker Invoker = new();

    [Fact]
    public void EveryMethodOfTheContract_IsBound()
    {
        var table = new MethodTable();
        using var context = new InProcessCallContext("/test", null, null, CancellationToken.None);
        foreach (var method in Contract.Services.SelectMany(service => service.Methods))
        {
            var request = (Google.Protobuf.IMessage)Activator.CreateInstance(method.InputType.ClrType)!;
            var name = Contract.FullMethodName(method);
            var call = method.IsServerStreaming
                ? table.StreamAsync(name, request, _ => Task.CompletedTask, context)
                : table.CallAsync(name, request, context);
            Assert.True(
                call.IsCompletedSuccessfully || (call.Exception?.InnerException as RpcException)?.StatusCode == StatusCode.InvalidArgument,
                method.FullName);
        }
    }

    [Fact]
    public async Task CallThatIsNotInTheContract_IsUnimplemented()
    {
        using var context = new InProcessCallContext("/test", null, null, CancellationToken.None);
        var error = await Assert.ThrowsAsync<RpcException>(() => new MethodTable().CallAsync("/studiocalc.v1.None/None", new Iso(), context));
        Assert.Equal(StatusCode.Unimplemented, error.StatusCode);
    }

    [Fact]
    public async Task AsyncCall_AnsweredOrRefused_TellsItsStatus()
    {
        var client = new ExposureService.ExposureServiceClient(Invoker);
        using var answered = client.EvaluateExposureAsync(Examples.Exposure());
        Assert.Equal("1", (await answered).ModelRevision);
        Assert.Equal(StatusCode.OK, answered.GetStatus().StatusCode);
        using var refused = client.EvaluateExposureAsync(new());
        await Assert.ThrowsAsync<RpcException>(() => refused.ResponseAsync);
        Assert.Equal(StatusCode.InvalidArgument, refused.GetStatus().StatusCode);
        Assert.NotNull(refused.GetTrailers().GetValueBytes("grpc-status-details-bin"));
    }

    [Fact]
    public void Capabilities_TellLimitsRevisionAndServices()
    {
        var answer = new CapabilitiesService.CapabilitiesServiceClient(Invoker).GetCapabilities(new());
        Assert.Equal(Maths.ModelRevision.Current, answer.ModelRevision);
        Assert.Equal((uint)ContractInterceptor.MaxRequestBytes, answer.Limits.MaxRequestBytes);
        Assert.Equal((uint)Refusal.MaxBytes, answer.Limits.MaxRefusalBytes);
        Assert.Equal(Contract.Services.Select(service => service.FullName), answer.Services);
        Assert.Equal(
            [
                ("holding profiles", Maths.HoldingProfiles.Version), ("marks", Maths.Marks.CatalogueVersion),
                ("safety regimes", Maths.SafetyRegimes.Version), ("sensor formats", Maths.SensorFormats.Version),
            ],
            answer.Catalogues.Select(one => (one.Name, one.Version)));
        Assert.NotEmpty(answer.Build);
    }
}
