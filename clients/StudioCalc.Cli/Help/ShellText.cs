namespace StudioCalc.Cli;

/// <summary>Commands as a shell takes them.</summary>
internal static class ShellText
{
    /// <summary>A command with one option a line.</summary>
    public static IEnumerable<string> Lines(string command, IReadOnlyList<IReadOnlyList<string>> options) =>
        options.Select(option => "  " + string.Join(' ', option.Select(Quote)))
            .Prepend(command)
            .Select((line, number) => number < options.Count ? line + " \\" : line);

    /// <summary>A word that the shell hands on as it is.</summary>
    public static string Quote(string word) =>
        word.Length > 0 && word.All(letter => char.IsAsciiLetterOrDigit(letter) || "-./_:+".Contains(letter, StringComparison.Ordinal)) ? word
        : word.AsSpan().ContainsAny("\"\\$`!") ? $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'"
        : $"\"{word}\"";
}
