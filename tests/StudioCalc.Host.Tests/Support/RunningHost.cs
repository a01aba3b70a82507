using System.Net;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Grpc.Net.Client;
using Grpc.Net.Client.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using StudioCalc.Services;

namespace StudioCalc.Host.Tests;

/// <summary>The real service on free loopback ports, with a caller for each way in.</summary>
public sealed class RunningHost : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly GrpcChannel _grpc;
    private readonly GrpcChannel _web;

    private RunningHost(WebApplication app)
    {
        _app = app;
        Ports = app.Services.GetRequiredService<Ports>();
        Http = new() { BaseAddress = Ports.Http };
        Management = new() { BaseAddress = Ports.Management };
        _grpc = GrpcChannel.ForAddress(Ports.Grpc);
        _web = GrpcChannel.ForAddress(Ports.Http, new()
        {
            HttpHandler = new GrpcWebHandler(new HttpClientHandler()),
            HttpVersion = HttpVersion.Version11,
        });
    }

    public Ports Ports { get; }

    public HttpClient Http { get; }

    public HttpClient Management { get; }

    public GrpcChannel Grpc => _grpc;

    /// <summary>Starts it with settings such as <c>Limits:CallsPerSecond=1</c>.</summary>
    public static Task<RunningHost> StartAsync(params string[] settings) => StartAsync(_ => { }, settings);

    public static async Task<RunningHost> StartAsync(Action<WebApplicationBuilder> configure, params string[] settings)
    {
        var app = Build(configure, ["Listen:GrpcPort=0", "Listen:HttpPort=0", "Listen:ManagementPort=0", .. settings]);
        await app.StartAsync();
        return new(app);
    }

    public static WebApplication Build(Action<WebApplicationBuilder> configure, params IEnumerable<string> settings) =>
        StudioCalcHost.Build([.. settings.Select(setting => "--StudioCalc:" + setting)], builder =>
        {
            builder.Logging.ClearProviders();
            configure(builder);
        });

    /// <summary>A caller over <paramref name="way"/>, showing <paramref name="key"/> when given.</summary>
    public CallInvoker Invoker(Way way, string? key = null)
    {
        CallInvoker invoker = way switch
        {
            Way.Grpc => _grpc.CreateCallInvoker(),
            Way.GrpcWeb => _web.CreateCallInvoker(),
            Way.Json => new JsonCallInvoker(Http),
            Way.InProcess => new InProcessCallInvoker(),
            _ => throw new ArgumentOutOfRangeException(nameof(way)),
        };
        return key is null ? invoker : invoker.Intercept(headers =>
        {
            headers.Add("authorization", "Bearer " + key);
            return headers;
        });
    }

    public Task StopAsync() => _app.StopAsync();

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        Management.Dispose();
        _grpc.Dispose();
        _web.Dispose();
        await _app.DisposeAsync();
    }
}

/// <summary>One service with default settings, shared by the tests of a class.</summary>
public sealed class HostFixture : Xunit.IAsyncLifetime
{
    public RunningHost Host { get; private set; } = null!;

    public async Task InitializeAsync() => Host = await RunningHost.StartAsync();

    public Task DisposeAsync() => Host.DisposeAsync().AsTask();
}
