using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net;
using Grpc.Core;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.Metrics;
using Microsoft.Extensions.Logging;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class TelemetryTests
{
    private const string Method = "/studiocalc.v1.ExposureService/EvaluateExposure";

    [Theory]
    [InlineData(Way.Grpc)]
    [InlineData(Way.GrpcWeb)]
    [InlineData(Way.Json)]
    public async Task Calls_AnsweredAndRefused_AreCountedByStatusAndWay(Way way)
    {
        var counted = new ConcurrentQueue<string>();
        await using var host = await RunningHost.StartAsync();
        using var listener = Listen(counted);
        var client = new ExposureService.ExposureServiceClient(host.Invoker(way));

        await client.EvaluateExposureAsync(Requests.Exposure());
        await Assert.ThrowsAsync<RpcException>(() => client.EvaluateExposureAsync(new()).ResponseAsync);
        await host.StopAsync();

        Assert.Contains($"{Method} Ok {way}", counted);
        Assert.Contains($"{Method} InvalidArgument {way}", counted);
    }

    [Fact]
    public async Task UnknownPaths_AreCountedUnderOneName()
    {
        var counted = new ConcurrentQueue<string>();
        await using var host = await RunningHost.StartAsync();
        using var listener = Listen(counted);

        using var reply = await host.Http.GetAsync(new Uri("/nope", UriKind.Relative));
        await host.StopAsync();

        Assert.Contains("unknown NotFound Json", counted);
    }

    [Fact]
    public async Task Documentation_IsNotCounted()
    {
        var counted = new ConcurrentQueue<string>();
        await using var host = await RunningHost.StartAsync();
        using var listener = Listen(counted);

        using var page = await host.Http.GetAsync(new Uri("/docs/index.html", UriKind.Relative));
        using var contract = await host.Http.GetAsync(new Uri("/docs/contract", UriKind.Relative));
        await host.StopAsync();

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (page.StatusCode, contract.StatusCode));
        Assert.DoesNotContain("unknown Ok Json", counted);
    }

    [Fact]
    public async Task Collector_Configured_GetsTracesAndMetrics()
    {
        var received = new ConcurrentQueue<string>();
        await using var collector = Collector(received);
        await collector.StartAsync();
        await using (var host = await RunningHost.StartAsync("Telemetry:OtlpEndpoint=" + collector.Urls.Single()))
        {
            await new ExposureService.ExposureServiceClient(host.Invoker(Way.Grpc)).EvaluateExposureAsync(Requests.Exposure());
            await host.StopAsync();
        }

        Assert.Contains("/opentelemetry.proto.collector.trace.v1.TraceService/Export", received);
        Assert.Contains("/opentelemetry.proto.collector.metrics.v1.MetricsService/Export", received);
    }

    private static MeterListener Listen(ConcurrentQueue<string> counted)
    {
        var listener = new MeterListener
        {
            InstrumentPublished = (instrument, self) =>
            {
                if (instrument.Name == "studiocalc.calls")
                {
                    self.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<long>((_, _, tags, _) => counted.Enqueue(string.Join(' ', tags.ToArray().Select(tag => tag.Value))));
        listener.Start();
        return listener;
    }

    private static WebApplication Collector(ConcurrentQueue<string> received)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, port => port.Protocols = HttpProtocols.Http2));
        var app = builder.Build();
        app.Run(async context =>
        {
            received.Enqueue(context.Request.Path);
            await context.Request.Body.CopyToAsync(Stream.Null);
            context.Response.ContentType = "application/grpc";
            await context.Response.Body.WriteAsync(new byte[5]);
            context.Response.AppendTrailer("grpc-status", "0");
        });
        return app;
    }
}
