using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>The options that every call has, beside those of its request.</summary>
internal sealed class BuiltIns
{
    public const string KeyVariable = "STUDIOCALC_KEY";

    public Option<string?> Request { get; } = new("--request", "-r")
    {
        Description = "The request as a JSON file, or - for standard input. Typed options go over what it says.",
        HelpName = "file|-",
    };

    public Option<string> Output { get; } = Choice(
        new("--output", "-o") { Description = "The answer as a table, as JSON, or with its working as a sum on paper." },
        "table", "json", "working");

    public Option<string> Units { get; } = Choice(
        new("--units") { Description = "How tables show lengths and temperatures: mm, m and °C, or feet, inches and °F." },
        "metric", "imperial");

    public Option<bool> Quiet { get; } = new("--quiet", "-q")
    {
        Description = "Prints no answer; the exit code tells how it ended. Errors are still printed.",
    };

    public Option<bool> NoColour { get; } = new("--no-colour")
    {
        Description = "No bold and no colour on a terminal either. The environment variable NO_COLOR does the same.",
    };

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

    public Option<bool> Example { get; } = new("--example")
    {
        Description = "Prints a sample request as JSON, ready for --request, and does nothing else.",
    };

    public IReadOnlyList<Option> All => [Request, Output, Units, Server, Key, Deadline, Quiet, NoColour, Example];

    /// <summary>Puts the options and their checks on a command.</summary>
    public void AddTo(Command command)
    {
        foreach (var option in All)
        {
            command.Add(option);
        }

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

    public static Uri? AddressOf(string? text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https" ? address : null;

    /// <summary>A time to wait; null when none is given.</summary>
    /// <exception cref="FormatException">The text is no such time.</exception>
    public static TimeSpan? TimeOf(string? text) => text is null
        ? null
        : TimeShape.Read(text).ToTimeSpan() is var time && time > TimeSpan.Zero && time <= TimeSpan.FromDays(1)
            ? time
            : throw new FormatException($"\"{text}\" cannot be waited for; write a time above zero and up to a day, such as \"2 s\".");

    private static Option<string> Choice(Option<string> option, params string[] values)
    {
        option.HelpName = string.Join('|', values);
        option.DefaultValueFactory = _ => values[0];
        option.CompletionSources.Add(values);
        option.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && !values.Contains(token.Value))
            {
                result.AddError($"{option.Name}: \"{token.Value}\" is none of its values; write {Words.Or(values)}.");
            }
        });
        return option;
    }
}
