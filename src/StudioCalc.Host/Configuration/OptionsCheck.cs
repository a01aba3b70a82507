using System.Net;

namespace StudioCalc.Host;

/// <summary>Holds the settings against what the service can do.</summary>
internal static class OptionsCheck
{
    private const int MinKeyLength = 16;

    public static void Check(StudioCalcOptions options)
    {
        Listen(options.Listen);
        Security(options.Security, IPAddress.Parse(options.Listen.Address));
        Limits(options.Limits);
        Stop(options.Stop);
        if (options.Telemetry.OtlpEndpoint is { } endpoint && !IsHttp(endpoint))
        {
            throw new ConfigurationException($"StudioCalc:Telemetry:OtlpEndpoint is '{endpoint}'; give an address such as http://127.0.0.1:4317.");
        }
    }

    private static void Listen(StudioCalcOptions.ListenOptions listen)
    {
        if (!IPAddress.TryParse(listen.Address, out _))
        {
            throw new ConfigurationException($"StudioCalc:Listen:Address is '{listen.Address}'; give an IP address such as 127.0.0.1 or 0.0.0.0.");
        }

        (string Name, int Port)[] ports =
        [
            (nameof(listen.GrpcPort), listen.GrpcPort),
            (nameof(listen.HttpPort), listen.HttpPort),
            (nameof(listen.ManagementPort), listen.ManagementPort),
        ];
        foreach (var (name, port) in ports)
        {
            if (port is < IPEndPoint.MinPort or > IPEndPoint.MaxPort)
            {
                throw new ConfigurationException($"StudioCalc:Listen:{name} is {port}; give a port from 1 to 65535, or 0 for any free port.");
            }
        }

        if (ports.Where(entry => entry.Port != 0).GroupBy(entry => entry.Port).FirstOrDefault(same => same.Count() > 1) is { } same)
        {
            throw new ConfigurationException(
                $"StudioCalc:Listen: {string.Join(" and ", same.Select(entry => entry.Name))} are all {same.Key}; without TLS each needs a port of its own.");
        }
    }

    private static void Security(StudioCalcOptions.SecurityOptions security, IPAddress address)
    {
        if (security.ApiKeys.Any(key => key.Length < MinKeyLength || key.Any(letter => letter is <= ' ' or > '~')))
        {
            throw new ConfigurationException(
                $"StudioCalc:Security:ApiKeys: each key needs at least {MinKeyLength} letters, digits or signs of ASCII, without spaces.");
        }

        if (security.AllowAnonymous && security.ApiKeys.Count > 0)
        {
            throw new ConfigurationException("StudioCalc:Security has both ApiKeys and AllowAnonymous; set one of the two.");
        }

        if (!IPAddress.IsLoopback(address) && security.ApiKeys.Count == 0 && !security.AllowAnonymous)
        {
            throw new ConfigurationException(
                $"StudioCalc:Listen:Address is {address}, which other machines can reach, and no key is asked for. "
                + "Set StudioCalc:Security:ApiKeys (StudioCalc__Security__ApiKeys__0), "
                + "or StudioCalc:Security:AllowAnonymous=true when something before the service keeps strangers out.");
        }

        if (security.CorsOrigins.FirstOrDefault(origin => !IsOrigin(origin)) is { } bad)
        {
            throw new ConfigurationException($"StudioCalc:Security:CorsOrigins has '{bad}'; give scheme, host and port only, such as https://app.example.");
        }
    }

    private static void Limits(StudioCalcOptions.LimitOptions limits)
    {
        if (limits.CallsPerSecond < 0)
        {
            throw new ConfigurationException($"StudioCalc:Limits:CallsPerSecond is {limits.CallsPerSecond}; give a whole number, or 0 for no limit.");
        }

        Time("Limits:MaxCallTime", limits.MaxCallTime, TimeSpan.FromMilliseconds(1), TimeSpan.FromHours(1));
    }

    private static void Stop(StudioCalcOptions.StopOptions stop)
    {
        Time("Stop:NotReadyTime", stop.NotReadyTime, TimeSpan.Zero, TimeSpan.FromHours(1));
        Time("Stop:Timeout", stop.Timeout, TimeSpan.Zero, TimeSpan.FromHours(1));
    }

    private static void Time(string name, TimeSpan value, TimeSpan least, TimeSpan most)
    {
        if (value < least || value > most)
        {
            throw new ConfigurationException($"StudioCalc:{name} is {value}; give a time from {least} to {most}, such as 00:00:30 for half a minute.");
        }
    }

    private static bool IsHttp(string text) => Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https";

    private static bool IsOrigin(string text) =>
        IsHttp(text) && new Uri(text).GetLeftPart(UriPartial.Authority).Equals(text, StringComparison.OrdinalIgnoreCase);
}
