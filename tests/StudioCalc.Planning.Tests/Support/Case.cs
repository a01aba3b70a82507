using System.Reflection;
using System.Text.Json.Nodes;

namespace StudioCalc.Planning.Tests;

/// <summary>A published or recomputed case of an order.</summary>
internal sealed record Case(string Id, string Calculation, JsonNode Inputs, JsonNode Expected)
{
    public static IReadOnlyList<Case> All { get; } = Read();

    public static Case Of(string id) => All.Single(one => one.Id == id);

    public static TheoryData<string> Ids(string calculation, Func<Case, bool>? which = null) =>
        [.. All.Where(one => one.Calculation == calculation && (which?.Invoke(one) ?? true)).Select(one => one.Id)];

    public override string ToString() => Id;

    private static List<Case> Read()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("orders.json")!;
        return [.. JsonNode.Parse(stream)!["cases"]!.AsArray().Select(one =>
            new Case((string)one!["id"]!, (string)one["calculation"]!, one["inputs"]!, one["expected"]!))];
    }
}
