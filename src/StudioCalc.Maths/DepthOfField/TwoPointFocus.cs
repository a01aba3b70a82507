using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A lens focused so that a near and a far point blur alike.</summary>
/// <remarks>
/// <code>
/// x  = 2 xn xf / (xn + xf)                                            (30)
/// m  = f / (x - f / p)                                                (31)
/// P  = f (2 + m - 1 / p) + h      entrance pupil to sensor            (32)
/// dv = f² (xf - xn) / ((xn - f / p) (xf - f / p))                     (33)
/// B  = f m (xf - xn) / (xf + xn)                                      (34)
/// </code>
/// <para>xn, xf, x: near point, far point and focused plane from the entrance pupil. dv: the images of the points apart,
/// behind a lens that stays. B: set f-number times blur at either point. (30) is exact for any lens free of aberrations: a point
/// at y blurs in proportion to |y - x| / y. Distances from the sensor, Ln and Lf, are xn + P and xf + P; P holds the m that is
/// looked for, so (30) to (32) are solved together, for the smaller m. f (1 / m + 1 / p) is convex in m and x is concave, so
/// Newton's method from the m that focuses on the far point climbs to the solution without passing it. The points must lie
/// beyond f / p, before the front focal point. Source: derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public sealed record TwoPointFocus
{
    private const int MostSteps = 200;
    private const double Converged = 1e-6;

    /// <summary>The lens, focused.</summary>
    public required LensFocus Lens { get; init; }

    /// <summary>Near point from the entrance pupil, xn. [mm]</summary>
    public required double NearMm { get; init; }

    /// <summary>Far point from the entrance pupil, xf. [mm]</summary>
    public required double FarMm { get; init; }

    /// <summary>Set f-number times blur at either point, B. (34) [mm]</summary>
    public double BlurTimesFNumberMm =>
        Lens.FocalLengthMm * Lens.Magnification * (FarMm - NearMm) / (FarMm + NearMm);

    /// <summary>Magnification at the near point, the largest.</summary>
    public double NearMagnification => Lens.FocalLengthMm / (NearMm - Lens.FocalLengthMm / Lens.PupilMagnification);

    /// <summary>Focuses between the points, or gives null where no lens of this fixed focal length can.</summary>
    /// <param name="points">The points.</param>
    public static TwoPointFocus? Between(DepthPoints points)
    {
        var none = default(NoTrail);
        return Between(points, ref none);
    }

    /// <summary>The same, and follows the sum.</summary>
    /// <param name="points">The points.</param>
    /// <param name="trail">Follows the sum.</param>
    public static TwoPointFocus? Between<TTrail>(DepthPoints points, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(points);
        Guard.NotNegative(points.DepthMm);
        return points.FromSensor ? FromSensor(points, ref trail) : FromPupil(points, ref trail);
    }

    /// <summary>The images of the points apart, dv. (33) [mm]</summary>
    /// <param name="trail">Follows the sum; it must hold f, p, xn and xf already.</param>
    public double FocusSpreadMm<TTrail>(ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (f, p, xn, xf) = (Lens.FocalLengthMm, Lens.PupilMagnification, NearMm, FarMm);
        return trail.Let("dv", f * f * (xf - xn) / ((xn - f / p) * (xf - f / p)), "mm", "depth of field (33)", "focus_spread_mm");
    }

    private static TwoPointFocus? FromPupil<TTrail>(DepthPoints points, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var f = trail.Given("f", Guard.Positive(points.FocalLengthMm), "mm", "focal length");
        var p = trail.Given("p", Guard.Positive(points.PupilMagnification), "", "pupil_magnification");
        if (points.NearMm <= f / p)
        {
            return null;
        }

        var xn = trail.Given("xn", points.NearMm, "mm", "near point from the entrance pupil");
        var xf = trail.Given("xf", points.FarMm, "mm", "far point from the entrance pupil");
        var x = trail.Let("x", 2 * xn * xf / (xn + xf), "mm", "depth of field (30)");
        var m = trail.Let("m", f / (x - f / p), "", "depth of field (31)");
        return new() { Lens = new(f, m, p, points.PrincipalSeparationMm), NearMm = xn, FarMm = xf };
    }

    private static TwoPointFocus? FromSensor<TTrail>(DepthPoints points, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (Solve(points) is not { } solved)
        {
            return null;
        }

        var f = trail.Given("f", points.FocalLengthMm, "mm", "focal length");
        var p = trail.Given("p", points.PupilMagnification, "", "pupil_magnification");
        var h = trail.Given("h", points.PrincipalSeparationMm, "mm", "principal_separation_mm");
        var Ln = trail.Given("Ln", points.NearMm, "mm", "near point from the sensor");
        var Lf = trail.Given("Lf", points.FarMm, "mm", "far point from the sensor");
        var m = trail.Given("m", solved, "", "solved: depth of field (30) to (32) together");
        var P = trail.Let("P", f * (2 + m - 1 / p) + h, "mm", "depth of field (32)");
        var xn = trail.Let("xn", Ln - P, "mm", "near point from the entrance pupil");
        var xf = trail.Let("xf", Lf - P, "mm", "far point from the entrance pupil");
        var x = trail.Let("x", 2 * xn * xf / (xn + xf), "mm", "depth of field (30)");
        var residual = trail.Let("residual", x - f * (1 / m + 1 / p), "mm", "depth of field (31), what is left of it");
        return Abs(residual) <= Converged * x ? new() { Lens = new(f, m, p, h), NearMm = xn, FarMm = xf } : null;
    }

    private static double? Solve(DepthPoints points)
    {
        var none = default(NoTrail);
        var (f, p, h) = (points.FocalLengthMm, points.PupilMagnification, points.PrincipalSeparationMm);
        if (LensFocus.MagnificationAt(points.FarMm, f, h, ref none) is not { } m)
        {
            return null;
        }

        for (var step = 0; step < MostSteps; step++)
        {
            var pupil = f * (2 + m - 1 / p) + h;
            var (xn, xf) = (points.NearMm - pupil, points.FarMm - pupil);
            if (xn <= f / p)
            {
                return null;
            }

            var sum = xn + xf;
            var miss = 2 * xn * xf / sum - f * (1 / m + 1 / p);
            var slope = f / (m * m) - 2 * f * (xn * xn + xf * xf) / (sum * sum);
            if (miss >= 0 || slope <= 0)
            {
                return miss >= 0 ? m : null;
            }

            var next = m - miss / slope;
            if (next <= m)
            {
                return m;
            }

            m = next;
        }

        return m;
    }
}
