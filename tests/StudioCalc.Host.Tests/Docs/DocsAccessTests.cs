using System.Net;
using Google.Rpc;
using Microsoft.AspNetCore.Routing;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>Who can read the pages, and that reading them takes nothing from calls.</summary>
public sealed class DocsAccessTests
{
    private const string Key = "0123456789abcdef";

    [Fact]
    public async Task Pages_WhereKeysAreAskedFor_NeedOneToo()
    {
        await using var host = await RunningHost.StartAsync("Security:ApiKeys:0=" + Key);
        using var without = await host.Http.GetAsync(new Uri("/docs/contract", UriKind.Relative));
        host.Http.DefaultRequestHeaders.Authorization = new("Bearer", Key);
        using var with = await host.Http.GetAsync(new Uri("/docs/contract", UriKind.Relative));

        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.OK), (without.StatusCode, with.StatusCode));
    }

    [Fact]
    public async Task Pages_OpenedToReadersWithoutKey_LeaveCallsShut()
    {
        await using var host = await RunningHost.StartAsync("Security:ApiKeys:0=" + Key, "Docs:WithoutKey=true");
        foreach (var path in new[] { "/docs/contract", "/docs/index.html", "/openapi.json" })
        {
            using var page = await host.Http.GetAsync(new Uri(path, UriKind.Relative));
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        }

        using var call = await host.Http.GetAsync(new Uri("/v1/capabilities", UriKind.Relative));
        using var unknown = await host.Http.GetAsync(new Uri("/nope", UriKind.Relative));
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized), (call.StatusCode, unknown.StatusCode));
    }

    [Fact]
    public async Task Pages_SwitchedOff_AreUnknownPaths()
    {
        await using var host = await RunningHost.StartAsync("Docs:Enabled=false");
        foreach (var path in new[] { "/", "/docs", "/docs/contract", "/openapi.json" })
        {
            var status = JsonCallInvoker.Parser.Parse<Google.Rpc.Status>(await PageClient.SendAsync(host.Http, "GET " + path));
            Assert.Equal("UNKNOWN_PATH", status.GetDetail<ErrorInfo>()!.Reason);
        }
    }

    [Theory]
    [InlineData(true, "Listen:Address=127.0.0.2")]
    [InlineData(true, "Listen:Address=::1")]
    [InlineData(false, "Listen:Address=0.0.0.0", "Security:AllowAnonymous=true")]
    [InlineData(true, "Listen:Address=0.0.0.0", "Security:AllowAnonymous=true", "Docs:Enabled=true")]
    public async Task Pages_ByDefault_AreShownOnLoopbackOnly(bool shown, params string[] settings)
    {
        await using var app = RunningHost.Build(_ => { }, settings);
        var routes = ((IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>();

        Assert.Equal(shown, routes.Any(route => route.RoutePattern.RawText == "/openapi.json"));
    }

    [Fact]
    public async Task Pages_ReadFast_TakeNothingFromTheRateOfCalls()
    {
        await using var host = await RunningHost.StartAsync("Limits:CallsPerSecond=1");
        for (var i = 0; i < 30; i++)
        {
            using var page = await host.Http.GetAsync(new Uri(i % 2 == 0 ? "/docs/contract" : "/docs/index.html", UriKind.Relative));
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        }

        using var call = await host.Http.GetAsync(new Uri("/v1/capabilities", UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, call.StatusCode);
    }
}
