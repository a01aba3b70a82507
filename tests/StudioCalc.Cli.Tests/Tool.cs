using System.CommandLine;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;
using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

/// <summary>Runs the command line in this process.</summary>
internal static class Tool
{
    public static string Sample(string call) => RepositoryRoot.At("docs", "examples", call + ".json");

    public static IEnumerable<MethodDescriptor> Calls => Contract.Services.SelectMany(service => service.Methods);

    public static MethodDescriptor Call(string name) => Calls.Single(call => call.Name == name);

    public static async Task<(int Code, string Output, string Errors)> Run(string[] args, string input = "", bool colour = false)
    {
        using var reader = new StringReader(input);
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var code = await new CommandLine(new(reader, output, errors, colour)).RunAsync(args);
        return (code, output.ToString(), errors.ToString());
    }

    /// <summary>A command with its words between gaps and quotes.</summary>
    public static Task<(int Code, string Output, string Errors)> Run(string line, string input = "", bool colour = false) =>
        Run([.. Words(line)], input, colour);

    /// <summary>Reads options as the command of a call does.</summary>
    public static (IMessage Request, IReadOnlyList<(string Name, string Text)> Refusals) Read(
        MethodDescriptor call, IReadOnlyList<string> args, IMessage? file = null)
    {
        var options = new CallOptions(call, new(args));
        var command = new RootCommand();
        options.AddTo(command);
        var parsed = command.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        Assert.Empty(parsed.Errors);
        var told = new TypedRequest(file ?? call.InputType.Parser.ParseFrom(ByteString.Empty));
        told.Take(options.Typed(parsed));
        return (told.Request, told.Refusals);
    }

    /// <summary>Splits a line as a shell does, as far as double quotes and continued lines go.</summary>
    public static IEnumerable<string> Words(string line)
    {
        var word = "";
        var (isQuoted, isWord) = (false, false);
        foreach (var letter in line.Replace("\\\n", " ", StringComparison.Ordinal))
        {
            if (letter == '"')
            {
                (isQuoted, isWord) = (!isQuoted, true);
            }
            else if (isQuoted || !char.IsWhiteSpace(letter))
            {
                (word, isWord) = (word + letter, true);
            }
            else if (isWord)
            {
                yield return word;
                (word, isWord) = ("", false);
            }
        }

        if (isWord)
        {
            yield return word;
        }
    }
}
