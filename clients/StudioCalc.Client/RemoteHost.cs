using System.Net.Http;
using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Net.Client.Balancer;
using Grpc.Net.Client.Configuration;
using Microsoft.Extensions.Logging;

namespace StudioCalc.Client;

/// <summary>Makes the channel to a remote host, or to several, from valid options.</summary>
internal static class RemoteHost
{
    private static readonly Uri StaticTarget = new("static:///studiocalc");

    public static StudioCalcClient Connect(StudioCalcClientOptions options, ILoggerFactory? loggers)
    {
        var connections = new Connections();
        var channel = GrpcChannel.ForAddress(options.Addresses.Count > 0 ? StaticTarget : options.Address!, new()
        {
            Credentials = options.IsTls ? ChannelCredentials.SecureSsl : ChannelCredentials.Insecure,
            HttpHandler = new SocketsHttpHandler
            {
                EnableMultipleHttp2Connections = true,
                KeepAlivePingDelay = options.KeepAliveDelay,
                KeepAlivePingTimeout = options.KeepAliveTimeout,
                PooledConnectionIdleTimeout = options.IdleTimeout,
            },
            DisposeHttpClient = true,
            InitialReconnectBackoff = TimeSpan.FromSeconds(0.25),
            MaxReconnectBackoff = TimeSpan.FromSeconds(5),
            LoggerFactory = loggers,
            ServiceConfig = new()
            {
                LoadBalancingConfigs = { new(Connections.Policy) },
                MethodConfigs = { EveryCall(options.MaxAttempts) },
            },
            ServiceProvider = new ChannelServices(connections, ResolverOf(options)),
        });
        var headers = options.ApiKey is { } key ? new Metadata { { "authorization", $"Bearer {key}" } } : null;
        return new(new CallPath(channel.CreateCallInvoker(), options.Timeout, headers, options.Address, connections), channel);
    }

    // An http or https address needs none.
    private static ResolverFactory? ResolverOf(StudioCalcClientOptions options)
    {
        if (options.Addresses.Count > 0)
        {
            var hosts = options.Addresses.Select(address => new BalancerAddress(address.Host, address.Port)).ToArray();
            return new StaticResolverFactory(_ => hosts);
        }

        return options.Address!.Scheme == StudioCalcClientOptions.Dns ? new DnsResolverFactory(options.DnsRefresh) : null;
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

    /// <summary>Hands the channel what it asks a container for.</summary>
    private sealed class ChannelServices(LoadBalancerFactory balancer, ResolverFactory? resolver) : IServiceProvider
    {
        private readonly LoadBalancerFactory[] _balancers = [balancer];
        private readonly ResolverFactory[] _resolvers = resolver is null ? [] : [resolver];

        public object? GetService(Type serviceType) =>
            serviceType == typeof(IEnumerable<LoadBalancerFactory>) ? _balancers
            : serviceType == typeof(IEnumerable<ResolverFactory>) ? _resolvers
            : null;
    }
}
