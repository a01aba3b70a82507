using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class SharpZoneTests
{
    private static readonly Gen<(LensFocus Lens, double N, double C)> Cases =
        from f in Gen.Double[10, 300]
        from m in Gen.Double[0.001, 5]
        from p in Gen.Double[0.3, 3]
        from n in Gen.Double[1, 45]
        from c in Gen.Double[0.003, 0.06]
        select (new LensFocus(f, m, p), n, c);

    [Fact]
    public void BlurAtTheLimits_IsThePermittedOne() => Cases.Sample(one =>
    {
        var zone = SharpZone.Evaluate(one.Lens, one.N, one.C);
        Assert.Equal(one.C, PointBlur.DiameterMm(one.Lens, one.N, -zone.NearDepthMm), one.C * 1e-9);
        if (zone.FarIsInfinite)
        {
            Assert.True(PointBlur.AtInfinityMm(one.Lens, one.N) <= one.C * (1 + 1e-12));
        }
        else
        {
            Assert.Equal(one.C, PointBlur.DiameterMm(one.Lens, one.N, zone.FarDepthMm), one.C * 1e-6);
        }
    });

    [Fact]
    public void ClosingTheAperture_DeepensTheZone() => Cases.Sample(one =>
    {
        var (open, closed) = (SharpZone.Evaluate(one.Lens, one.N, one.C), SharpZone.Evaluate(one.Lens, one.N * 1.1, one.C));
        Assert.True(closed.NearDepthMm > open.NearDepthMm);
        Assert.True(closed.FarDepthMm > open.FarDepthMm || open.FarIsInfinite);
    });

    [Fact]
    public void ScalingAllLengths_ScalesTheZone() => Cases.Select(Gen.Double[0.1, 10], (one, k) => (one.Lens, one.N, one.C, K: k)).Sample(one =>
    {
        var zone = SharpZone.Evaluate(one.Lens, one.N, one.C);
        var scaled = SharpZone.Evaluate(
            new(one.Lens.FocalLengthMm * one.K, one.Lens.Magnification, one.Lens.PupilMagnification), one.N, one.C * one.K);
        Assert.Equal(one.K * zone.NearDepthMm, scaled.NearDepthMm, zone.NearDepthMm * one.K * 1e-9);
        Assert.Equal(zone.FarIsInfinite, scaled.FarIsInfinite);
    });

    [Fact]
    public void FocusAtTheHyperfocalDistance_ReachesToInfinityFromHalfOfIt() => Cases.Sample(one =>
    {
        var none = default(NoTrail);
        var f = one.Lens.FocalLengthMm;
        var hyperfocal = SharpZone.HyperfocalMm(f, one.N, one.C, ref none);
        var zone = SharpZone.Evaluate(new(f, f / (hyperfocal - f) * (1 - 1e-12)), one.N, one.C);
        Assert.True(zone.FarIsInfinite);
        Assert.Equal(hyperfocal / 2, zone.NearFromEntrancePupilMm, hyperfocal * 1e-9);
    });

    [Fact]
    public void FocusAtInfinity_HasAFiniteNearLimit()
    {
        var zone = SharpZone.Evaluate(new(50, 0), 8, 0.03);
        Assert.Equal(50 * 50 / (8 * 0.03), zone.NearFromEntrancePupilMm, 1e-9);
        Assert.True(double.IsPositiveInfinity(zone.NearDepthMm) && zone.FarIsInfinite);
        Assert.Equal(0, PointBlur.AtInfinityMm(new(50, 0), 8));
    }

    [Fact]
    public void SensorDistance_GoesThereAndBack() => Cases.Where(one => one.Lens.Magnification <= 1).Sample(one =>
    {
        var none = default(NoTrail);
        var m = LensFocus.MagnificationAt(one.Lens.FromSensorMm, one.Lens.FocalLengthMm, 0, ref none);
        Assert.Equal(one.Lens.Magnification, m!.Value, one.Lens.Magnification * 1e-6);
        Assert.Equal(
            one.Lens.FocalLengthMm,
            LensFocus.FocalLengthAt(one.Lens.FromSensorMm, one.Lens.Magnification, 0, ref none),
            one.Lens.FocalLengthMm * 1e-12);
    });

    [Fact]
    public void LifeSizeOfALens_ThatShortens_HasNoAnswerFromItsMarkedFocalLength()
    {
        var none = default(NoTrail);
        Assert.Null(LensFocus.MagnificationAt(314, 105, 0, ref none));
        Assert.Equal(78.5, LensFocus.FocalLengthAt(314, 1, 0, ref none), 1e-12);
    }

    [Fact]
    public void RefocusedLens_StandsWhereItWasTold() => Cases.Select(Gen.Double[1.5, 50], (one, times) => (one.Lens, times)).Sample(one =>
    {
        var distance = one.Lens.FocalLengthMm / one.Lens.PupilMagnification * one.times;
        Assert.Equal(distance, one.Lens.RefocusedAt(distance).FromEntrancePupilMm, distance * 1e-9);
    });
}
