using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>The OpenAPI document of a service with default settings, and validation by a JSON Schema library.</summary>
public sealed class OpenApiFixture : IAsyncLifetime
{
    private readonly Dictionary<string, JsonSchema> _schemas = new(StringComparer.Ordinal);

    public RunningHost Host { get; private set; } = null!;

    public string Text { get; private set; } = "";

    public JsonNode Document { get; private set; } = null!;

    public JsonObject Schemas => Document["components"]!["schemas"]!.AsObject();

    public async Task InitializeAsync()
    {
        Host = await RunningHost.StartAsync();
        Text = await Host.Http.GetStringAsync(new Uri("/openapi.json", UriKind.Relative));
        Document = JsonNode.Parse(Text)!;
    }

    public Task DisposeAsync() => Host.DisposeAsync().AsTask();

    /// <summary>What of <paramref name="json"/> does not fit the component <paramref name="name"/>; empty when all fits.</summary>
    public IReadOnlyList<string> Errors(string name, string json)
    {
        if (!_schemas.TryGetValue(name, out var schema))
        {
            var root = new JsonObject
            {
                ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
                ["$ref"] = "#/$defs/" + name,
                ["$defs"] = JsonNode.Parse(Schemas.ToJsonString().Replace("#/components/schemas/", "#/$defs/", StringComparison.Ordinal)),
            };
            var options = new BuildOptions { SchemaRegistry = new() };
            _schemas[name] = schema = JsonSchema.FromText(root.ToJsonString(), options);
        }

        using var instance = JsonDocument.Parse(json);
        var results = schema.Evaluate(instance.RootElement, new() { OutputFormat = OutputFormat.List });
        return results.IsValid
            ? []
            : [.. (results.Details ?? []).Where(detail => detail.Errors is { Count: > 0 }).Select(detail => $"{detail.InstanceLocation}: {string.Join(' ', detail.Errors!.Values)}")];
    }
}
