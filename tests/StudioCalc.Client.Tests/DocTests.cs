using System.Text.RegularExpressions;

namespace StudioCalc.Client.Tests;

/// <summary>The guide shows no code but the code that runs here.</summary>
public partial class DocTests
{
    [Fact]
    public void Guide_AllItsCode_IsTheCodeThatRuns()
    {
        var inGuide = Blocks(Fence(), "sdk.md");
        Assert.NotEmpty(inGuide);
        Assert.Equal(Blocks(Snippet(), "DocSnippets.cs").Order(StringComparer.Ordinal), inGuide.Order(StringComparer.Ordinal));
    }

    private static List<string> Blocks(Regex pattern, string file) =>
    [
        .. pattern.Matches(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file)))
            .Select(match => Space().Replace(match.Groups["code"].Value, " ").Trim()),
    ];

    [GeneratedRegex(@"^```csharp\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Fence();

    [GeneratedRegex(@"// snippet: [^\n]+\n(?<code>.*?)// end snippet", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Snippet();

    [GeneratedRegex(@"\s+", RegexOptions.None, 1000)]
    private static partial Regex Space();
}
