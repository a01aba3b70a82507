using System.Net;
using Grpc.Health.V1;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class StopTests
{
    [Fact]
    public async Task Stop_CallInFlight_ReportsNotReadyAndFinishesTheCall()
    {
        var hold = new Hold();
        await using var host = await RunningHost.StartAsync(
            builder => builder.Services.AddSingleton<IStartupFilter>(hold), "Stop:NotReadyTime=00:00:03");
        var health = new Health.HealthClient(host.Invoker(Way.Grpc));
        Assert.Equal(HttpStatusCode.OK, await ReadyAsync(host));
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/capabilities") { Headers = { { Hold.Header, "yes" } } };
        var call = host.Http.SendAsync(request);
        await hold.Arrived.Task;

        var stop = host.StopAsync();
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await ReadyAsync(host));
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.NotServing, (await health.CheckAsync(new())).Status);
        Assert.False(call.IsCompleted);
        Assert.False(stop.IsCompleted);
        hold.Release.SetResult();
        using var reply = await call;
        await stop;

        Assert.Equal(HttpStatusCode.OK, reply.StatusCode);
        await Assert.ThrowsAsync<HttpRequestException>(() => ReadyAsync(host));
    }

    private static async Task<HttpStatusCode> ReadyAsync(RunningHost host)
    {
        using var reply = await host.Management.GetAsync(new Uri("/health/ready", UriKind.Relative));
        return reply.StatusCode;
    }

    // Holds a call until it is released.
    private sealed class Hold : IStartupFilter
    {
        public const string Header = "x-hold";

        public TaskCompletionSource Arrived { get; } = new();

        public TaskCompletionSource Release { get; } = new();

        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use(async (context, following) =>
            {
                if (context.Request.Headers.ContainsKey(Header))
                {
                    Arrived.SetResult();
                    await Release.Task;
                }

                await following(context);
            });
            next(app);
        };
    }
}
