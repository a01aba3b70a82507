using System.Text.RegularExpressions;
using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

/// <summary>Every example of the page on the command line prints what the page shows.</summary>
public sealed partial class DocTests
{
    private static readonly string Page = File.ReadAllText(RepositoryRoot.At("docs", "command-line.md")).ReplaceLineEndings("\n");

    public static TheoryData<string, string> Examples
    {
        get
        {
            var examples = new TheoryData<string, string>();
            foreach (Match match in Example().Matches(Page))
            {
                examples.Add(match.Groups["command"].Value, match.Groups["output"].Value);
            }

            return examples;
        }
    }

    [Fact]
    public void EveryExample_ShowsWhatItPrints() =>
        Assert.Equal(Page.Split("```sh\n").Length - 1, Examples.Count);

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Example_PrintsWhatThePageShows(string command, string output) => Assert.Equal(output, (await Shell.Run(command)).Output);

    [GeneratedRegex("```sh\n(?<command>[^`]+)```\n+```text\n(?<output>[^`]+)```", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Example();
}
