using System.Text.Json.Nodes;
using Google.Protobuf;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>Every page of an advisory shows what its request raises.</summary>
public sealed class AdvisoryPageTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    public static TheoryData<string> Pages => [.. DocsFile.Names("advisories")];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Request_OfThePage_RaisesTheAdvisoryThatItShows(string name)
    {
        var page = DocsFile.Read("advisories", name);
        var answer = JsonNode.Parse(await PageClient.PostAsync(fixture.Host.Http, page.Call, page.Request))!;
        var shown = Parse(page.Shown);

        Assert.Equal("ADVISORY_CODE_" + page.Name, JsonNode.Parse(page.Shown)!["code"]!.GetValue<string>());
        var raised = Advisories(answer).Select(node => Parse(node.ToJsonString())).First(advisory => advisory.Code == shown.Code);
        Assert.Equal((shown.Severity, shown.Field, shown.Text), (raised.Severity, raised.Field, raised.Text));
        Assert.Equal(raised.Values.Keys.Order(StringComparer.Ordinal), shown.Values.Keys.Order(StringComparer.Ordinal));
        Assert.All(raised.Values, value => Assert.Equal(value.Value, shown.Values[value.Key], Math.Abs(value.Value) * 1e-5 + 1e-12));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_HasItsFourPartsAndItsSeverity(string name)
    {
        var page = DocsFile.Read("advisories", name);

        Assert.Equal(["## What happened", "## How it shows", "## A request that raises it", "## What to do"], page.Headings);
        var severity = Parse(page.Shown).Severity.ToString();
        Assert.StartsWith($"# {page.Name}\n\n{severity}. ", page.Text, StringComparison.Ordinal);
    }

    private static Advisory Parse(string text) => JsonParser.Default.Parse<Advisory>(text);

    private static IEnumerable<JsonNode> Advisories(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(member => member.Key == "advisories" ? member.Value!.AsArray().Select(item => item!) : Advisories(member.Value)),
        JsonArray items => items.SelectMany(Advisories),
        _ => [],
    };
}
