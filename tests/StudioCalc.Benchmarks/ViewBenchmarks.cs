using BenchmarkDotNet.Attributes;
using StudioCalc.Maths;

namespace StudioCalc.Benchmarks;

/// <summary>Views of twelve components on a plate: one finely, one as a search counts it, and a hemisphere of them.</summary>
[MemoryDiagnoser]
public class ViewBenchmarks
{
    private static readonly SolidKind[] Kinds = [SolidKind.Heap, SolidKind.ConeFrustum, SolidKind.Ellipsoid, SolidKind.Box];

    private readonly ViewSearch _hemisphere = new()
    {
        Scene = new(
            [.. Enumerable.Range(0, 12).Select(Component)],
            [new(new() { RimWidthMm = 280, RimDepthMm = 280, RimHeightMm = 25, FloorShare = 0.7, ContentHeightMm = 10 }, default, 0)]),
        Camera = new(new(0, 0, 20), 0, 30, 800, 360, 240),
        Importances = [.. Enumerable.Repeat(1.0, 12)],
        Main = 0,
        Stays = [.. Enumerable.Repeat(false, 13)],
        ElevationsDeg = [.. Enumerable.Range(0, 46).Select(i => 2.0 * i)],
        AzimuthsDeg = [.. Enumerable.Range(-90, 180).Select(i => 2.0 * i)],
        TurnsDeg = [0],
        Weights = new(2, 2, 3, 1, 0),
        LeastShare = 0.3,
    };

    [Benchmark(Baseline = true)]
    public ViewParts OneViewCoarse() => ViewRanking.Evaluate(_hemisphere, new(30, 0, 0), ViewRanking.SearchLines);

    [Benchmark]
    public ViewParts OneViewFine() => ViewRanking.Evaluate(_hemisphere, new(30, 0, 0), ViewRanking.ToldLines);

    [Benchmark]
    public ViewRanked HemisphereOf2Degrees() => ViewRanking.Find(_hemisphere, CancellationToken.None);

    private static ViewSolid Component(int i) => new(
        Kinds[i % 4], new(30 * (i % 3 + 1) * Math.Cos(0.9 * i), 30 * (i % 3 + 1) * Math.Sin(0.9 * i), 10), 20 * i, 50, 40, 20 + 5 * (i % 5), 0.6);
}
