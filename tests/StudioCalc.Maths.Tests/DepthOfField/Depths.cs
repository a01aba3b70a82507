using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Random lenses with two points before them, and what is permitted.</summary>
internal static class Depths
{
    public static readonly ApertureRange Thirds = new(Math.Sqrt(8), 32, StopScale.Third);

    /// <summary>Points from the entrance pupil, at the magnifications of the table and beyond life size.</summary>
    public static readonly Gen<DepthPoints> FromPupil = Gen.Select(
        Gen.Double[20, 300], Gen.Double[0.4, 2.5], Gen.Double[-40, 40], Gen.Double[-6, 1], Gen.Double[-9, -1],
        (f, p, h, logM, logDepth) =>
        {
            var lens = new LensFocus(f, Math.Exp(logM), p, h);
            var x = lens.FromEntrancePupilMm;
            return new DepthPoints
            {
                FocalLengthMm = f,
                PupilMagnification = p,
                PrincipalSeparationMm = h,
                NearMm = x,
                FarMm = x * (1 + Math.Exp(logDepth)),
            };
        });

    /// <summary>The same counted from the sensor, up to about half life size.</summary>
    public static readonly Gen<DepthPoints> FromSensor = FromPupil
        .Where(points => TwoPointFocus.Between(points)!.NearMagnification < 0.5)
        .Select(points =>
        {
            var away = TwoPointFocus.Between(points)!.Lens.PupilToSensorMm;
            return points with { FromSensor = true, NearMm = points.NearMm + away, FarMm = points.FarMm + away };
        });

    public static readonly Gen<double> BlurMm = Gen.Double[Math.Log(0.003), Math.Log(0.2)].Select(Math.Exp);

    public static ApertureOutcome Solve(TwoPointFocus focus, double blurMm, ApertureRange range)
    {
        var none = default(NoTrail);
        return DepthAperture.Solve(focus, blurMm, 0.55, range, ref none);
    }

    public static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), $"{actual:R} instead of {expected:R}");
}
