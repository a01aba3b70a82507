using System.Text.Json.Nodes;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>A newcomer reads the host's documentation in a real browser, and tries a call there.</summary>
[Collection(HostsGroup.Name)]
public sealed class DocsPageTests(Hosts hosts)
{
    [PeerFact(Peer.Node, Peer.Browser)]
    public async Task Documentation_InABrowser_TriesACallAndStaysWithTheHost()
    {
        var noticed = JsonNode.Parse(await Tool.NodeAsync("browser/docs-pages.mjs",
        [
            Machine.Browser!,
            hosts.Open.Http.GetLeftPart(UriPartial.Authority),
            RepositoryRoot.At("artifacts", "pictures"),
        ]))!;

        Assert.Empty(Texts(noticed, "complaints"));
        Assert.Empty(Texts(noticed, "elsewhere"));
        Assert.Contains("/v1/lightingRatio:balanceFill", Texts(noticed, "listed"));
        Assert.Equal("200", noticed["status"]!.GetValue<string>());
        var sample = Sample.Of("BalanceFill");
        Assert.Equal(
            await JsonRoute.AnswerAsync(hosts.Open, sample),
            JsonRoute.Read(sample.Method.OutputType, noticed["answer"]!.GetValue<string>()));
        Assert.Equal("Contract", noticed["contract"]!["heading"]!.GetValue<string>());
        Assert.All(Sample.All, one => Assert.Contains(one.Path, noticed["contract"]!["text"]!.GetValue<string>(), StringComparison.Ordinal));
    }

    private static IEnumerable<string> Texts(JsonNode noticed, string name) => noticed[name]!.AsArray().Select(text => text!.GetValue<string>());
}
