namespace StudioCalc.Host;

/// <summary>A setting is not usable; the message tells which and what to set.</summary>
/// <param name="message">One or two sentences for the person who starts the service.</param>
public sealed class ConfigurationException(string message) : Exception(message)
{
    /// <summary>The exit code, as in sysexits.h; a service manager need not start the same configuration again.</summary>
    public const int ExitCode = 78;
}
