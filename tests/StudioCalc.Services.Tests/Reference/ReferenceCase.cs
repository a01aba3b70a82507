using System.Text.Json;
using System.Text.Json.Serialization;
using StudioCalc.Tests;

namespace StudioCalc.Services.Tests;

/// <summary>A check value with its source, as it stands in tests/reference.</summary>
public sealed record ReferenceCase
{
    private static readonly string[] Kinds = ["published", "worked example", "independent computation", "memory", "common practice"];

    private static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    public required string Id { get; init; }

    public required string Call { get; init; }

    public required JsonElement Request { get; init; }

    public required Dictionary<string, JsonElement> Expect { get; init; }

    /// <summary>One number for all numbers, or one to a path.</summary>
    public required JsonElement Tolerance { get; init; }

    public required string Source { get; init; }

    public required string Kind { get; init; }

    public string? Note { get; init; }

    /// <summary>A printed value known to be wrong, or to rest on another basis.</summary>
    public double? PublishedValueNotToMatch { get; init; }

    /// <summary>Every case of every file.</summary>
    public static IReadOnlyList<ReferenceCase> All { get; } =
    [
        .. Directory.EnumerateFiles(RepositoryRoot.At("tests", "reference"), "*.json").Order(StringComparer.Ordinal)
            .SelectMany(file => Read(File.ReadAllText(file))),
    ];

    /// <summary>Reads the text of a file.</summary>
    /// <exception cref="JsonException">A member is missing or unknown, or a case has no source or no known kind.</exception>
    public static IReadOnlyList<ReferenceCase> Read(string json)
    {
        var cases = JsonSerializer.Deserialize<List<ReferenceCase>>(json, Form)!;
        foreach (var one in cases)
        {
            if (one.Id.Length == 0 || string.IsNullOrWhiteSpace(one.Source) || !Kinds.Contains(one.Kind, StringComparer.Ordinal) || one.Expect.Count == 0)
            {
                throw new JsonException($"{one.Id}: needs an id, a source, a known kind and something to expect.");
            }
        }

        return cases;
    }

    public double ToleranceOf(string path) => Tolerance.ValueKind == JsonValueKind.Number
        ? Tolerance.GetDouble()
        : Tolerance.TryGetProperty(path, out var own) ? own.GetDouble() : throw new KeyNotFoundException($"{Id}: no tolerance for {path}.");

    public override string ToString() => Id;
}
