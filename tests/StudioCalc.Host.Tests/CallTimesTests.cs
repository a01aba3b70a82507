using System.Collections.Concurrent;
using Grpc.AspNetCore.Server;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Microsoft.Extensions.DependencyInjection;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class CallTimesTests
{
    [Theory]
    [InlineData(Way.Grpc)]
    [InlineData(Way.GrpcWeb)]
    public async Task Call_WithoutOrBeyondTheMaximum_GetsTheMaximum(Way way)
    {
        var probe = new Probe();
        await using var host = await RunningHost.StartAsync(
            builder => builder.Services.AddSingleton(probe).Configure<GrpcServiceOptions>(options => options.Interceptors.Add<Probe>()),
            "Limits:MaxCallTime=00:10:00");
        var client = new CapabilitiesService.CapabilitiesServiceClient(host.Invoker(way));
        var dayAfterTomorrow = DateTime.UtcNow.AddDays(2);

        await client.GetCapabilitiesAsync(new());
        await client.GetCapabilitiesAsync(new(), deadline: dayAfterTomorrow);

        Assert.Equal(2, probe.Deadlines.Count);
        Assert.All(probe.Deadlines, deadline => Assert.True(deadline < dayAfterTomorrow.AddDays(-1)));
    }

    private sealed class Probe : Interceptor
    {
        public ConcurrentQueue<DateTime> Deadlines { get; } = new();

        public override Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
            TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
        {
            Deadlines.Enqueue(context.Deadline);
            return continuation(request, context);
        }
    }
}
