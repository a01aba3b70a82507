using System.Net;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class BrowserTests
{
    private const string Origin = "https://app.example";

    [Fact]
    public async Task Call_FromAConfiguredOrigin_ExposesTheStatus()
    {
        await using var host = await RunningHost.StartAsync("Security:CorsOrigins:0=" + Origin, "Security:ApiKeys:0=0123456789abcdef");

        using var reply = await GetAsync(host, HttpMethod.Get);

        Assert.Equal(HttpStatusCode.Unauthorized, reply.StatusCode);
        Assert.Equal(Origin, Assert.Single(reply.Headers.GetValues("access-control-allow-origin")));
        var exposed = string.Join(',', reply.Headers.GetValues("access-control-expose-headers"));
        Assert.All(
            ["grpc-status", "grpc-message", "grpc-status-details-bin", "grpc-encoding", "grpc-accept-encoding"],
            name => Assert.Contains(name, exposed, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Preflight_FromAConfiguredOrigin_NeedsNoKey()
    {
        await using var host = await RunningHost.StartAsync("Security:CorsOrigins:0=" + Origin, "Security:ApiKeys:0=0123456789abcdef");

        using var reply = await GetAsync(host, HttpMethod.Options);

        Assert.Equal(HttpStatusCode.NoContent, reply.StatusCode);
        Assert.Contains("POST", string.Join(',', reply.Headers.GetValues("access-control-allow-methods")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Call_WithoutConfiguredOrigins_HasNoCorsHeader()
    {
        await using var host = await RunningHost.StartAsync();

        using var reply = await GetAsync(host, HttpMethod.Get);

        Assert.Equal(HttpStatusCode.OK, reply.StatusCode);
        Assert.False(reply.Headers.Contains("access-control-allow-origin"));
    }

    private static async Task<HttpResponseMessage> GetAsync(RunningHost host, HttpMethod method)
    {
        using var request = new HttpRequestMessage(method, "/v1/capabilities")
        {
            Headers = { { "origin", Origin }, { "access-control-request-method", "POST" }, { "access-control-request-headers", "x-grpc-web,content-type" } },
        };
        return await host.Http.SendAsync(request);
    }
}
