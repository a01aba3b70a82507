using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class EquivalentSettingsTests
{
    private static readonly CameraSettings Kept = new(Math.Sqrt(32), 1 / 128.0, 100);

    private static readonly CameraLimits Limits = new()
    {
        WidestFNumber = 2,
        SmallestFNumber = 32,
        FastestShutterSpeedS = 1 / 256.0,
        SlowestShutterSpeedS = 1,
        LowestIso = 100,
        HighestIso = 800,
    };

    private static NoTrail none;

    [Fact]
    public void List_WholeStopsOnScale_KeepsTheExposureExactly()
    {
        var all = EquivalentSettings.List(Kept, Limits, varyIso: false, StopScale.Whole).ToList();
        Assert.Equal([4, Math.Sqrt(32), 8, Math.Sqrt(128), 16, Math.Sqrt(512), 32], all.Select(one => Math.Round(one.Settings.FNumber, 12)), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.All(all, one => Assert.Equal(0, one.RestStops, 1e-9));
    }

    [Fact]
    public void List_OfAnySettings_SaysWhatItsMarksGive() => Gen.Select(Gen.Double[0, 8], Gen.Double[-8, 0], Gen.Double[0, 4], Gen.Enum<StopScale>()).Sample((a, t, s, scale) =>
    {
        var kept = new CameraSettings(Math.Pow(2, a / 2), Math.Pow(2, t), 100 * Math.Pow(2, s));
        var light = LightLevel.FromSettings(kept, ref none);
        foreach (var one in EquivalentSettings.List(kept, Limits, varyIso: true, scale))
        {
            Assert.Equal(one.RestStops, light.StopsOver(one.Settings, 0, ref none), 1e-9);
            Assert.InRange(Math.Abs(one.RestStops), 0, 0.5 / Math.Min(3, scale.StepsPerStop()) + 1e-9);
            Assert.InRange(one.Settings.FNumber, 2 - 1e-9, 32 + 1e-9);
            Assert.InRange(one.Settings.ShutterSpeedS, 1 / 256.0 - 1e-12, 1 + 1e-9);
            Assert.InRange(one.Settings.Iso, 100 - 1e-9, 800 + 1e-9);
        }
    });

    [Fact]
    public void List_NoMarkWithinTheLimits_IsEmpty() => Assert.Empty(
        EquivalentSettings.List(Kept, Limits with { FastestShutterSpeedS = 0.9, SlowestShutterSpeedS = 0.95 }, varyIso: true, StopScale.Third));

    [Fact]
    public void List_HeldIsoOffTheScale_IsKeptAsGiven() => Assert.All(
        EquivalentSettings.List(new(8, 0.01, 137), Limits, varyIso: false, StopScale.Third), one => Assert.Equal(137, one.Settings.Iso));
}
