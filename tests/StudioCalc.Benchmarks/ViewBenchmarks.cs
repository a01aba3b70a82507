using BenchmarkDotNet.Attributes;
using StudioCalc.Maths;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>Views of twelve components on a plate: one as a search counts it, one as the call tells it, and a hemisphere of them.</summary>
[MemoryDiagnoser]
public class ViewBenchmarks
{
    private const int Components = 12;

    private static readonly (Maths.SolidKind Solid, V1.SolidKind Component)[] Kinds =
    [
        (Maths.SolidKind.Heap, V1.SolidKind.Heap),
        (Maths.SolidKind.ConeFrustum, V1.SolidKind.ConeFrustum),
        (Maths.SolidKind.Ellipsoid, V1.SolidKind.Ellipsoid),
        (Maths.SolidKind.Box, V1.SolidKind.Box),
    ];

    private static readonly PlateViewService.PlateViewServiceClient PlateView = new(new InProcessCallInvoker());

    private readonly ViewSearch _hemisphere = new()
    {
        Scene = new(
            [.. Enumerable.Range(0, Components).Select(i => new ViewSolid(Kinds[i % 4].Solid, Base(i), 15 * i, 50, 40, Height(i), 0.6))],
            [new(new() { RimWidthMm = 280, RimDepthMm = 280, RimHeightMm = 25, FloorShare = 0.7, ContentHeightMm = 10 }, default, 0)]),
        Camera = new(new(0, 0, 20), 0, 30, 800, 360, 240),
        Importances = [.. Enumerable.Repeat(1.0, Components)],
        Main = 0,
        Stays = [.. Enumerable.Repeat(false, Components + 1)],
        ElevationsDeg = [.. Enumerable.Range(0, 46).Select(i => 2.0 * i)],
        AzimuthsDeg = [.. Enumerable.Range(-90, 180).Select(i => 2.0 * i)],
        TurnsDeg = [0],
        Weights = new(2, 2, 3, 1, 0),
        LeastShare = 0.3,
    };

    private readonly EvaluateViewRequest _request = new()
    {
        Scene = new()
        {
            Vessels = { new Vessel { Name = "plate", Base = Point(default), RimWidthMm = 280, RimHeightMm = 25, FloorShare = 0.7, ContentHeightMm = 10 } },
            Components = { Enumerable.Range(0, Components).Select(Component) },
        },
        Camera = new()
        {
            Direction = new() { ElevationDeg = 30, AzimuthDeg = 0, AimPoint = Point(new(0, 0, 20)) },
            DistanceMm = 800,
            Lens = new() { FocalLengthMm = 80 },
            Sensor = new() { Format = "36x24" },
        },
    };

    [Benchmark(Baseline = true)]
    public ViewParts OneViewOfASearch() => ViewRanking.Evaluate(_hemisphere, new(30, 0, 0), ViewRanking.SearchLines);

    [Benchmark]
    public EvaluateViewResponse OneViewOfTheCall() => PlateView.EvaluateView(_request);

    [Benchmark]
    public ViewRanked HemisphereOf2Degrees() => ViewRanking.Find(_hemisphere, CancellationToken.None);

    private static ViewComponent Component(int i) => new()
    {
        Name = $"component {i}",
        Base = Point(Base(i)),
        Kind = Kinds[i % 4].Component,
        WidthMm = 50,
        DepthMm = 40,
        HeightMm = Height(i),
        TurnDeg = 15 * i,
        IsMain = i == 0,
    };

    private static Vector Base(int i) => new(30 * (i % 3 + 1) * Math.Cos(0.9 * i), 30 * (i % 3 + 1) * Math.Sin(0.9 * i), 10);

    private static double Height(int i) => 20 + 5 * (i % 5);

    private static Point Point(Vector at) => new() { XMm = at.X, YMm = at.Y, ZMm = at.Z };
}
