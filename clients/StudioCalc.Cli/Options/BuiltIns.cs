using System.CommandLine;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>The options that every call has, beside those of its request.</summary>
internal sealed class BuiltIns(IReadOnlyList<FieldDescriptor> files)
{
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

    /// <summary>An option for each field of the answer that may be written to a file.</summary>
    public IReadOnlyList<(FieldDescriptor Field, Option<string?> Option)> Files { get; } =
        [.. files.Select(field => (field, new Option<string?>(AnswerFiles.OptionOf(field))
        {
            Description = $"Writes the {Words.Label(field)} of the answer to a file.",
            HelpName = "file",
        }))];

    public HostOptions Host { get; } = new();

    public Option<bool> Example { get; } = new("--example")
    {
        Description = "Prints a sample request as JSON, ready for --request, and does nothing else.",
    };

    public IReadOnlyList<Option> All => [Request, Output, Units, .. Files.Select(file => file.Option), .. Host.All, Quiet, NoColour, Example];

    /// <summary>Puts the options and their checks on a command.</summary>
    public void AddTo(Command command)
    {
        foreach (var option in All)
        {
            command.Add(option);
        }

        Host.AddChecksTo(command);
    }

    /// <summary>Lets an option take some words only, the first of them unless another is given.</summary>
    public static Option<string> Choice(Option<string> option, params string[] values)
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
