using System.Net;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Reflection.V1Alpha;
using StudioCalc.Contracts;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class HealthTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    public static TheoryData<string> Names => [.. Contract.Services.Select(service => service.FullName).Prepend("")];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Check_ServiceName_IsServing(string service)
    {
        var answer = await new Health.HealthClient(fixture.Host.Invoker(Way.Grpc)).CheckAsync(new() { Service = service });

        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, answer.Status);
    }

    [Theory]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    public async Task Management_Health_IsHealthy(string path)
    {
        using var reply = await fixture.Host.Management.GetAsync(new Uri(path, UriKind.Relative));

        Assert.Equal(HttpStatusCode.OK, reply.StatusCode);
    }

    [Fact]
    public async Task Management_Calls_AreNotAnswered()
    {
        using var reply = await fixture.Host.Management.GetAsync(new Uri("/v1/capabilities", UriKind.Relative));

        Assert.Equal(HttpStatusCode.NotFound, reply.StatusCode);
    }

    [Fact]
    public async Task Reflection_ListServices_NamesOurs()
    {
        using var call = new ServerReflection.ServerReflectionClient(fixture.Host.Invoker(Way.Grpc)).ServerReflectionInfo();
        await call.RequestStream.WriteAsync(new() { ListServices = "" });
        await call.ResponseStream.MoveNext(default);

        var names = call.ResponseStream.Current.ListServicesResponse.Service.Select(service => service.Name).ToList();
        await call.RequestStream.CompleteAsync();
        Assert.All(Contract.Services, service => Assert.Contains(service.FullName, names));
    }
}
