using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>The sharp zone against rays traced through two-group lenses with unequal pupils.</summary>
public sealed class RayTraceTests
{
    // Symmetrical-like, telephoto-like and retrofocus-like lenses, focused from life size to far away.
    private static readonly Gen<(TwoGroupLens Lens, double SubjectAtMm, double BlurMm)> Cases =
        from front in Gen.OneOf(Gen.Double[70, 200], Gen.Double[-300, -120])
        from rear in Gen.OneOf(Gen.Double[60, 200], Gen.Double[-400, -150])
        from separation in Gen.Double[5, 45]
        from stop in Gen.Double[0, 1]
        from radius in Gen.Double[1, 8]
        let lens = new TwoGroupLens(front, rear, separation, stop * separation, radius)
        where lens.FocalLengthMm is > 30 and < 400 && lens.PupilMagnification is > 0.25 and < 4
        from magnification in Gen.Double[0.02, 1.2]
        let focused = new LensFocus(lens.FocalLengthMm, magnification, lens.PupilMagnification)
        let subject = lens.EntrancePupilAtMm - focused.FromEntrancePupilMm
        where subject < -20
        from blur in Gen.Double[0.005, 0.05]
        select (lens, subject, blur);

    [Fact]
    public void Geometry_MatchesTheTrace() => Cases.Sample(
        one =>
        {
            var (lens, subject, _) = one;
            var (image, magnification) = lens.ImageOf(subject);
            var focused = new LensFocus(lens.FocalLengthMm, magnification, lens.PupilMagnification, lens.PrincipalSeparationMm);
            Near(lens.EntrancePupilAtMm - subject, focused.FromEntrancePupilMm);
            Near(image - subject, focused.FromSensorMm);
        },
        iter: 5000);

    [Fact]
    public void Limits_MatchTheTrace() => Cases.Sample(
        one =>
        {
            var (lens, subject, blur) = one;
            var (sensor, magnification) = lens.ImageOf(subject);
            var focused = new LensFocus(lens.FocalLengthMm, magnification, lens.PupilMagnification, lens.PrincipalSeparationMm);
            var zone = SharpZone.Evaluate(focused, lens.FocalLengthMm / lens.EntrancePupilMm, blur);
            var nearest = Search(at => lens.BlurMm(at, sensor) - blur, subject, Math.Min(lens.EntrancePupilAtMm, 0) - 1e-6);
            Near(subject + zone.NearDepthMm, nearest, 1e-6 * focused.FromEntrancePupilMm);
            var atInfinity = lens.BlurMm(-1e12, sensor);
            if (zone.FarIsInfinite)
            {
                Assert.True(atInfinity <= blur * (1 + 1e-6));
            }
            else
            {
                var farthest = Search(at => lens.BlurMm(at, sensor) - blur, subject, -1e12);
                Near(zone.FarDepthMm, subject - farthest, 1e-5 * (subject - farthest));
            }
        },
        iter: 3000);

    [Fact]
    public void BlurOfAPoint_MatchesTheTrace() => Cases.Select(Gen.Double[-0.5, 3], (one, share) => (one.Lens, one.SubjectAtMm, share)).Sample(
        one =>
        {
            var (lens, subject, share) = one;
            var (sensor, magnification) = lens.ImageOf(subject);
            var focused = new LensFocus(lens.FocalLengthMm, magnification, lens.PupilMagnification);
            var offset = share * focused.FromEntrancePupilMm;
            Near(
                lens.BlurMm(subject - offset, sensor),
                PointBlur.DiameterMm(focused, lens.FocalLengthMm / lens.EntrancePupilMm, offset));
        },
        iter: 5000);

    // Where a function that starts below zero at from crosses it on the way to to; far limits need steps that grow.
    private static double Search(Func<double, double> function, double from, double to)
    {
        var (low, high) = (0.0, Math.Log(1 + Math.Abs(to - from)));
        var sign = Math.Sign(to - from);
        double At(double step) => from + sign * (Math.Exp(step) - 1);
        Assert.True(function(At(high)) > 0);
        for (var i = 0; i < 200; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = function(At(middle)) > 0 ? (low, middle) : (middle, high);
        }

        return At(low);
    }

    private static void Near(double expected, double actual) => Near(expected, actual, 1e-7 * Math.Max(1, Math.Abs(expected)));

    private static void Near(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, FormattableString.Invariant($"{expected:R} and {actual:R}"));
}
