namespace StudioCalc.Host;

/// <summary>The settings of the service, read once at start from the configuration section <c>StudioCalc</c>.</summary>
public sealed record StudioCalcOptions
{
    /// <summary>Where it listens.</summary>
    public ListenOptions Listen { get; init; } = new();

    /// <summary>Who may call.</summary>
    public SecurityOptions Security { get; init; } = new();

    /// <summary>How much a caller may ask for.</summary>
    public LimitOptions Limits { get; init; } = new();

    /// <summary>What it shows of its documentation.</summary>
    public DocsOptions Docs { get; init; } = new();

    /// <summary>Where traces and metrics go.</summary>
    public TelemetryOptions Telemetry { get; init; } = new();

    /// <summary>How it stops.</summary>
    public StopOptions Stop { get; init; } = new();

    /// <summary>An address and three ports; port 0 means any free port.</summary>
    public sealed record ListenOptions
    {
        /// <summary>The IP address to listen on.</summary>
        public string Address { get; init; } = "127.0.0.1";

        /// <summary>HTTP/2 in clear text: gRPC.</summary>
        public int GrpcPort { get; init; } = 8081;

        /// <summary>HTTP/1.1: JSON and gRPC-Web.</summary>
        public int HttpPort { get; init; } = 8080;

        /// <summary>HTTP/1.1: health.</summary>
        public int ManagementPort { get; init; } = 8082;
    }

    /// <summary>Keys and browsers.</summary>
    public sealed record SecurityOptions
    {
        /// <summary>The keys that callers may show. Empty means that no key is asked for.</summary>
        public IReadOnlyList<string> ApiKeys { get; init; } = [];

        /// <summary>Lets the service listen beyond loopback without keys.</summary>
        public bool AllowAnonymous { get; init; }

        /// <summary>The origins of web pages that may call. Empty means none.</summary>
        public IReadOnlyList<string> CorsOrigins { get; init; } = [];
    }

    /// <summary>Limits on callers.</summary>
    public sealed record LimitOptions
    {
        /// <summary>Calls a second for each key, or for each remote address where no key is asked for; 0 is no limit.</summary>
        public int CallsPerSecond { get; init; }

        /// <summary>The longest that a call may take, whatever deadline the caller sets.</summary>
        public TimeSpan MaxCallTime { get; init; } = TimeSpan.FromSeconds(30);
    }

    /// <summary>Documentation.</summary>
    public sealed record DocsOptions
    {
        /// <summary>Whether it is served. Unset means only while the service listens on loopback.</summary>
        public bool? Enabled { get; init; }

        /// <summary>Whether it can be read without a key where calls need one.</summary>
        public bool WithoutKey { get; init; }
    }

    /// <summary>Telemetry.</summary>
    public sealed record TelemetryOptions
    {
        /// <summary>The collector that takes OTLP over gRPC. Unset means that nothing is sent.</summary>
        public string? OtlpEndpoint { get; init; }
    }

    /// <summary>Stopping.</summary>
    public sealed record StopOptions
    {
        /// <summary>How long it still takes calls after it has reported that it is not ready.</summary>
        public TimeSpan NotReadyTime { get; init; }

        /// <summary>How long calls in flight may take to finish.</summary>
        public TimeSpan Timeout { get; init; } = TimeSpan.FromSeconds(30);
    }
}
