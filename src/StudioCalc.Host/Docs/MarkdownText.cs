using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace StudioCalc.Host;

/// <summary>Documentation files and comments of the contract as HTML.</summary>
internal static class MarkdownText
{
    private const string Ending = ".md";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .DisableHtml()
        .UsePipeTables()
        .UseAutoIdentifiers(AutoIdentifierOptions.GitHub)
        .Build();

    /// <summary>A page from a file. Links between files become links between pages.</summary>
    public static string Page(string text)
    {
        var document = Markdown.Parse(text, Pipeline);
        foreach (var link in document.Descendants<LinkInline>().Where(link => link.Url is not null))
        {
            var parts = link.Url!.Split('#', 2);
            if (parts[0].EndsWith(Ending, StringComparison.Ordinal) && !parts[0].Contains("://", StringComparison.Ordinal))
            {
                parts[0] = parts[0][..^Ending.Length];
                link.Url = string.Join('#', parts);
            }
        }

        var title = document.Descendants<HeadingBlock>().FirstOrDefault(heading => heading.Level == 1)?.Inline?.Descendants<LiteralInline>();
        return PageFrame.Around(string.Concat(title ?? []), document.ToHtml(Pipeline));
    }

    /// <summary>A comment as one or more paragraphs.</summary>
    public static string Comment(string text) => Markdown.ToHtml(text, Pipeline);
}
