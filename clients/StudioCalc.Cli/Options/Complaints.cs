using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>What is wrong with a command line, each in a sentence that says what to write.</summary>
internal static class Complaints
{
    private const int Shown = 9;

    /// <summary>The complaints; empty when the line can be read.</summary>
    /// <param name="args">The line.</param>
    /// <param name="parsed">What became of it.</param>
    /// <param name="options">The options of the call that was named; null when none was.</param>
    public static IReadOnlyList<string> About(IReadOnlyList<string> args, ParseResult parsed, CallOptions? options)
    {
        var command = parsed.CommandResult.Command;
        if (options is null)
        {
            return parsed.UnmatchedTokens is [var word, ..] && command.Subcommands.Count > 0
                ? [$"{word}: there is no such command; write {Words.Or([.. command.Subcommands.Select(inner => inner.Name)])}."]
                : [.. parsed.Errors.Select(error => error.Message)];
        }

        var known = command.Options.Concat(parsed.RootCommandResult.Command.Options).SelectMany(option => option.Aliases.Append(option.Name)).ToList();
        var unknown = args.Where(arg => arg.StartsWith("--", StringComparison.Ordinal) && arg.Length > 2)
            .Select(arg => arg.Split('=', ':')[0])
            .Where(name => !known.Contains(name))
            .Distinct()
            .ToList();
        return unknown.Count > 0 ? [.. unknown.Select(name => $"{name}: {Unknown(name, known, options)}")]
            : parsed.UnmatchedTokens.Count > 0 ? [.. parsed.UnmatchedTokens.Select(Stray)]
            : [.. parsed.Errors.Select(error => error.Message)];
    }

    private static string Stray(string word) =>
        $"\"{word}\" belongs to no option; put a value with spaces between quotes, and begin an option with two dashes.";

    private static string Unknown(string name, List<string> known, CallOptions options)
    {
        var all = options.Tree.SelectMany(spec => spec.All).ToList();
        if (all.Find(spec => spec.Name == name || (spec.Index is not null && spec.Name[..spec.Name.LastIndexOf('.')] == name)) is { } group)
        {
            var parts = group.Kind == OptionKind.Group ? group.Parts.Select(part => part.IsTyped ? part.Name : part.Name + ".*") : [group.Name];
            return group.Index is null || group.Name == name
                ? $"takes no value itself; write {Choice(parts)}."
                : $"is a list, counted from 0; write for its first item {Choice(parts)}.";
        }

        var ending = "." + name.TrimStart('-');
        var inside = all.Where(spec => spec.IsTyped && spec.Name.EndsWith(ending, StringComparison.Ordinal)).Select(spec => spec.Name).ToList();
        if (inside.Count > 0)
        {
            return $"there is no such option; write {Choice(inside)}.";
        }

        var near = known.Select(other => (Name: other, Distance: Distance(name, other))).MinBy(other => other.Distance);
        return near.Distance <= Math.Max(2, name.Length / 3)
            ? $"there is no such option; did you mean {near.Name}?"
            : "there is no such option; --help lists them all.";
    }

    private static string Choice(IEnumerable<string> names)
    {
        var list = names.Distinct().ToList();
        return list.Count <= Shown ? Words.Or(list) : $"{string.Join(", ", list.Take(Shown))} or another that --help lists";
    }

    // The fewest letters to add, drop or change.
    private static int Distance(string one, string other)
    {
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var (corner, left) = (row[0], i);
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                left = Math.Min(Math.Min(row[j], left) + 1, corner + (one[i - 1] == other[j - 1] ? 0 : 1));
                (corner, row[j]) = (row[j], left);
            }
        }

        return row[^1];
    }
}
