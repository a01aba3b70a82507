using System.Text.RegularExpressions;
using StudioCalc.Tests;

namespace StudioCalc.Host.Tests;

/// <summary>A page of docs/refusals or docs/advisories, taken apart by its fixed headings.</summary>
internal sealed partial record DocsFile(string Name, string Text)
{
    private const string RequestHeading = "## A request that raises it";

    /// <summary>The JSON that the page shows of the reply.</summary>
    public string Shown => Fence("## How it shows").Groups["text"].Value;

    /// <summary>The kind of the request's block: json and text for a body, http for a whole request; null without a request.</summary>
    public string? RequestKind => HasRequest ? Fence(RequestHeading).Groups["kind"].Value : null;

    /// <summary>The request.</summary>
    public string Request => Fence(RequestHeading).Groups["text"].Value;

    /// <summary>The call that the request is for.</summary>
    public string Call => Section(RequestHeading).Split('\n', 2)[0].TrimStart(':', ' ');

    public IEnumerable<string> Headings => Text.Split('\n').Where(line => line.StartsWith("## ", StringComparison.Ordinal)).Select(line => line.Split(':')[0]);

    private bool HasRequest => Text.Contains(RequestHeading, StringComparison.Ordinal);

    public static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFiles(RepositoryRoot.At("docs", folder), "*.md").Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal);

    public static DocsFile Read(string folder, string page)
    {
        var text = File.ReadAllText(RepositoryRoot.At("docs", folder, page + ".md"));
        return new(text.Split('\n', 2)[0]["# ".Length..], text);
    }

    private string Section(string heading)
    {
        var start = Text.IndexOf(heading, StringComparison.Ordinal) + heading.Length;
        var end = Text.IndexOf("\n## ", start, StringComparison.Ordinal);
        return end < 0 ? Text[start..] : Text[start..end];
    }

    private Match Fence(string heading) => Fenced().Match(Section(heading));

    [GeneratedRegex(@"```(?<kind>\w+)\n(?<text>[\s\S]*?)\n```", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Fenced();
}
