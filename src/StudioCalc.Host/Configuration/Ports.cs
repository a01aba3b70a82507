using System.Net;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace StudioCalc.Host;

/// <summary>The three ports in clear text: without TLS, HTTP/1.1 and HTTP/2 cannot share one.</summary>
public sealed class Ports
{
    // A body beyond this cuts the connection. Far above what is ever read, so that a caller who sends too much
    // can still read why it is refused.
    private const int MaxBodyBytes = 64 * 1024 * 1024;

    private ListenOptions? _grpc;
    private ListenOptions? _http;
    private ListenOptions? _management;

    private Ports()
    {
    }

    /// <summary>Where gRPC is answered, as bound.</summary>
    public Uri Grpc => Address(_grpc);

    /// <summary>Where JSON and gRPC-Web are answered, as bound.</summary>
    public Uri Http => Address(_http);

    /// <summary>Where health is answered, as bound.</summary>
    public Uri Management => Address(_management);

    internal static void Add(WebApplicationBuilder builder, StudioCalcOptions.ListenOptions listen)
    {
        var ports = new Ports();
        var address = IPAddress.Parse(listen.Address);
        builder.Services.AddSingleton(ports);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MaxBodyBytes;
            kestrel.Listen(address, listen.GrpcPort, port => (ports._grpc = port).Protocols = HttpProtocols.Http2);
            kestrel.Listen(address, listen.HttpPort, port => (ports._http = port).Protocols = HttpProtocols.Http1);
            kestrel.Listen(address, listen.ManagementPort, port =>
            {
                (ports._management = port).Protocols = HttpProtocols.Http1;
                port.Use(next => connection =>
                {
                    connection.Features.Set(new ManagementConnection());
                    return next(connection);
                });
            });
        });
    }

    internal static bool IsManagement(HttpContext context) => context.Features.Get<ManagementConnection>() is not null;

    private static Uri Address(ListenOptions? port) => port?.IPEndPoint is { Port: > 0 } endpoint
        ? new($"http://{endpoint}")
        : throw new InvalidOperationException("The service has not started.");

    private sealed class ManagementConnection;
}
