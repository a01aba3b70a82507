using System.Globalization;
using Google.Rpc;
using StudioCalc.Client;
using StudioCalc.Client.Embedded;

namespace StudioCalc.System.Tests;

/// <summary>curl against the JSON side.</summary>
[Collection(HostsGroup.Name)]
public sealed class CurlTests(Hosts hosts)
{
    private const string Evaluate = "/v1/exposure:evaluate";
    private const string Query = Evaluate + "?settings.shutterSpeed.mark=1/125&settings.iso.mark=100&settings.aperture.";
    private const string Json = "content-type: application/json";

    public static TheoryData<string> Calls => [.. Sample.All.Select(sample => sample.Method.Name)];

    [PeerTheory(Peer.Curl)]
    [MemberData(nameof(Calls))]
    public async Task Sample_OverCurl_GetsTheAnswerOfTheProcess(string call)
    {
        var sample = Sample.Of(call);
        var (path, isPost) = JsonRoute.Of(sample.Method);
        string[] body = isPost ? ["-H", Json, "--data", "@" + Sample.FileOf(sample.Method)] : [];
        using var here = EmbeddedStudioCalc.Create();

        var reply = await CurlAsync(hosts.Open, path, body);

        Assert.Equal(200, reply.Code);
        Assert.Equal(
            JsonRoute.Normal(await here.CallAsync(sample.Method, sample.Request)), JsonRoute.Read(sample.Method.OutputType, reply.Text));
    }

    [PeerFact(Peer.Curl)]
    public async Task DottedParameters_OverCurl_GetTheAnswerOfTheBody()
    {
        var get = await CurlAsync(hosts.Open, Query + "mark=f/5.6&lensLossStops=0.5");
        var post = await CurlAsync(hosts.Open, Evaluate, "-H", Json, "--data", """
            {"settings": {"aperture": {"mark": "f/5.6"}, "shutterSpeed": {"mark": "1/125"}, "iso": {"mark": "100"}}, "lensLossStops": 0.5}
            """);

        Assert.Equal(200, get.Code);
        Assert.Equal(post, get);
    }

    [PeerTheory(Peer.Curl)]
    [InlineData("""{"setings": {}}""", "setings UNKNOWN_FIELD")]
    [InlineData("""{"lensLossStops": "1,5"}""", "lens_loss_stops DECIMAL_COMMA")]
    [InlineData("""{"lensLossStops": 1,5}""", " MALFORMED_JSON")]
    [InlineData("""{"lensLossStops": 1.5""", " MALFORMED_JSON")]
    [InlineData("{'lensLossStops': 1.5}", " MALFORMED_JSON")]
    [InlineData("""{"lensLossStops": "1.5"}""", "lens_loss_stops WRONG_TYPE")]
    [InlineData("""{"settings": {"aperture": {"mark": "f/8", "fNumber": 8}}}""", "settings.aperture.f_number CONFLICT")]
    [InlineData("{}", "settings REQUIRED")]
    public async Task BadBody_OverCurl_IsNamed(string body, string field) =>
        (await CurlAsync(hosts.Open, Evaluate, "-H", Json, "--data", body)).IsRefused(400, Code.InvalidArgument, "INVALID_FIELDS", field);

    [PeerTheory(Peer.Curl)]
    [InlineData("fNumber=5,6", "settings.aperture.f_number DECIMAL_COMMA")]
    [InlineData("fstop=5.6", "settings.aperture.fstop UNKNOWN_FIELD")]
    [InlineData("mark=f/5.7", "settings.aperture.mark UNKNOWN_MARK")]
    public async Task BadParameter_OverCurl_IsNamed(string parameter, string field) =>
        (await CurlAsync(hosts.Open, Query + parameter)).IsRefused(400, Code.InvalidArgument, "INVALID_FIELDS", field);

    [PeerFact(Peer.Curl)]
    public async Task ForgottenContentType_OverCurl_IsRefused() =>
        (await CurlAsync(hosts.Open, Evaluate, "--data", "{}")).IsRefused(415, Code.InvalidArgument, "WRONG_CONTENT_TYPE");

    [PeerFact(Peer.Curl)]
    public async Task TooLarge_OverCurl_IsRefusedForItsSize()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, new string(' ', 2 * 1024 * 1024));

        var reply = await CurlAsync(hosts.Open, Evaluate, "-H", Json, "--data-binary", "@" + file);

        File.Delete(file);
        reply.IsRefused(413, Code.ResourceExhausted, "REQUEST_TOO_LARGE");
    }

    [PeerFact(Peer.Curl)]
    public async Task WrongMethod_OverCurl_IsRefused() =>
        (await CurlAsync(hosts.Open, Evaluate, "-X", "PUT", "-H", Json, "--data", "{}")).IsRefused(405, Code.Unimplemented, "WRONG_METHOD");

    [PeerTheory(Peer.Curl)]
    [InlineData("/v1/exposure:guess")]
    [InlineData("/v1/exposure/evaluate")]
    [InlineData("/studiocalc")]
    public async Task UnknownPath_OverCurl_IsNotFound(string path) =>
        (await CurlAsync(hosts.Open, path, "-H", Json, "--data", "{}")).IsRefused(404, Code.NotFound, "UNKNOWN_PATH");

    [PeerFact(Peer.Curl)]
    public async Task TimeoutHeader_OverCurl_IsKept()
    {
        (await CurlAsync(hosts.Open, Query + "mark=f/5.6", "-H", "grpc-timeout: 1n")).IsRefused(504, Code.DeadlineExceeded, "DEADLINE_EXCEEDED");
        Assert.Equal(200, (await CurlAsync(hosts.Open, Query + "mark=f/5.6", "-H", "grpc-timeout: 60S")).Code);
    }

    [PeerFact(Peer.Curl)]
    public async Task HostWithKeys_OverCurl_AsksForTheKey()
    {
        (await CurlAsync(hosts.Locked, "/v1/capabilities")).IsRefused(401, Code.Unauthenticated, "UNAUTHENTICATED");
        Assert.Equal(200, (await CurlAsync(hosts.Locked, "/v1/capabilities", "-H", "authorization: Bearer " + Hosts.Key)).Code);
    }

    private static async Task<Reply> CurlAsync(HostProcess host, string path, params IEnumerable<string> options)
    {
        var output = await Tool.RunAsync("curl", [.. options, "-sS", "-w", "\n%{http_code}", new Uri(host.Http, path).AbsoluteUri]);
        var last = output.LastIndexOf('\n');
        return new(int.Parse(output.AsSpan(last + 1), CultureInfo.InvariantCulture), output[..last]);
    }

    private sealed record Reply(int Code, string Text)
    {
        public void IsRefused(int http, Code code, string reason, params string[] fields)
        {
            JsonRoute.Refused(Text).Is(code, reason, fields);
            Assert.Equal(http, Code);
        }
    }
}
