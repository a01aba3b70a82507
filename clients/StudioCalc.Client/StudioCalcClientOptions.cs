namespace StudioCalc.Client;

/// <summary>How to reach a host. Read once, when the client is made.</summary>
public sealed class StudioCalcClientOptions
{
    internal const string Dns = "dns";
    internal const string TimeoutRule = "Timeout must be positive and at most a day, or infinite.";

    /// <summary>Address of the host's gRPC port, http or https; or <c>dns:///name:port</c> for all hosts that a name stands for,
    /// which take calls in turn. Required, unless <see cref="Addresses"/> are given.</summary>
    public Uri? Address { get; set; }

    /// <summary>Addresses of several hosts, all http or all https, which take calls in turn; one that is away is passed over.
    /// Stands in the place of <see cref="Address"/>. Default: none.</summary>
    public IList<Uri> Addresses { get; } = [];

    /// <summary>Whether the hosts of a <c>dns:///</c> address are spoken to over TLS. Default: yes.</summary>
    public bool DnsTls { get; set; } = true;

    /// <summary>How often the name of a <c>dns:///</c> address is asked again, from 1 s, so that new hosts are found.
    /// <see cref="Timeout.InfiniteTimeSpan"/> for only when a connection is lost. Default: 30 s.</summary>
    public TimeSpan DnsRefresh { get; set; } = TimeSpan.FromSeconds(30);

    /// <summary>The time allowed for a call with all its attempts. <see cref="Timeout.InfiniteTimeSpan"/> for no limit.
    /// Default: 5 s.</summary>
    public TimeSpan Timeout { get; set; } = TimeSpan.FromSeconds(5);

    /// <summary>The key that the host asks for, sent as <c>authorization: Bearer</c>. Default: none.</summary>
    public string? ApiKey { get; set; }

    /// <summary>Whether the key may go over http to another machine, where anybody on the way can read it. Default: no.</summary>
    public bool AllowApiKeyInClearText { get; set; }

    /// <summary>How often a call is tried in all while the host is UNAVAILABLE, from 1 to 5. Every call may be repeated safely.
    /// Default: 3.</summary>
    public int MaxAttempts { get; set; } = 3;

    /// <summary>Quiet time after which the connection is tested, from 1 s. <see cref="Timeout.InfiniteTimeSpan"/> for never.
    /// Default: 30 s.</summary>
    public TimeSpan KeepAliveDelay { get; set; } = TimeSpan.FromSeconds(30);

    /// <summary>Time for the test's answer, from 1 s; without one the connection is replaced. Default: 10 s.</summary>
    public TimeSpan KeepAliveTimeout { get; set; } = TimeSpan.FromSeconds(10);

    /// <summary>Time after which an unused connection is closed, before something on the way drops it unseen.
    /// <see cref="Timeout.InfiniteTimeSpan"/> for never. Default: 5 min.</summary>
    public TimeSpan IdleTimeout { get; set; } = TimeSpan.FromMinutes(5);

    /// <summary>Whether the hosts are spoken to over TLS.</summary>
    internal bool IsTls => Addresses.Count > 0 ? Addresses[0].Scheme == Uri.UriSchemeHttps
        : Address?.Scheme == Dns ? DnsTls : Address?.Scheme == Uri.UriSchemeHttps;

    internal static bool IsTimeout(TimeSpan timeout) => IsBetween(timeout, TimeSpan.FromTicks(1), TimeSpan.FromDays(1));

    /// <summary>Everything that is wrong, a sentence each. None repeats the key.</summary>
    internal IEnumerable<string> Faults()
    {
        if (AddressFault() is { } fault)
        {
            yield return fault;
        }
        else if (ApiKey is not null && !AllowApiKeyInClearText && !IsTls && !(Addresses is [] ? [Address!] : Addresses).All(IsOnThisMachine))
        {
            yield return "ApiKey would go over the network in clear text: use https, or set AllowApiKeyInClearText.";
        }

        if (ApiKey is { } key && (key.Length == 0 || key.Any(letter => letter is <= ' ' or > '~')))
        {
            yield return "ApiKey must be printable ASCII without spaces.";
        }

        if (!IsTimeout(Timeout))
        {
            yield return TimeoutRule;
        }

        if (!IsBetween(DnsRefresh, TimeSpan.FromSeconds(1), TimeSpan.FromDays(1)))
        {
            yield return "DnsRefresh must lie between a second and a day, or be infinite.";
        }

        if (MaxAttempts is < 1 or > 5)
        {
            yield return "MaxAttempts must lie between 1 and 5.";
        }

        if (!IsBetween(KeepAliveDelay, TimeSpan.FromSeconds(1), TimeSpan.FromDays(1)))
        {
            yield return "KeepAliveDelay must lie between a second and a day, or be infinite.";
        }

        if (!IsBetween(KeepAliveTimeout, TimeSpan.FromSeconds(1), TimeSpan.FromDays(1)))
        {
            yield return "KeepAliveTimeout must lie between a second and a day, or be infinite.";
        }

        if (!IsBetween(IdleTimeout, TimeSpan.FromSeconds(1), TimeSpan.FromDays(1)))
        {
            yield return "IdleTimeout must lie between a second and a day, or be infinite.";
        }
    }

    private string? AddressFault() => (Address, Addresses) switch
    {
        ({ }, not []) => "Address and Addresses cannot stand beside each other.",
        (null, not []) when !Addresses.All(IsHttp) || Addresses.Select(address => address.Scheme).Distinct(StringComparer.Ordinal).Count() > 1 =>
            "Addresses must be all http or all https addresses.",
        (null, []) => "Address must be given.",
        ({ IsAbsoluteUri: true, Scheme: Dns, AbsolutePath.Length: > 1 }, []) => null,
        ({ } address, []) when !IsHttp(address) => "Address must be an http or https address, or dns:///name:port.",
        _ => null,
    };

    // A dns address has no host part, which counts as loopback; where its name leads is not known.
    private static bool IsOnThisMachine(Uri address) => IsHttp(address) && address.IsLoopback;

    private static bool IsHttp(Uri address) => address is { IsAbsoluteUri: true, Scheme: "http" or "https" };

    private static bool IsBetween(TimeSpan time, TimeSpan least, TimeSpan most) =>
        time == System.Threading.Timeout.InfiniteTimeSpan || (time >= least && time <= most);
}
