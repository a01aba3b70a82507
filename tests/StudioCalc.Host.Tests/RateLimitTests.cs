using System.Net;
using Google.Rpc;
using Grpc.Core;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class RateLimitTests(RateLimitTests.LimitedHost fixture) : IClassFixture<RateLimitTests.LimitedHost>
{
    [Theory]
    [InlineData(Way.Grpc)]
    [InlineData(Way.GrpcWeb)]
    [InlineData(Way.Json)]
    public async Task Calls_FasterThanTheLimit_AreRefusedWithATimeToWait(Way way)
    {
        var client = new CapabilitiesService.CapabilitiesServiceClient(fixture.Host.Invoker(way));

        var error = await Assert.ThrowsAsync<RpcException>(() => Repeat(async () => await client.GetCapabilitiesAsync(new())));

        var status = error.GetRpcStatus()!;
        Refused.Same(new(Code.ResourceExhausted, "RATE_EXCEEDED", []), Refused.Of(status));
        Assert.True(status.GetDetail<RetryInfo>()!.RetryDelay.ToTimeSpan() > TimeSpan.Zero);
    }

    [Fact]
    public async Task Json_FasterThanTheLimit_Is429WithRetryAfter()
    {
        HttpResponseMessage? refused = null;
        await Repeat(async () =>
        {
            var reply = await fixture.Host.Http.GetAsync(new Uri("/v1/capabilities", UriKind.Relative));
            refused = reply.IsSuccessStatusCode ? refused : reply;
        });

        Assert.Equal(HttpStatusCode.TooManyRequests, refused!.StatusCode);
        Assert.True(refused.Headers.RetryAfter!.Delta >= TimeSpan.FromSeconds(1));
    }

    [Fact]
    public async Task Health_AnyRate_IsAnswered()
    {
        var health = new Grpc.Health.V1.Health.HealthClient(fixture.Host.Invoker(Way.Grpc));

        await Repeat(async () => await health.CheckAsync(new()));
    }

    // The limit is one call a second; some of these fall into the same second on any machine.
    private static async Task Repeat(Func<Task> call)
    {
        for (var i = 0; i < 50; i++)
        {
            await call();
        }
    }

    public sealed class LimitedHost : IAsyncLifetime
    {
        public RunningHost Host { get; private set; } = null!;

        public async Task InitializeAsync() => Host = await RunningHost.StartAsync("Limits:CallsPerSecond=1");

        public Task DisposeAsync() => Host.DisposeAsync().AsTask();
    }
}
