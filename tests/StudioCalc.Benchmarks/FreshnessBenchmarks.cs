using BenchmarkDotNet.Attributes;
using StudioCalc.Maths;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>Conduction by series and in layers, and budgets by draws, against one sum of a series.</summary>
[MemoryDiagnoser]
public class FreshnessBenchmarks
{
    private const int Draws = 20000;

    private static readonly InProcessCallInvoker Invoker = new();
    private static readonly FreshnessService.FreshnessServiceClient Client = new(Invoker);
    private static readonly Conduction Slab = new(SolidShape.Slab, 0.42);

    private readonly ShotStep[] _steps = [.. Enumerable.Range(0, 10).Select(i => new ShotStep(new(10 + i, 20 + i, 45 + i, Spread.Pert), i % 4 == 0))];

    private readonly TimedComponent[] _components =
    [
        .. Enumerable.Range(0, 10).Select(i => new TimedComponent
        {
            Window = new(150 + 10 * i, 260 + 10 * i, 400 + 10 * i, Spread.Pert), ClockStart = i / 2, NeededFrom = 8, NeededUntil = 10,
        }),
    ];

    private readonly SimulateCoolingRequest _series = Curve(total: true);
    private readonly SimulateCoolingRequest _layers = Curve(total: false);

    [Benchmark(Baseline = true)]
    public double SeriesAtOneTime() => Slab.Surface(0.15);

    [Benchmark]
    public double SeriesWithItsRoots() => new Conduction(SolidShape.Slab, 0.42).Surface(0.15);

    [Benchmark]
    public SimulateCoolingResponse CurveBySeries() => Client.SimulateCooling(_series);

    [Benchmark]
    public SimulateCoolingResponse CurveInLayers() => Client.SimulateCooling(_layers);

    [Benchmark]
    public BudgetChances BudgetOfTen() => BudgetChances.Draw(_steps, _components, Draws, 1);

    // 600 s in steps of 10 s.
    private static SimulateCoolingRequest Curve(bool total)
    {
        var air = new RoomAir { TemperatureCelsius = 22, RelativeHumidity = 0.5 };
        if (total)
        {
            air.TotalWPerM2K = 15;
        }

        return new()
        {
            Item = new()
            {
                Piece = new()
                {
                    Shape = PieceShape.Slab,
                    SizeMm = 25,
                    StartCelsius = 60,
                    Properties = new() { Given = new() { ConductivityWPerMK = 0.45, DensityKgPerM3 = 1060, SpecificHeatJPerKgK = 3400 } },
                },
            },
            Air = air,
            Duration = new() { Seconds = 600 },
        };
    }
}
