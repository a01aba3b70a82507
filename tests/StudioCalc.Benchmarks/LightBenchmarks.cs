using BenchmarkDotNet.Attributes;
using StudioCalc.Maths;

namespace StudioCalc.Benchmarks;

/// <summary>Light of faces at a point and over a plate, against the simple rule: a point source.</summary>
[MemoryDiagnoser]
public class LightBenchmarks
{
    private static readonly FaceAxes Axes = new(new(0, -866, 500), default);
    private static readonly LightPoint At = new(new(20, 30, 0), Vector.Up);
    private static readonly LightPoint Sideways = At with { Normal = Vector.Towards(80, 5) };
    private static readonly LightPoint Dome = At with { Collector = Collector.Dome };
    private static readonly LightFace Single = LightFace.Point(Axes);
    private static readonly LightFace Octagon = LightFace.Of(Axes, FaceOutline.Polygon(8, 900));
    private static readonly LightFace HotOctagon = LightFace.Of(Axes, FaceOutline.Polygon(8, 900), 0.5, 2);
    private static readonly LightFace Disc = LightFace.Of(Axes, FaceOutline.Disc(900));
    private static readonly FallOffArea Area = new(default, 280, 280, 200, 200);

    [Benchmark(Baseline = true)]
    public double PointSource() => Single.Light(At);

    [Benchmark]
    public double OctagonFlat() => Octagon.Light(At);

    [Benchmark]
    public double OctagonCutByTheHorizon() => Octagon.Light(Sideways);

    [Benchmark]
    public double OctagonDome() => Octagon.Light(Dome);

    [Benchmark]
    public double OctagonWithHotCentre() => HotOctagon.Light(At);

    [Benchmark]
    public double DiscFlat() => Disc.Light(At);

    [Benchmark]
    public FallOffMap Map200By200()
    {
        var none = default(NoTrail);
        return FallOffMap.Of(Area, [new(Octagon, 1)], new(Vector.Up, IsPlace: false), Collector.Flat, ref none);
    }
}
