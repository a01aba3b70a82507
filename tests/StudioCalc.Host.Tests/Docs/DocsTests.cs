using System.Net;
using System.Text.RegularExpressions;
using StudioCalc.Contracts;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>The pages that the service shows.</summary>
public sealed partial class DocsTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    public static TheoryData<string, string> Pages => new()
    {
        { "/docs/index.html", "text/html" },
        { "/docs/index.js", "application/javascript" },
        { "/docs/index.css", "text/css" },
        { "/docs/swagger-ui.css", "text/css" },
        { "/docs/swagger-ui-bundle.js", "text/javascript" },
        { "/docs/docs.css", "text/css" },
        { "/docs/try.css", "text/css" },
        { "/docs/contract", "text/html" },
        { "/docs/refusals", "text/html" },
        { "/docs/refusals/required", "text/html" },
        { "/docs/advisories", "text/html" },
        { "/docs/advisories/sync-margin", "text/html" },
        { "/docs/models/exposure", "text/html" },
        { "/docs/glossary", "text/html" },
        { "/openapi.json", "application/json" },
    };

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_HasTypeCharsetPolicyAndTag(string path, string type)
    {
        using var get = await SendAsync(HttpMethod.Get, path);
        using var head = await SendAsync(HttpMethod.Head, path);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (get.StatusCode, head.StatusCode));
        Assert.Equal((type, "utf-8"), (get.Content.Headers.ContentType!.MediaType, get.Content.Headers.ContentType.CharSet));
        Assert.Equal(get.Content.Headers.ContentType, head.Content.Headers.ContentType);
        Assert.Equal(get.Headers.ETag, head.Headers.ETag);
        Assert.NotNull(get.Headers.ETag);
        Assert.True(get.Headers.CacheControl!.NoCache);
        Assert.Equal("nosniff", Assert.Single(get.Headers.GetValues("x-content-type-options")));
        var policy = Assert.Single(get.Headers.GetValues("content-security-policy"));
        Assert.Matches("^default-src '(self|none)'; ", policy);
        Assert.DoesNotContain("script-src", policy, StringComparison.Ordinal);
        Assert.Empty(await head.Content.ReadAsByteArrayAsync());
        Assert.NotEmpty(await get.Content.ReadAsByteArrayAsync());
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_HeldAlready_Is304(string path, string type)
    {
        using var first = await SendAsync(HttpMethod.Get, path);
        using var again = await SendAsync(HttpMethod.Get, path, first.Headers.ETag!.ToString());

        // The two files that the page writes itself are small, and come whole each time.
        Assert.Equal(path is "/docs/index.html" or "/docs/index.js" ? again.StatusCode : HttpStatusCode.NotModified, again.StatusCode);
        Assert.Equal(type, first.Content.Headers.ContentType!.MediaType);
    }

    [Theory]
    [InlineData("/", "docs/index.html")]
    [InlineData("/docs", "docs/index.html")]
    [InlineData("/docs/", "index.html")]
    public async Task Start_LeadsToThePageThatTriesCalls(string path, string target)
    {
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = fixture.Host.Ports.Http };
        using var reply = await client.GetAsync(new Uri(path, UriKind.Relative));

        Assert.Equal((HttpStatusCode.Redirect, target), (reply.StatusCode, reply.Headers.Location!.OriginalString));
    }

    [Theory]
    [InlineData("/docs/nope")]
    [InlineData("/docs/refusals/nope")]
    [InlineData("/docs/refusals/required.md")]
    [InlineData("/docs/examples/")]
    [InlineData("/docs/advisories/../../appsettings.json%00")]
    public async Task Page_Unknown_Is404InHtml(string path)
    {
        using var reply = await SendAsync(HttpMethod.Get, path);

        Assert.Equal((HttpStatusCode.NotFound, "text/html"), (reply.StatusCode, reply.Content.Headers.ContentType!.MediaType));
        Assert.Contains("No such page", await reply.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/docs/contract")]
    [InlineData("/openapi.json")]
    public async Task Post_ToAPage_NamesWhatIsAllowed(string path)
    {
        using var reply = await SendAsync(HttpMethod.Post, path);

        Assert.Equal(HttpStatusCode.MethodNotAllowed, reply.StatusCode);
        Assert.Equal(["GET", "HEAD"], reply.Content.Headers.Allow);
    }

    [Fact]
    public async Task Links_OfAllPages_LeadToPagesAndPlaces()
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        var open = new Queue<string>(["/docs/contract", "/docs/refusals", "/docs/advisories"]);
        var places = new HashSet<(string Path, string Place)>();
        while (open.TryDequeue(out var path))
        {
            if (texts.ContainsKey(path))
            {
                continue;
            }

            using var reply = await SendAsync(HttpMethod.Get, path);
            Assert.True(reply.IsSuccessStatusCode, path);
            texts[path] = await reply.Content.ReadAsStringAsync();
            foreach (var link in Links().Matches(path == "/docs/index.html" ? "" : texts[path]).Select(match => match.Groups["to"].Value).Where(link => link != "data:,"))
            {
                var target = new Uri(new Uri(fixture.Host.Ports.Http, path), WebUtility.HtmlDecode(link));
                Assert.True(target.Authority == fixture.Host.Ports.Http.Authority, $"{path} leads out to {link}.");
                open.Enqueue(target.AbsolutePath);
                places.Add((target.AbsolutePath, target.Fragment.TrimStart('#')));
            }
        }

        Assert.True(texts.Count > 50, $"Only {texts.Count} pages are linked.");
        Assert.All(places.Where(place => place.Place.Length > 0), place =>
            Assert.Contains($"id=\"{Uri.UnescapeDataString(place.Place)}\"", texts[place.Path], StringComparison.Ordinal));
    }

    [Fact]
    public async Task TryPage_TakesNothingFromElsewhere()
    {
        using var page = await SendAsync(HttpMethod.Get, "/docs/index.html");
        using var script = await SendAsync(HttpMethod.Get, "/docs/index.js");

        Assert.DoesNotContain("//", Comments().Replace(await page.Content.ReadAsStringAsync(), ""), StringComparison.Ordinal);
        var text = await script.Content.ReadAsStringAsync();
        Assert.Contains("\"url\":\"/openapi.json\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\"validatorUrl\":\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Contract_HasEveryCallFieldAndValue()
    {
        var text = await fixture.Host.Http.GetStringAsync(new Uri("/docs/contract", UriKind.Relative));
        IEnumerable<string> ids =
        [
            .. Contract.Services.SelectMany(service => service.Methods).Select(method => "call-" + method.Name),
            .. Contract.Files.SelectMany(file => file.MessageTypes).Select(message => "message-" + message.Name),
            .. Contract.Files.SelectMany(file => file.MessageTypes).SelectMany(message => message.Fields.InDeclarationOrder())
                .Select(field => $"field-{field.ContainingType.Name}.{field.JsonName}"),
            .. Contract.Files.SelectMany(file => file.EnumTypes).SelectMany(type => type.Values).Select(value => "value-" + value.Name),
        ];

        Assert.All(ids, id => Assert.Single(Regex.Matches(text, $"id=\"{Regex.Escape(id)}\"", RegexOptions.None, TimeSpan.FromSeconds(1))));
    }

    [Fact]
    public async Task Contract_OfAField_TellsUnitRangePresenceAndDefault()
    {
        var text = await fixture.Host.Http.GetStringAsync(new Uri("/docs/contract", UriKind.Relative));
        var row = text[text.IndexOf("id=\"field-BalanceFillRequest.lensLossStops\"", StringComparison.Ordinal)..];
        row = row[..row.IndexOf("</tr>", StringComparison.Ordinal)];

        Assert.Contains("<td>number</td><td>stops</td><td>0 to 20</td><td><p>optional</p></td><td><p>0</p></td>", row, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_WithAngleBrackets_ShowsThemAsText()
    {
        var text = await fixture.Host.Http.GetStringAsync(new Uri("/docs/refusals/unauthenticated", UriKind.Relative));

        Assert.Contains("authorization: Bearer &lt;key&gt;", text, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, string? tag = null)
    {
        using var request = new HttpRequestMessage(method, path);
        if (tag is not null)
        {
            request.Headers.TryAddWithoutValidation("if-none-match", tag);
        }

        return await fixture.Host.Http.SendAsync(request);
    }

    [GeneratedRegex("(href|src)=\"(?<to>[^\"]*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Links();

    [GeneratedRegex("<!--[\\s\\S]*?-->", RegexOptions.None, 1000)]
    private static partial Regex Comments();
}
