using System.Text.RegularExpressions;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>The code of docs/other-languages.md runs as it stands there.</summary>
[Collection(HostsGroup.Name)]
public sealed partial class SnippetTests(Hosts hosts)
{
    [Fact]
    public void Page_AllItsCode_IsTheCodeThatRuns()
    {
        var onPage = Fence().Matches(File.ReadAllText(RepositoryRoot.At("docs", "other-languages.md"))).Select(match => match.Groups["code"].Value);

        Assert.Equal(Snippet.Files.Select(File.ReadAllText).Order(StringComparer.Ordinal), onPage.Order(StringComparer.Ordinal));
    }

    [PeerFact(Peer.Node)]
    public async Task GrpcJs_AsDocumented_PrintsWaysAndTheRefusal() =>
        PrintsWaysAndTheRefusal(await Snippet.RunAsync(hosts.Open, "node", "node", "snippets", "grpc-js.mjs"));

    [PeerFact(Peer.Node)]
    public async Task Connect_AsDocumented_PrintsWaysAndTheRefusal() =>
        PrintsWaysAndTheRefusal(await Snippet.RunAsync(hosts.Open, "node", "node", "snippets", "connect.mjs"));

    [PeerFact(Peer.Node, Peer.Python)]
    public async Task Python_AsDocumented_PrintsWaysAndTheRefusal() =>
        PrintsWaysAndTheRefusal(await Snippet.RunAsync(hosts.Open, Machine.Python, "snippets", "call.py"));

    [PeerFact(Peer.Node, Peer.Curl)]
    public async Task Curl_AsDocumented_PrintsBothAnswers()
    {
        var output = await Snippet.RunAsync(hosts.Open, "bash", "snippets", "curl.sh");

        Assert.Contains("\"variable\": \"BALANCE_VARIABLE_FLASH_POWER\"", output, StringComparison.Ordinal);
        Assert.Contains("\"additiveValueStops\": 5", output, StringComparison.Ordinal);
    }

    private static void PrintsWaysAndTheRefusal(string output)
    {
        Assert.Contains("BALANCE_VARIABLE_FLASH_POWER f/5.6 1/125\nBALANCE_VARIABLE_SHUTTER_SPEED f/8 1/60\n", output, StringComparison.Ordinal);
        Assert.Contains("back_over_fill_stops", output, StringComparison.Ordinal);
        Assert.Contains("OUT_OF_RANGE", output, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"^```\w+\n(?<code>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Fence();
}
