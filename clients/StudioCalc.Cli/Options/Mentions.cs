using System.Globalization;
using System.Text.RegularExpressions;

namespace StudioCalc.Cli;

/// <summary>What the arguments mention: options are made for these commands and items of lists, as a list has no fixed length.</summary>
internal sealed partial class Mentions(IReadOnlyList<string> args)
{
    private readonly ILookup<string, int> _indexes = Find(args)
        .ToLookup(found => found.List, found => found.Index, StringComparer.Ordinal);

    private readonly Dictionary<string, int> _counts = Names(args).CountBy(name => name, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);

    /// <summary>No arguments: each list is known by its first item.</summary>
    public static Mentions None { get; } = new([]);

    /// <summary>The items of a list to make options for: the first, those mentioned, and the one after them.</summary>
    public IEnumerable<int> Indexes(string list)
    {
        var mentioned = _indexes[list].Order().Distinct().ToList();
        return mentioned.Count == 0 ? [0] : mentioned.Prepend(0).Append(mentioned[^1] + 1).Distinct();
    }

    /// <summary>Whether a command is mentioned; an argument may also be a whole line that a shell asks to complete.</summary>
    public bool Has(string command) => args.Any(arg => arg.Contains(command, StringComparison.Ordinal));

    /// <summary>How often an option is mentioned.</summary>
    public int Count(string option) => _counts.GetValueOrDefault(option);

    private static IEnumerable<(string List, int Index)> Find(IEnumerable<string> args) =>
        from name in Names(args)
        from Match index in IndexPart().Matches(name)
        select (name[..index.Index], int.Parse(index.Groups["index"].Value, CultureInfo.InvariantCulture));

    private static IEnumerable<string> Names(IEnumerable<string> args) =>
        from arg in args
        from Match name in OptionName().Matches(arg)
        select name.Value;

    [GeneratedRegex(@"--[a-z][a-z0-9.-]*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OptionName();

    [GeneratedRegex(@"\.(?<index>0|[1-9][0-9]{0,6})(?=\.|\z)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex IndexPart();
}
