using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>A page of another origin in a real browser, which calls over gRPC-Web.</summary>
public sealed class BrowserTests
{
    [PeerFact(Peer.Node, Peer.Browser)]
    public async Task PageOfAListedOrigin_OverGrpcWeb_GetsTheAnswerOfJson()
    {
        var origin = FreeOrigin();
        await using var host = await HostProcess.StartAsync("Security:CorsOrigins:0=" + origin);

        var outcome = await OpenAsync(origin, host);

        var sample = Sample.Of("BalanceFill");
        Assert.Equal(await JsonRoute.AnswerAsync(host, sample), JsonRoute.Read(sample.Method.OutputType, outcome["answer"]!.ToJsonString()));
    }

    [PeerFact(Peer.Node, Peer.Browser)]
    public async Task PageOfAnotherOrigin_OverGrpcWeb_MayNotCall()
    {
        await using var host = await HostProcess.StartAsync("Security:CorsOrigins:0=https://app.example");

        var outcome = await OpenAsync(FreeOrigin(), host);

        Assert.Null(outcome["answer"]);
        Assert.Contains("Failed to fetch", outcome["error"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    private static async Task<JsonNode> OpenAsync(string origin, HostProcess host) => JsonNode.Parse(await Tool.NodeAsync("browser/own-page.mjs",
    [
        Machine.Browser!,
        origin,
        host.Http.GetLeftPart(UriPartial.Authority),
        await ContractFile.GetAsync(),
        RepositoryRoot.At("docs", "examples", "balance-fill.json"),
    ]))!;

    // The page's server takes the port a moment later.
    private static string FreeOrigin()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return $"http://localhost:{((IPEndPoint)listener.LocalEndpoint).Port}";
    }
}
