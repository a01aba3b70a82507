namespace StudioCalc.Client;

/// <summary>How to reach a host. Read once, when the client is made.</summary>
public sealed class StudioCalcClientOptions
{
    internal const string TimeoutRule = "Timeout must be positive and at most a day, or infinite.";

    /// <summary>Required. Address of the host's gRPC port, http or https.</summary>
    public Uri? Address { get; set; }

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

    internal static bool IsTimeout(TimeSpan timeout) => IsBetween(timeout, TimeSpan.FromTicks(1), TimeSpan.FromDays(1));

    /// <summary>Everything that is wrong, a sentence each. None repeats the key.</summary>
    internal IEnumerable<string> Faults()
    {
        if (Address is not { IsAbsoluteUri: true, Scheme: "http" or "https" })
        {
            yield return "Address must be an http or https address.";
        }
        else if (ApiKey is not null && Address is { Scheme: "http", IsLoopback: false } && !AllowApiKeyInClearText)
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

    private static bool IsBetween(TimeSpan time, TimeSpan least, TimeSpan most) =>
        time == System.Threading.Timeout.InfiniteTimeSpan || (time >= least && time <= most);
}
