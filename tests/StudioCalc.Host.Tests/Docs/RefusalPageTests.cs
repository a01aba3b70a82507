using System.Text.Json.Nodes;
using Google.Rpc;
using StudioCalc.Contracts;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>Every page of a refusal reason shows what its request is refused with.</summary>
public sealed class RefusalPageTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    private const string Key = "0123456789abcdef";

    // What a host must be set to before the request of a page is refused so.
    private static readonly Dictionary<string, string> Settings = new(StringComparer.Ordinal)
    {
        ["UNAUTHENTICATED"] = "Security:ApiKeys:0=" + Key,
        ["RATE_EXCEEDED"] = "Limits:CallsPerSecond=1",
    };

    // Too large for a page, bytes that a page cannot show, and a guard that no request is known to reach.
    private static readonly Dictionary<string, Google.Rpc.Status> WithoutRequest = new(StringComparer.Ordinal)
    {
        ["REQUEST_TOO_LARGE"] = Refusal.RequestTooLarge(1024 * 1024),
        ["MALFORMED_MESSAGE"] = Refusal.MalformedMessage(),
        ["ANSWER_NOT_FINITE"] = Refusal.AnswerNotFinite(),
    };

    public static TheoryData<string> Pages => [.. DocsFile.Names("refusals")];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Request_OfThePage_IsRefusedAsItShows(string name)
    {
        var page = DocsFile.Read("refusals", name);
        var shown = JsonNode.Parse(page.Shown)!;
        if (page.RequestKind is null)
        {
            Assert.True(JsonNode.DeepEquals(shown, JsonNode.Parse(ContractJson.Write(WithoutRequest[page.Name]))), page.Name);
            return;
        }

        var reply = page.RequestKind == "http"
            ? await RefusalAsync(page)
            : await PageClient.PostAsync(fixture.Host.Http, page.Call, page.Request);
        var status = JsonCallInvoker.Parser.Parse<Google.Rpc.Status>(reply);
        if (shown["field"] is null)
        {
            Assert.Equal(page.Name, status.GetDetail<ErrorInfo>()!.Reason);
            Assert.True(JsonNode.DeepEquals(WithoutDelay(shown), WithoutDelay(JsonNode.Parse(reply)!)), reply);
        }
        else
        {
            var violation = Assert.Single(status.GetDetail<BadRequest>()!.FieldViolations);
            Assert.Equal(page.Name, violation.Reason);
            Assert.Equal(
                (shown["field"]!.GetValue<string>(), shown["reason"]!.GetValue<string>(), shown["description"]!.GetValue<string>()),
                (violation.Field, violation.Reason, violation.Description));
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_HasItsParts(string name)
    {
        var page = DocsFile.Read("refusals", name);
        string[] parts = ["## What happened", "## How it shows", .. page.RequestKind is null ? [] : new[] { "## A request that raises it" }, "## What to do"];

        Assert.Equal(parts, page.Headings);
    }

    [Fact]
    public void PagesWithoutARequest_AreTheListedOnes() => Assert.Equal(
        WithoutRequest.Keys.Order(StringComparer.Ordinal),
        DocsFile.Names("refusals").Select(name => DocsFile.Read("refusals", name)).Where(page => page.RequestKind is null).Select(page => page.Name).Order(StringComparer.Ordinal));

    // A rate shows only in a row of calls.
    private async Task<string> RefusalAsync(DocsFile page)
    {
        if (!Settings.TryGetValue(page.Name, out var setting))
        {
            return await PageClient.SendAsync(fixture.Host.Http, page.Request);
        }

        await using var host = await RunningHost.StartAsync(setting);
        var replies = new List<string>();
        for (var i = 0; i < 50; i++)
        {
            replies.Add(await PageClient.SendAsync(host.Http, page.Request));
        }

        return replies.First(reply => reply.Contains(page.Name, StringComparison.Ordinal));
    }

    private static JsonNode WithoutDelay(JsonNode status)
    {
        foreach (var detail in status["details"]!.AsArray())
        {
            detail!.AsObject().Remove("retryDelay");
        }

        return status;
    }
}
