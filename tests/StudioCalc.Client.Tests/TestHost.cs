using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
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
    public static Task<TestHost> StartAsync(HttpProtocols protocols = HttpProtocols.Http2, bool tls = false) => StartAsync(
        protocols,
        app =>
        {
            app.MapGrpcService<CapabilitiesAdapter>();
            app.MapGrpcService<ExposureAdapter>();
            app.MapGrpcService<LightingRatioAdapter>();
        },
        tls: tls);

    /// <summary>Serves a script in the place of the exposure service.</summary>
    public static Task<TestHost> StartAsync(ScriptedExposure script) => StartAsync(
        HttpProtocols.Http2, app => app.MapGrpcService<ScriptedExposure>(), services => services.AddSingleton(script));

    public StudioCalcClient Connect(Action<StudioCalcClientOptions>? configure = null)
    {
        var options = new StudioCalcClientOptions { Address = Address, Timeout = TimeSpan.FromMinutes(1) };
        configure?.Invoke(options);
        return StudioCalcClient.Connect(options);
    }

    /// <summary>Stops as a host does that is told to: calls that have begun are answered first.</summary>
    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }

    /// <summary>Serves what the test maps.</summary>
    public static async Task<TestHost> StartAsync(
        HttpProtocols protocols, Action<WebApplication> map, Action<IServiceCollection>? add = null, int port = 0, bool tls = false)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, port, listen =>
        {
            listen.Protocols = protocols;
            if (tls)
            {
                listen.UseHttps(OwnCertificate());
            }
        }));
        builder.Services.AddGrpc(grpc => grpc.Interceptors.Add<ContractInterceptor>());
        add?.Invoke(builder.Services);
        var app = builder.Build();
        map(app);
        await app.StartAsync();
        return new(app);
    }

    private static X509Certificate2 OwnCertificate()
    {
        using var key = RSA.Create(2048);
        var now = TimeProvider.System.GetUtcNow();
        return new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1)
            .CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
    }
}
