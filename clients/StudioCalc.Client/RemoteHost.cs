using System.Net.Http;
using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Net.Client.Configuration;
using Microsoft.Extensions.Logging;

namespace StudioCalc.Client;

/// <summary>Makes the channel to a remote host from valid options.</summary>
internal static class RemoteHost
{
    public static StudioCalcClient Connect(StudioCalcClientOptions options, ILoggerFactory? loggers)
    {
        var channel = GrpcChannel.ForAddress(options.Address!, new()
        {
            HttpHandler = new SocketsHttpHandler
            {
                EnableMultipleHttp2Connections = true,
                KeepAlivePingDelay = options.KeepAliveDelay,
                KeepAlivePingTimeout = options.KeepAliveTimeout,
                PooledConnectionIdleTimeout = options.IdleTimeout,
            },
            DisposeHttpClient = true,
            LoggerFactory = loggers,
            ServiceConfig = new() { MethodConfigs = { EveryCall(options.MaxAttempts) } },
        });
        var headers = options.ApiKey is { } key ? new Metadata { { "authorization", $"Bearer {key}" } } : null;
        return new(new CallPath(channel.CreateCallInvoker(), options.Timeout, headers), channel);
    }

    private static MethodConfig EveryCall(int maxAttempts) => new()
    {
        Names = { MethodName.Default },
        RetryPolicy = maxAttempts == 1 ? null : new()
        {
            MaxAttempts = maxAttempts,
            InitialBackoff = TimeSpan.FromMilliseconds(100),
            MaxBackoff = TimeSpan.FromSeconds(1),
            BackoffMultiplier = 2,
            RetryableStatusCodes = { StatusCode.Unavailable },
        },
    };
}
