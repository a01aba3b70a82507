using System.Text;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using StudioCalc.Contracts;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>The OpenAPI document tells the contract: all of it, and the same limits that the service holds.</summary>
public sealed class OpenApiTests(OpenApiFixture fixture) : IClassFixture<OpenApiFixture>
{
    public static TheoryData<string> Calls =>
        [.. PageClient.Methods.Values.Where(method => method.InputType.Fields.InFieldNumberOrder().Count > 0).Select(method => method.Name)];

    [Fact]
    public async Task Document_ReadByItsLibrary_HasNoErrors()
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(fixture.Text));
        var result = await OpenApiDocument.LoadAsync(stream, "json");

        Assert.Empty(result.Diagnostic!.Errors);
        Assert.Empty(result.Diagnostic.Warnings);
        Assert.Equal(OpenApiSpecVersion.OpenApi3_1, result.Diagnostic.SpecificationVersion);
    }

    [Fact]
    public void EveryReference_LeadsSomewhere()
    {
        var references = Nodes(fixture.Document).OfType<JsonObject>().Select(node => node["$ref"]).OfType<JsonValue>().Select(node => node.GetValue<string>()).Distinct();

        Assert.All(references, reference =>
            Assert.NotNull(reference.Split('/').Skip(1).Aggregate((JsonNode?)fixture.Document, (node, name) => node?[name])));
    }

    [Fact]
    public void EveryFieldOfTheContract_HasAPropertyWithADescription() => Assert.All(
        Contract.Files.SelectMany(file => file.MessageTypes).SelectMany(message => message.Fields.InDeclarationOrder()),
        field =>
        {
            var property = fixture.Schemas[field.ContainingType.Name]!["properties"]![field.JsonName];
            Assert.False(string.IsNullOrEmpty(property?["description"]?.GetValue<string>()), field.FullName);
            Assert.StartsWith(ContractComments.Of(field), property!["description"]!.GetValue<string>(), StringComparison.Ordinal);
        });

    [Fact]
    public void EveryRoute_HasAnOperationOfItsOwnName()
    {
        var operations = fixture.Document["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject().Select(operation => operation.Value!)).ToList();

        Assert.Equal(operations.Count, operations.Select(operation => operation["operationId"]!.GetValue<string>()).Distinct(StringComparer.Ordinal).Count());
        Assert.All(PageClient.Methods.Keys, name => Assert.Contains(operations, operation => operation["operationId"]!.GetValue<string>() == name));
        Assert.All(operations, operation => Assert.Single(operation["tags"]!.AsArray()));
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public async Task Sample_AndItsAnswer_FitTheirSchemas(string call)
    {
        var sample = fixture.Document["paths"]![PageClient.PostPath(call)]!["post"]!["requestBody"]!["content"]!["application/json"]!["example"]!.ToJsonString();

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(sample), JsonNode.Parse(Requests.Text(Kebab(call) + ".json"))));
        Assert.Empty(fixture.Errors(call + "Request", sample));
        Assert.Empty(fixture.Errors(call + "Response", await PageClient.PostAsync(fixture.Host.Http, call, sample)));
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public async Task Query_OfTheExamples_GetsTheAnswerOfTheSample(string call)
    {
        var path = PageClient.PostPath(call);
        if (fixture.Document["paths"]![path]!["get"] is not { } operation)
        {
            return;
        }

        var query = string.Join('&', operation["parameters"]!.AsArray().Where(parameter => parameter!["example"] is not null)
            .Select(parameter => $"{parameter!["name"]}={Uri.EscapeDataString(parameter["example"]!.ToString())}"));
        using var reply = await fixture.Host.Http.GetAsync(new Uri($"{path}?{query}", UriKind.Relative));

        Assert.Equal(await PageClient.PostAsync(fixture.Host.Http, call, Requests.Text(Kebab(call) + ".json")), await reply.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Capabilities_Answer_FitsItsSchema() => Assert.Empty(
        fixture.Errors("GetCapabilitiesResponse", await fixture.Host.Http.GetStringAsync(new Uri("/v1/capabilities", UriKind.Relative))));

    [Theory]
    [InlineData("EvaluateHeadroom", """{ "reflectance": 85 }""")]
    [InlineData("EvaluateHeadroom", """{ "reflectance": 0 }""")]
    [InlineData("EvaluateHeadroom", """{ "reflectance": "0.85" }""")]
    [InlineData("EvaluateHeadroom", """{ "lensFactor": 0.65 }""")]
    [InlineData("EvaluateHeadroom", """{ "reflectance": 0.85, "gloss": 1 }""")]
    [InlineData("EvaluateHeadroom", """{ "reflectance": 0.85, "definition": "HEADROOM_DEFINITION_UNSPECIFIED" }""")]
    [InlineData("EvaluateHeadroom", """{ "reflectance": 0.85, "definition": "METER" }""")]
    [InlineData("ConvertMark", """{}""")]
    [InlineData("ConvertMark", """{ "aperture": {} }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "f/8", "fNumber": 8 } }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "f/8" }, "iso": { "mark": "100" } }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "" } }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "f/5.6 and a bit more" } }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "f/8", "tenths": 10 } }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "f/8", "tenths": -1 } }""")]
    [InlineData("ConvertMark", """{ "aperture": { "mark": "f/8", "tenths": 1.5 } }""")]
    [InlineData("CombineReadings", """{ "lights": [], "settings": { "aperture": { "mark": "f/8" }, "shutterSpeed": { "mark": "1/60" }, "iso": { "mark": "100" } } }""")]
    [InlineData("CombineReadings", """{ "settings": { "aperture": { "mark": "f/8" }, "shutterSpeed": { "mark": "1/60" }, "iso": { "mark": "100" } } }""")]
    [InlineData("FollowBackLight", """{ "readings": [{ "reading": { "illuminanceLx": 1 }, "offset": 5 }, { "reading": { "illuminanceLx": 1 }, "offset": "9s" }], "shutterSpeed": { "mark": "1/60" }, "camera": {} }""")]
    public async Task WrongRequest_IsRefusedBySchemaAndService(string call, string body)
    {
        Assert.NotEmpty(fixture.Errors(call + "Request", body));

        var reply = await PageClient.PostAsync(fixture.Host.Http, call, body);
        Assert.Equal("INVALID_FIELDS", Refused.Of(JsonCallInvoker.Parser.Parse<Google.Rpc.Status>(reply)).Reason);
        Assert.Empty(fixture.Errors("google.rpc.Status", reply));
    }

    [Theory]
    [InlineData("401", "Security:ApiKeys:0=0123456789abcdef", "Docs:WithoutKey=true")]
    [InlineData("429", "Limits:CallsPerSecond=1")]
    public async Task Refusals_OfGuards_AreToldWhereTheGuardsAre(string status, params string[] settings)
    {
        await using var host = await RunningHost.StartAsync(settings);
        var guarded = JsonNode.Parse(await host.Http.GetStringAsync(new Uri("/openapi.json", UriKind.Relative)))!;

        Assert.NotNull(Replies(guarded)[status]);
        Assert.Null(Replies(fixture.Document)[status]);
        Assert.Equal(status == "401", guarded["components"]!["securitySchemes"] is not null);
        Assert.Equal(status == "401", guarded["security"] is not null);
    }

    [Fact]
    public void Replies_AreTheOnesThatCanOccur()
    {
        var path = fixture.Document["paths"]![PageClient.PostPath("ConvertMark")]!;

        Assert.Equal(["200", "400", "413", "415", "504", "default"], path["post"]!["responses"]!.AsObject().Select(reply => reply.Key));
        Assert.Equal(["200", "400", "504", "default"], path["get"]!["responses"]!.AsObject().Select(reply => reply.Key));
    }

    [Fact]
    public void Info_TellsVersionAndModelRevision()
    {
        Assert.Equal("1", fixture.Document["info"]!["x-model-revision"]!.GetValue<string>());
        Assert.StartsWith("0.1.0", fixture.Document["info"]!["version"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_CarryTheirUnitInWords() => Assert.EndsWith(
        " Unit: mm.", fixture.Schemas["FlashFill"]!["properties"]!["distanceMm"]!["description"]!.GetValue<string>(), StringComparison.Ordinal);

    private static JsonNode Replies(JsonNode document) => document["paths"]![PageClient.PostPath("ConvertMark")]!["post"]!["responses"]!;

    private static IEnumerable<JsonNode> Nodes(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(member => Nodes(member.Value)).Prepend(members),
        JsonArray items => items.SelectMany(Nodes),
        _ => [],
    };

    private static string Kebab(string name) =>
        string.Concat(name.Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}
