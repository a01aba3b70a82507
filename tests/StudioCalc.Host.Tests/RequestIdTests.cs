using Microsoft.Extensions.Logging;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class RequestIdTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    private const string Header = "x-request-id";

    [Theory]
    [InlineData("/v1/capabilities")]
    [InlineData("/nope")]
    public async Task Json_IdGiven_IsEchoed(string path) => Assert.Equal("plate-7.b_2", await IdOfAsync(fixture.Host.Http, path, "plate-7.b_2"));

    [Theory]
    [InlineData(null)]
    [InlineData("two words")]
    [InlineData("0123456789012345678901234567890123456789012345678901234567890123x")]
    public async Task Json_NoFitId_IsMade(string? given)
    {
        var id = await IdOfAsync(fixture.Host.Http, "/v1/capabilities", given);

        Assert.Matches("^[0-9a-f]{32}$", id);
    }

    [Fact]
    public async Task Health_IdGiven_IsEchoed() => Assert.Equal("probe", await IdOfAsync(fixture.Host.Management, "/health/live", "probe"));

    [Theory]
    [InlineData(Way.Grpc)]
    [InlineData(Way.GrpcWeb)]
    public async Task Grpc_AnswerAndRefusal_EchoTheId(Way way)
    {
        var client = new ExposureService.ExposureServiceClient(fixture.Host.Invoker(way));
        using var answered = client.EvaluateExposureAsync(Requests.Exposure(), new Grpc.Core.Metadata { { Header, "one" } });
        using var refused = client.EvaluateExposureAsync(new EvaluateExposureRequest(), new Grpc.Core.Metadata { { Header, "two" } });

        Assert.Equal("one", (await answered.ResponseHeadersAsync).GetValue(Header));
        var error = await Assert.ThrowsAsync<Grpc.Core.RpcException>(() => refused.ResponseAsync);
        Assert.Equal("two", error.Trailers.GetValue(Header));
    }

    [Fact]
    public async Task Log_OfACall_CarriesTheId()
    {
        using var log = new ScopeLog();
        await using var host = await RunningHost.StartAsync(
            builder => builder.Logging.AddProvider(log).AddFilter("StudioCalc.Host.CallMeter", LogLevel.Debug));

        await IdOfAsync(host.Http, "/v1/capabilities", "plate-9");
        await host.StopAsync();

        Assert.Contains(log.Lines, line => line.Contains("request plate-9", StringComparison.Ordinal)
            && line.Contains("/studiocalc.v1.CapabilitiesService/GetCapabilities Ok over Json", StringComparison.Ordinal));
    }

    private static async Task<string> IdOfAsync(HttpClient http, string path, string? given)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (given is not null)
        {
            request.Headers.TryAddWithoutValidation(Header, given);
        }

        using var reply = await http.SendAsync(request);
        return Assert.Single(reply.Headers.GetValues(Header));
    }
}
