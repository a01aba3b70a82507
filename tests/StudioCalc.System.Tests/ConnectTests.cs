using Google.Rpc;

namespace StudioCalc.System.Tests;

/// <summary>A Node.js program with @connectrpc/connect-node, over gRPC and over gRPC-Web.</summary>
[Collection(HostsGroup.Name)]
public sealed class ConnectTests(Hosts hosts)
{
    [PeerTheory(Peer.Node)]
    [InlineData("grpc")]
    [InlineData("grpc-web")]
    public async Task EverySample_OverConnect_GetsTheAnswerOfJson(string way)
    {
        var outcomes = await CallAsync(way, hosts.Open, Sample.All.Select(Call.Of));

        await Assert.AllAsync(Sample.All.Zip(outcomes), pair => pair.Second.IsAnswerToAsync(hosts.Open, pair.First));
    }

    [PeerTheory(Peer.Node)]
    [InlineData("grpc")]
    [InlineData("grpc-web")]
    public async Task BadRequests_OverConnect_AreReadFromTheDetails(string way)
    {
        var outcomes = await CallAsync(
            way, hosts.Open, [Call.Of("EvaluateExposure", Requests.WithBadFields), Call.Of("EvaluateExposure", Requests.TooLarge)]);

        outcomes[0].Refusal!.Is(
            Code.InvalidArgument, "INVALID_FIELDS", "settings.aperture.f_number OUT_OF_RANGE", "settings.iso REQUIRED", "scale UNKNOWN_VALUE");
        outcomes[1].Refusal!.Is(Code.ResourceExhausted, "REQUEST_TOO_LARGE");
    }

    [PeerTheory(Peer.Node)]
    [InlineData("grpc")]
    [InlineData("grpc-web")]
    public async Task ShortDeadline_OverConnect_IsExceededOrTheAnswerIsWhole(string way) =>
        await Requests.AnswersWholeOrExceedsAsync(hosts.Open, calls => CallAsync(way, hosts.Open, calls));

    [PeerTheory(Peer.Node)]
    [InlineData("grpc")]
    [InlineData("grpc-web")]
    public async Task HostWithKeys_OverConnect_AsksForTheKey(string way)
    {
        var sample = Sample.Of("BalanceFill");
        var outcomes = await CallAsync(way, hosts.Locked, [Call.Of(sample), Call.Of(sample).WithKey(Hosts.Key)]);

        outcomes[0].Refusal!.Is(Code.Unauthenticated, "UNAUTHENTICATED");
        await outcomes[1].IsAnswerToAsync(hosts.Open, sample);
    }

    private static async Task<IReadOnlyList<Outcome>> CallAsync(string way, HostProcess host, IEnumerable<Call> calls) => await Call.MakeAsync(
        "connect/calls.mjs",
        [way, (way == "grpc" ? host.Grpc : host.Http).GetLeftPart(UriPartial.Authority), await ContractFile.GetAsync()],
        calls);
}
