using System.Text.RegularExpressions;

namespace StudioCalc.Cli;

/// <summary>A page of text, at most 100 columns wide, on a terminal and in a pipe alike.</summary>
internal sealed partial class Page(TextWriter output, bool colour)
{
    private const int Width = 100;
    private const char Glue = '\u00a0';

    public void Heading(string text) => output.WriteLine(colour ? $"\n\e[1m{text}\e[0m" : $"\n{text}");

    public void Line(string text = "") => output.WriteLine(text);

    /// <summary>Sentences, broken between words.</summary>
    public void Text(string text, int indent = 0)
    {
        foreach (var line in Wrap(text, Width - indent))
        {
            output.WriteLine(new string(' ', indent) + line);
        }
    }

    /// <summary>A term and what it means, beside it where it fits.</summary>
    public void Term(string term, string meaning, int column)
    {
        var lines = Wrap(meaning, Width - column).ToList();
        var beside = term.Length + 4 <= column;
        output.WriteLine("  " + (beside ? term.PadRight(column - 2) + lines.FirstOrDefault("") : term));
        foreach (var line in beside ? lines.Skip(1) : lines)
        {
            output.WriteLine(new string(' ', column) + line);
        }
    }

    private static IEnumerable<string> Wrap(string text, int width)
    {
        var line = "";
        var words = Quoted().Replace(text, quoted => quoted.Value.Replace(' ', Glue)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        foreach (var word in words.Select(word => word.Replace(Glue, ' ')))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }

    // What stands between quotes or backticks is written in one piece, and so it is read.
    [GeneratedRegex("\"[^\"]{1,24}\"|`[^`]{1,24}`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quoted();
}
