using Google.Rpc;
using StudioCalc.V1;

namespace StudioCalc.System.Tests;

/// <summary>A Node.js program with @grpc/grpc-js, from the repository's .proto files.</summary>
[Collection(HostsGroup.Name)]
public sealed class GrpcJsTests(Hosts hosts)
{
    [PeerFact(Peer.Node)]
    public async Task EverySample_OverGrpcJs_GetsTheAnswerOfJson()
    {
        var outcomes = await CallAsync(hosts.Open, Sample.All.Select(Call.Of));

        await Assert.AllAsync(Sample.All.Zip(outcomes), pair => pair.Second.IsAnswerToAsync(hosts.Open, pair.First));
    }

    [PeerFact(Peer.Node)]
    public async Task BadFields_OverGrpcJs_AreReadFromTheDetails() =>
        (await RefusalAsync(hosts.Open, Call.Of("EvaluateExposure", Requests.WithBadFields))).Is(
            Code.InvalidArgument, "INVALID_FIELDS", "settings.aperture.f_number OUT_OF_RANGE", "settings.iso REQUIRED", "scale UNKNOWN_VALUE");

    [PeerFact(Peer.Node)]
    public async Task NotANumber_OverGrpcJs_IsRefused() =>
        (await RefusalAsync(hosts.Open, Call.Of("ConvertMark", new ConvertMarkRequest { Aperture = new() { FNumber = double.NaN } }))).Is(
            Code.InvalidArgument, "INVALID_FIELDS", "aperture.f_number OUT_OF_RANGE");

    [PeerFact(Peer.Node)]
    public async Task TooLarge_OverGrpcJs_IsRefusedForItsSize() =>
        (await RefusalAsync(hosts.Open, Call.Of("EvaluateExposure", Requests.TooLarge))).Is(Code.ResourceExhausted, "REQUEST_TOO_LARGE");

    [PeerFact(Peer.Node)]
    public async Task UnknownMethod_OverGrpcJs_IsUnimplemented() => (await RefusalAsync(
        hosts.Open, new Call("/studiocalc.v1.ExposureService/GuessExposure", "", "{}"))).Is(Code.Unimplemented, null);

    [PeerFact(Peer.Node)]
    public async Task DeadlineThatIsOver_OverGrpcJs_IsExceeded() => (await RefusalAsync(
        hosts.Open, Call.Of(Sample.Of("BalanceFill")) with { DeadlineMs = -1000 })).Is(Code.DeadlineExceeded, null);

    [PeerFact(Peer.Node)]
    public async Task ShortDeadline_OverGrpcJs_IsExceededOrTheAnswerIsWhole() =>
        await Requests.AnswersWholeOrExceedsAsync(hosts.Open, calls => CallAsync(hosts.Open, calls));

    [PeerFact(Peer.Node)]
    public async Task HostWithKeys_OverGrpcJs_AsksForTheKey()
    {
        var sample = Sample.Of("BalanceFill");
        var outcomes = await CallAsync(
            hosts.Locked, [Call.Of(sample), Call.Of(sample).WithKey(Hosts.Key + "0"), Call.Of(sample).WithKey(Hosts.Key)]);

        outcomes[0].Refusal!.Is(Code.Unauthenticated, "UNAUTHENTICATED");
        outcomes[1].Refusal!.Is(Code.Unauthenticated, "UNAUTHENTICATED");
        await outcomes[2].IsAnswerToAsync(hosts.Open, sample);
    }

    private static Task<IReadOnlyList<Outcome>> CallAsync(HostProcess host, IEnumerable<Call> calls) =>
        Call.MakeAsync("grpc-js/calls.mjs", [host.Grpc.Authority], calls);

    private static async Task<Refused> RefusalAsync(HostProcess host, Call call) => Assert.Single(await CallAsync(host, [call])).Refusal!;
}
