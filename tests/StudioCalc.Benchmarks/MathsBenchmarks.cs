using BenchmarkDotNet.Attributes;
using StudioCalc.Maths;

namespace StudioCalc.Benchmarks;

/// <summary>Formulas with and without a trail, against evaluating settings without one.</summary>
[MemoryDiagnoser]
public class MathsBenchmarks
{
    private static readonly CameraSettings Settings = new(5.6568542494923806, 0.0078125, 100);

    private static readonly LensFocus Lens = new(100, 0.2, 0.85);

    private static readonly BalanceInput Input = new()
    {
        Back = new(13),
        Fill = new(5),
        BackOverFillStops = 2,
        Placed = PlacedLight.Fill,
        PlacedOverSettingStops = -1,
        ShutterSpeedS = 0.0078125,
        Iso = 100,
        PowerBelowFullStops = 3,
        LowestPowerBelowFullStops = 7,
        SyncSpeedS = 0.0049215666011518,
        WidestFNumber = 2.8284271247461903,
        SmallestFNumber = 22.627416997969522,
    };

    private static readonly BalanceInput OutOfReach = Input with { BackOverFillStops = -4 };

    private static readonly BalanceOutcome NotReached = SolveOutOfReach();

    [Benchmark(Baseline = true)]
    public SettingsExposure Exposure()
    {
        var none = default(NoTrail);
        return SettingsExposure.Evaluate(Settings, 12.5, 250, ref none);
    }

    [Benchmark]
    public SettingsExposure ExposureWithTrail()
    {
        var trail = StepTrail.Start();
        return SettingsExposure.Evaluate(Settings, 12.5, 250, ref trail);
    }

    [Benchmark]
    public BalanceOutcome Balanced()
    {
        var none = default(NoTrail);
        return Balance.Solve(Input, BalanceVariable.FlashPower, ref none);
    }

    [Benchmark]
    public BalanceOutcome BalancedWithTrail()
    {
        var trail = StepTrail.Start();
        return Balance.Solve(Input, BalanceVariable.FlashPower, ref trail);
    }

    [Benchmark]
    public IReadOnlyList<BalanceRemedy> Remedies() => BalanceRemedies.For(OutOfReach, BalanceVariable.FlashPower, NotReached);

    [Benchmark]
    public SharpZone Zone() => SharpZone.Evaluate(Lens, 8, 0.03);

    [Benchmark]
    public SharpZone ZoneWithTrail()
    {
        var trail = StepTrail.Start();
        return SharpZone.Evaluate(Lens, 8, 0.03, ref trail);
    }

    [Benchmark]
    public Mark? FindMark() => Marks.Aperture.Find("f/5.6", StopScale.Third);

    [Benchmark]
    public Mark? NearestMark() => Marks.ShutterSpeed.Nearest(0.0123, StopScale.Third);

    private static BalanceOutcome SolveOutOfReach()
    {
        var none = default(NoTrail);
        return Balance.Solve(OutOfReach, BalanceVariable.FlashPower, ref none);
    }
}
