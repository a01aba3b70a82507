using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class FocusSettingsTests
{
    private static readonly Gen<FocusSettings> Any = Gen.Select(
        Gen.Double[-0.05, 0.4], Gen.Double[-0.02, 0.2], Gen.OneOf(Gen.Const(0.0), Gen.Const(0.5), Gen.Double[0, 1]),
        (low, size, importance) => new FocusSettings(low, low + size, importance));

    [Fact]
    public void Best_AgainstABruteForceSearch_HoldsNoLess() => Gen.Select(Any, Any.Array[0, 8]).Sample((main, others) =>
    {
        if (main.Nearest <= Math.Max(main.Furthest, 0))
        {
            return;
        }

        var best = FocusSettings.Best(main, others);
        var (low, high) = (Math.Max(main.Furthest, 0), main.Nearest);
        Assert.InRange(best, low, high);
        var held = FocusSettings.Held(others, best);
        for (var i = 0; i <= 2000; i++)
        {
            Assert.True(FocusSettings.Held(others, low + (high - low) * i / 2000) <= held + 1e-9);
        }
    });

    [Fact]
    public void Best_WithoutOthers_IsTheMiddle() =>
        Assert.Equal(0.15, FocusSettings.Best(new(0.1, 0.2, 1), []), 1e-15);

    [Fact]
    public void Best_OfTwoRangesAsGood_IsTheOneNearerTheMiddle()
    {
        FocusSettings[] others = [new(0.10, 0.11, 0.5), new(0.17, 0.18, 0.5)];
        Assert.Equal(0.175, FocusSettings.Best(new(0.1, 0.2, 1), others), 1e-12);
        Assert.Equal(0.185, FocusSettings.Best(new(0.1, 0.2, 1), [new(0.11, 0.12, 0.5), new(0.18, 0.19, 0.5)]), 1e-12);
    }

    [Fact]
    public void Best_WhereTwoJustTouch_HoldsBoth()
    {
        FocusSettings[] others = [new(0.10, 0.15, 0.3), new(0.15, 0.30, 0.3)];
        Assert.Equal(0.15, FocusSettings.Best(new(0.1, 0.2, 1), others));
    }

    [Fact]
    public void Of_TheLimitsOfAFocus_GiveItBack() => Depths.FromPupil.Sample(points =>
    {
        var focus = TwoPointFocus.Between(points)!;
        var zone = SharpZone.Evaluate(focus.Lens, 11, 0.03);
        if (zone.FarIsInfinite)
        {
            return;
        }

        var w = 11 * 0.03 / focus.Lens.FocalLengthMm;
        var settings = FocusSettings.Of(focus.Lens, w, zone.NearFromEntrancePupilMm, zone.FarFromEntrancePupilMm, 1);
        Depths.Near(focus.Lens.Magnification, settings.Furthest, 1e-9);
        Depths.Near(focus.Lens.Magnification, settings.Nearest, 1e-9);
    });

    [Fact]
    public void Of_APartWithinTheFrontFocalPoint_IsNever()
    {
        var settings = FocusSettings.Of(new(100, 0.2), 0.003, 99, 150, 1);
        Assert.Equal(0, FocusSettings.Held([settings], 0.2));
        Assert.Equal(0, FocusSettings.Held([settings], 1e9));
    }
}
