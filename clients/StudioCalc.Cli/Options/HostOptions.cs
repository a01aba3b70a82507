using System.CommandLine;
using StudioCalc.Client;
using StudioCalc.Client.Embedded;

namespace StudioCalc.Cli;

/// <summary>The options that tell where answers are worked out.</summary>
internal sealed class HostOptions
{
    private const string KeyVariable = "STUDIOCALC_KEY";

    public Option<string?> Server { get; } = new("--server", "-s")
    {
        Description = "Address of a host's gRPC port, such as http://127.0.0.1:8081. Without it the answer is worked out in this process.",
        HelpName = "address",
    };

    public Option<string?> Key { get; } = new("--server-key")
    {
        Description = $"The key that the host asks for. The environment variable {KeyVariable} keeps it off the command line.",
        HelpName = "key",
    };

    public Option<string?> Deadline { get; } = new("--deadline")
    {
        Description = "The longest to wait for the answer, such as \"2 s\". Unset means 5 s with --server, otherwise no limit.",
        HelpName = "time",
    };

    public IReadOnlyList<Option> All => [Server, Key, Deadline];

    /// <summary>Puts the checks of the options on their command.</summary>
    public void AddChecksTo(Command command)
    {
        Server.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } address && AddressOf(address) is null)
            {
                result.AddError("--server: not an http or https address; write one such as http://127.0.0.1:8081.");
            }
        });
        Deadline.Validators.Add(result =>
        {
            try
            {
                TimeOf(result.GetValueOrDefault<string?>());
            }
            catch (FormatException error)
            {
                result.AddError($"--deadline: {error.Message}");
            }
        });
        command.Validators.Add(result =>
        {
            if (result.GetValue(Key) is not null && result.GetValue(Server) is null)
            {
                result.AddError("--server-key: goes with --server; in this process no key is needed, so leave it out.");
            }
        });
    }

    /// <summary>A client of the host that is named, or one with the services in this process.</summary>
    /// <exception cref="ArgumentException">The host cannot be called so.</exception>
    public StudioCalcClient Connect(ParseResult parsed)
    {
        var deadline = TimeOf(parsed.GetValue(Deadline));
        if (parsed.GetValue(Server) is not { } address)
        {
            return EmbeddedStudioCalc.Create(deadline);
        }

        var options = new StudioCalcClientOptions
        {
            Address = AddressOf(address),
            ApiKey = parsed.GetValue(Key) ?? Environment.GetEnvironmentVariable(KeyVariable),
        };
        options.Timeout = deadline ?? options.Timeout;
        return StudioCalcClient.Connect(options);
    }

    private static Uri? AddressOf(string? text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https" ? address : null;

    /// <summary>A time to wait; null when none is given.</summary>
    /// <exception cref="FormatException">The text is no such time.</exception>
    private static TimeSpan? TimeOf(string? text) => text is null
        ? null
        : TimeShape.Read(text).ToTimeSpan() is var time && time > TimeSpan.Zero && time <= TimeSpan.FromDays(1)
            ? time
            : throw new FormatException($"\"{text}\" cannot be waited for; write a time above zero and up to a day, such as \"2 s\".");
}
