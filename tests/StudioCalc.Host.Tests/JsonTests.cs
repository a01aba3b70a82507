using System.Net;
using System.Text;
using Google.Rpc;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class JsonTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    private const string Path = "/v1/exposure:evaluate";
    private const string Query = Path + "?settings.shutterSpeed.mark=1/125&settings.iso.mark=100&settings.aperture.";

    [Theory]
    [InlineData("fNumber=5,6", "settings.aperture.f_number DECIMAL_COMMA")]
    [InlineData("fNumber=5.6&lens_loss_stops=1,5", "lens_loss_stops DECIMAL_COMMA")]
    [InlineData("fNumber=NaN", "settings.aperture.f_number WRONG_TYPE")]
    [InlineData("fNumber=1e400", "settings.aperture.f_number OUT_OF_RANGE")]
    [InlineData("fNumber=5.6&nope=1", "nope UNKNOWN_FIELD")]
    [InlineData("fNumber=5.6&fNumber=8", "fNumber UNKNOWN_FIELD")]
    [InlineData("fNumber=5.6&settings.aperture.fNumber=8", "settings.aperture.f_number DOUBLED_FIELD")]
    [InlineData("fNumber=5.6&settings.aperture.mark=f/8", "settings.aperture.mark CONFLICT")]
    [InlineData("fNumber=5.6&scale=9", "scale UNKNOWN_VALUE")]
    [InlineData("fNumber=5.6&Scale=STOP_SCALE_HALF", "Scale UNKNOWN_FIELD")]
    public async Task Get_BadParameter_IsNamed(string parameters, string field)
    {
        using var reply = await fixture.Host.Http.GetAsync(new Uri(Query + parameters, UriKind.Relative));

        await RefusesAsync(reply, HttpStatusCode.BadRequest, new(Code.InvalidArgument, "INVALID_FIELDS", [field]));
    }

    [Theory]
    [InlineData("""{"nope":1}""", "nope UNKNOWN_FIELD")]
    [InlineData("""{"settings":{"nope":1}}""", "settings.nope UNKNOWN_FIELD")]
    [InlineData("""{"lensLossStops":1,"lensLossStops":2}""", "lens_loss_stops DOUBLED_FIELD")]
    [InlineData("""{"lensLossStops":1,"lens_loss_stops":2}""", "lens_loss_stops DOUBLED_FIELD")]
    [InlineData("""{"lensLossStops":"1"}""", "lens_loss_stops WRONG_TYPE")]
    [InlineData("""{"lensLossStops":"1,5"}""", "lens_loss_stops DECIMAL_COMMA")]
    [InlineData("""{"settings":{"aperture":{"mark":"f/8","fNumber":8}}}""", "settings.aperture.f_number CONFLICT")]
    [InlineData("""{"lensLossStops":1,5}""", " MALFORMED_JSON")]
    [InlineData("""{"settings":{"aperture":{"mark":"\ud800"}}}""", " MALFORMED_JSON")]
    [InlineData("", " MALFORMED_JSON")]
    [InlineData("[]", " WRONG_TYPE")]
    [InlineData("null", " WRONG_TYPE")]
    public async Task Post_BadBody_IsNamed(string body, string field)
    {
        using var reply = await PostAsync(body);

        await RefusesAsync(reply, HttpStatusCode.BadRequest, new(Code.InvalidArgument, "INVALID_FIELDS", [field]));
    }

    [Fact]
    public async Task Post_NumberBeyondADouble_IsOutOfRange()
    {
        using var reply = await PostAsync(Requests.Text("evaluate-exposure.json").Replace("\"includeWorking\"", "\"lensLossStops\": 1e400, \"includeWorking\"", StringComparison.Ordinal));

        await RefusesAsync(reply, HttpStatusCode.BadRequest, new(Code.InvalidArgument, "INVALID_FIELDS", ["lens_loss_stops OUT_OF_RANGE"]));
    }

    [Fact]
    public async Task Post_BytesThatAreNotUtf8_AreMalformed()
    {
        using var reply = await PostAsync([.. "{\"settings\":{\"iso\":{\"mark\":\""u8, 0xFF, .. "\"}}}"u8]);

        await RefusesAsync(reply, HttpStatusCode.BadRequest, new(Code.InvalidArgument, "INVALID_FIELDS", [" MALFORMED_JSON"]));
    }

    [Fact]
    public async Task Post_TwoMembersOfAOneof_NamesBoth()
    {
        using var reply = await PostAsync("""{"settings":{"aperture":{"mark":"f/8","fNumber":8}}}""");

        var violation = Assert.Single((await StatusOf(reply)).GetDetail<BadRequest>()!.FieldViolations);
        Assert.Equal("settings.aperture.f_number", violation.Field);
        Assert.Contains("mark", violation.Description, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_MalformedText_NamesTheLine()
    {
        using var reply = await PostAsync("{\n  \"scale\": STOP\n}");

        var violation = Assert.Single((await StatusOf(reply)).GetDetail<BadRequest>()!.FieldViolations);
        Assert.Contains("line 2", violation.Description, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_NullMember_IsTakenAsUnset()
    {
        using var reply = await PostAsync(Requests.Text("evaluate-exposure.json").Replace("\"STOP_SCALE_THIRD\"", "null", StringComparison.Ordinal));

        Assert.Equal(HttpStatusCode.OK, reply.StatusCode);
    }

    [Fact]
    public async Task Post_QueryBesideTheBody_IsRefused()
    {
        using var content = Json(Encoding.UTF8.GetBytes(Requests.Text("evaluate-exposure.json")), "application/json");
        using var reply = await fixture.Host.Http.PostAsync(new Uri(Path + "?scale=STOP_SCALE_HALF", UriKind.Relative), content);

        await RefusesAsync(reply, HttpStatusCode.BadRequest, new(Code.InvalidArgument, "INVALID_FIELDS", [" CONFLICT"]));
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("application/json; charset=utf-16")]
    public async Task Post_OtherContentType_IsRefused(string type)
    {
        using var reply = await PostAsync(Encoding.UTF8.GetBytes("{}"), type);

        await RefusesAsync(reply, HttpStatusCode.UnsupportedMediaType, new(Code.InvalidArgument, "WRONG_CONTENT_TYPE", []));
    }

    [Theory]
    [InlineData("/v1")]
    [InlineData("/v1/exposure")]
    [InlineData("/v1/exposure:nope")]
    [InlineData("/v2/exposure:evaluate")]
    [InlineData("/favicon.ico")]
    public async Task Get_UnknownPath_IsNotFound(string path)
    {
        using var reply = await fixture.Host.Http.GetAsync(new Uri(path, UriKind.Relative));

        await RefusesAsync(reply, HttpStatusCode.NotFound, new(Code.NotFound, "UNKNOWN_PATH", []));
    }

    [Fact]
    public async Task Delete_KnownPath_NamesTheAllowedVerbs()
    {
        using var reply = await fixture.Host.Http.DeleteAsync(new Uri(Path, UriKind.Relative));

        await RefusesAsync(reply, HttpStatusCode.MethodNotAllowed, new(Code.Unimplemented, "WRONG_METHOD", []));
        Assert.Equal(["POST", "GET"], reply.Content.Headers.Allow);
    }

    [Fact]
    public async Task GetAndPost_SameRequest_GiveTheSameText()
    {
        using var get = await fixture.Host.Http.GetAsync(new Uri(Query + "mark=f/5.6", UriKind.Relative));
        using var post = await PostAsync(
            """{"settings":{"shutterSpeed":{"mark":"1/125"},"iso":{"mark":"100"},"aperture":{"mark":"f/5.6"}}}""");

        Assert.Equal(HttpStatusCode.OK, get.StatusCode);
        Assert.Equal("application/json", get.Content.Headers.ContentType!.ToString());
        Assert.Equal(await get.Content.ReadAsStringAsync(), await post.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Get_ExpiredDeadline_IsDeadlineExceeded()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, Query + "mark=f/5.6") { Headers = { { "grpc-timeout", "1n" } } };
        using var reply = await fixture.Host.Http.SendAsync(request);

        await RefusesAsync(reply, HttpStatusCode.GatewayTimeout, new(Code.DeadlineExceeded, "DEADLINE_EXCEEDED", []));
    }

    [Theory]
    [InlineData("2S")]
    [InlineData("99999999H")]
    [InlineData("soon")]
    public async Task Get_OtherDeadline_IsAnswered(string timeout)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, Query + "mark=f/5.6");
        request.Headers.TryAddWithoutValidation("grpc-timeout", timeout);
        using var reply = await fixture.Host.Http.SendAsync(request);

        Assert.Equal(HttpStatusCode.OK, reply.StatusCode);
    }

    [Fact]
    public async Task Post_BodyOverTheLimit_Is413()
    {
        using var reply = await PostAsync(new byte[1024 * 1024 + 1]);

        await RefusesAsync(reply, HttpStatusCode.RequestEntityTooLarge, new(Code.ResourceExhausted, "REQUEST_TOO_LARGE", []));
    }

    [Fact]
    public async Task Post_BodyOverTheLimitWithoutLength_Is413()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, Path)
        {
            Content = Json(new byte[1024 * 1024 + 1], "application/json"),
            Headers = { TransferEncodingChunked = true },
        };
        using var reply = await fixture.Host.Http.SendAsync(request);

        await RefusesAsync(reply, HttpStatusCode.RequestEntityTooLarge, new(Code.ResourceExhausted, "REQUEST_TOO_LARGE", []));
    }

    [Fact]
    public void Refusal_OfVeryManyFields_StaysUnderFourKibibytes()
    {
        var violations = new Contracts.Violations();
        for (var i = 0; i < 10_000; i++)
        {
            violations.Add($"components[{i}].height_mm", RefusalReason.OutOfRange, "Must be a number from 1 to 20000.");
        }

        var status = Contracts.Refusal.InvalidFields(violations);

        Assert.InRange(status.CalculateSize(), 2048, 4096);
        Assert.Contains("10000 fields", status.Message, StringComparison.Ordinal);
    }

    private static async Task RefusesAsync(HttpResponseMessage reply, HttpStatusCode http, Refused expected)
    {
        Refused.Same(expected, Refused.Of(await StatusOf(reply)));
        Assert.Equal(http, reply.StatusCode);
        Assert.Equal("application/json", reply.Content.Headers.ContentType!.ToString());
    }

    private static async Task<Google.Rpc.Status> StatusOf(HttpResponseMessage reply) =>
        JsonCallInvoker.Parser.Parse<Google.Rpc.Status>(await reply.Content.ReadAsStringAsync());

    private Task<HttpResponseMessage> PostAsync(string body) => PostAsync(Encoding.UTF8.GetBytes(body));

    private async Task<HttpResponseMessage> PostAsync(byte[] body, string type = "application/json")
    {
        using var content = Json(body, type);
        return await fixture.Host.Http.PostAsync(new Uri(Path, UriKind.Relative), content);
    }

    private static ByteArrayContent Json(byte[] body, string type) => new(body) { Headers = { { "content-type", type } } };
}
