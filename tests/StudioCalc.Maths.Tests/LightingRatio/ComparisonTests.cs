using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ComparisonTests
{
    private static readonly Gen<MeteredLight> AnyLight = Gen.OneOf(
        Gen.Double[0, 18].Select(level => new MeteredLight(new LightLevel(level))),
        Gen.Double[0, 12].Select(level => new MeteredLight(new FlashLevel(level))));

    private static NoTrail none;

    [Fact]
    public void Of_TwoStops_IsFourToOneAndFiveToOne()
    {
        var compared = Comparison.Of(new(new LightLevel(13)), new(new LightLevel(11)), 1, ref none);
        Assert.Equal((2.0, 4.0, 5.0), (compared.KeyOverFillStops, compared.Ratio.KeyToFill, compared.Ratio.KeyPlusFillToFill));
        Assert.Equal(0.3219, compared.BothOverKeyStops, 5e-5);
        Assert.Equal(2.3219, compared.BothOverFillStops, 5e-5);
        Assert.Equal(0.2, compared.FillShare, 1e-12);
    }

    [Fact]
    public void Of_SwappedLights_TurnsTheSignAndTheShare() => Gen.Select(AnyLight, AnyLight, Gen.Double[0.001, 10]).Sample((a, b, t) =>
    {
        var (one, other) = (Comparison.Of(a, b, t, ref none), Comparison.Of(b, a, t, ref none));
        Assert.Equal(-one.KeyOverFillStops, other.KeyOverFillStops, 1e-12);
        Assert.Equal(1, one.FillShare + other.FillShare, 1e-12);
        Assert.Equal(one.BothOverKeyStops, other.BothOverFillStops, 1e-9);
    });

    [Fact]
    public void Of_AnyLights_BothAreTheStopsBetweenThemApart() => Gen.Select(AnyLight, AnyLight, Gen.Double[0.001, 10]).Sample((a, b, t) =>
    {
        var compared = Comparison.Of(a, b, t, ref none);
        Assert.Equal(compared.KeyOverFillStops, compared.BothOverFillStops - compared.BothOverKeyStops, 1e-9);
        Assert.InRange(compared.BothOverKeyStops, 0, double.MaxValue);
        Assert.InRange(compared.BothOverFillStops, 0, double.MaxValue);
    });

    [Fact]
    public void Of_TwiceTheTime_MovesMixedLightsOnlyByOneStop() => Gen.Select(AnyLight, AnyLight, Gen.Double[0.001, 10]).Sample((a, b, t) =>
    {
        var moved = Comparison.Of(a, b, 2 * t, ref none).KeyOverFillStops - Comparison.Of(a, b, t, ref none).KeyOverFillStops;
        var expected = (a.IsFlash, b.IsFlash) switch { (false, true) => 1, (true, false) => -1, _ => 0 };
        Assert.Equal(expected, moved, 1e-9);
    });
}
