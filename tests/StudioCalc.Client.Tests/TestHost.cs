using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

/// <summary>A gRPC host on a free loopback port.</summary>
public sealed class TestHost : IAsyncDisposable
{
    private readonly WebApplication _app;

    private TestHost(WebApplication app) => _app = app;

    public Uri Address => new(
        _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());

    /// <summary>Serves the real answers with the real checks.</summary>
    public static Task<TestHost> StartAsync(HttpProtocols protocols = HttpProtocols.Http2) => StartAsync(protocols, app =>
    {
        app.MapGrpcService<CapabilitiesAdapter>();
        app.MapGrpcService<ExposureAdapter>();
        app.MapGrpcService<LightingRatioAdapter>();
    });

    /// <summary>Serves a script in the place of the exposure service.</summary>
    public static Task<TestHost> StartAsync(ScriptedExposure script) =>
        StartAsync(HttpProtocols.Http2, app => app.MapGrpcService<ScriptedExposure>(), script);

    public StudioCalcClient Connect(Action<StudioCalcClientOptions>? configure = null)
    {
        var options = new StudioCalcClientOptions { Address = Address, Timeout = TimeSpan.FromMinutes(1) };
        configure?.Invoke(options);
        return StudioCalcClient.Connect(options);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private static async Task<TestHost> StartAsync(HttpProtocols protocols, Action<WebApplication> map, ScriptedExposure? script = null)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, listen => listen.Protocols = protocols));
        builder.Services.AddGrpc(grpc => grpc.Interceptors.Add<ContractInterceptor>());
        if (script is not null)
        {
            builder.Services.AddSingleton(script);
        }

        var app = builder.Build();
        map(app);
        await app.StartAsync();
        return new(app);
    }
}
