using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class LossTests
{
    private static NoTrail none;

    [Fact]
    public void Filters_DensityAndItsFactor_LoseTheSame() => Gen.Double[0, 6].Sample(density => Assert.Equal(
        Filters.AddDensity(0, density, ref none), Filters.AddFactor(0, Math.Pow(10, density), ref none), 1e-9));

    [Fact]
    public void Filters_Stacked_AddInAnyOrder() => Gen.Select(Gen.Double[0, 6], Gen.Double[1, 1000], Gen.Double[0, 20]).Sample((density, factor, stops) =>
    {
        var up = Filters.AddStops(Filters.AddFactor(Filters.AddDensity(0, density, ref none), factor, ref none), stops, ref none);
        var down = Filters.AddDensity(Filters.AddFactor(Filters.AddStops(0, stops, ref none), factor, ref none), density, ref none);
        Assert.Equal(up, down, 1e-9);
    });

    [Fact]
    public void CloseUp_SymmetricalLens_LosesTheSameBothWaysRound() => Gen.Double[0, 20].Sample(m => Assert.Equal(
        CloseUpLoss.Forward(m, 1, ref none), CloseUpLoss.Reversed(m, 1, ref none), 1e-9));

    [Fact]
    public void CloseUp_FarOff_LosesNothing() => Gen.Double[0.2, 5].Sample(p =>
        Assert.Equal(0, CloseUpLoss.Forward(0, p, ref none)));

    [Fact]
    public void CloseUp_MoreMagnification_LosesMore() => Gen.Select(Gen.Double[0, 10], Gen.Double[0.001, 10], Gen.Double[0.2, 5]).Sample((m, more, p) =>
    {
        Assert.True(CloseUpLoss.Forward(m + more, p, ref none) > CloseUpLoss.Forward(m, p, ref none));
        Assert.True(CloseUpLoss.Reversed(m + more, p, ref none) > CloseUpLoss.Reversed(m, p, ref none));
    });

    [Fact]
    public void CloseUp_BackToFrontWithALargeExitPupil_GainsLightFarOff() =>
        Assert.Equal(-2 * Math.Log2(1.5), CloseUpLoss.Reversed(0, 1.5, ref none), 1e-12);

    [Fact]
    public void CloseUp_EffectiveFNumber_IsWhatTheFactorSays() => Gen.Select(Gen.Double[1, 90], Gen.Double[1, 1000]).Sample((n, factor) =>
        Assert.Equal(n * Math.Sqrt(factor), CloseUpLoss.EffectiveFNumber(n, CloseUpLoss.FromFactor(factor, ref none)), 1e-9 * n * factor));

    [Fact]
    public void LossesOfBadValues_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Filters.AddFactor(0, 0, ref none));
        Assert.Throws<ArgumentOutOfRangeException>(() => Filters.AddDensity(0, double.NaN, ref none));
        Assert.Throws<ArgumentOutOfRangeException>(() => Filters.AddStops(0, double.PositiveInfinity, ref none));
        Assert.Throws<ArgumentOutOfRangeException>(() => CloseUpLoss.Forward(-0.1, 1, ref none));
        Assert.Throws<ArgumentOutOfRangeException>(() => CloseUpLoss.Forward(0.1, 0, ref none));
    }
}
