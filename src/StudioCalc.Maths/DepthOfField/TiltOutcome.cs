using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What keeps a tilt from being set.</summary>
public enum TiltObstacle
{
    /// <summary>The lens does not tilt so far.</summary>
    TiltRange,

    /// <summary>The hinge line would lie nearer than the focal length.</summary>
    HingeTooNear,

    /// <summary>The plane lies within the focal length.</summary>
    PlaneTooNear,
}

/// <summary>Whether a lens can lay its plane of focus where it is wanted.</summary>
/// <remarks>
/// <code>
/// tan(e) = f / (d sin(T))          lowest elevation at the largest tilt T     (76)
/// f      = |J| sin(T)              longest focal length                       (77)
/// </code>
/// <para>The nearest plane is that at the largest tilt which crosses the axis where the wanted one does. See
/// <see cref="TiltSetting"/> for the rest.</para>
/// </remarks>
public sealed record TiltOutcome
{
    private const double Rounding = 1e-9;

    /// <summary>What stands in the way; null when nothing does.</summary>
    public TiltObstacle? Obstacle { get; init; }

    /// <summary>The wanted plane, or the nearest; null when not even that can be had or no tilt range is known.</summary>
    public TiltSetting? Setting { get; init; }

    /// <summary>Tilt that is missing; null when no tilt does it. [deg]</summary>
    public double? ShortfallDeg { get; init; }

    /// <summary>Distance that is missing; null when tilt is. [mm]</summary>
    public double? ShortfallMm { get; init; }

    /// <summary>Solves for the tilt.</summary>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="plane">The wanted plane.</param>
    /// <param name="largestTiltDeg">How far the lens tilts, above 0; null for any. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    public static TiltOutcome Solve<TTrail>(double focalLengthMm, TiltPlane plane, double? largestTiltDeg, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(plane);
        Guard.Positive(focalLengthMm);
        if (Abs(plane.HingeMm) <= focalLengthMm)
        {
            var nearest = Nearest(focalLengthMm, plane, largestTiltDeg, ref trail);
            trail.Section("shortfall");
            var f = trail.Given("f", focalLengthMm, "mm", "focal_length_mm");
            var J = trail.Given("J", plane.HingeMm, "mm", "hinge distance", "not_reached.hinge_distance_mm");
            return new()
            {
                Obstacle = TiltObstacle.HingeTooNear,
                Setting = nearest,
                ShortfallMm = trail.Let("short", f - Abs(J), "mm", "depth of field (72)", "not_reached.shortfall_mm"),
            };
        }

        var none = default(NoTrail);
        if (TiltSetting.Of(focalLengthMm, plane, ref none, "") is not { } wanted)
        {
            trail.Section("shortfall");
            var f = trail.Given("f", focalLengthMm, "mm", "focal_length_mm");
            var t = trail.Given("t", TiltSetting.TiltRad(focalLengthMm, plane), "rad", "depth of field (72), 0 without tilt");
            var u = trail.Given("u", plane.CrossingMm, "mm", "where the plane crosses the axis");
            return new()
            {
                Obstacle = TiltObstacle.PlaneTooNear,
                ShortfallMm = trail.Let("short", Max(0, f / Cos(t) - u), "mm", "depth of field (73)", "not_reached.shortfall_mm"),
            };
        }

        if (largestTiltDeg is not { } largest || Abs(wanted.TiltDeg) <= largest + Rounding)
        {
            return new() { Setting = TiltSetting.Of(focalLengthMm, plane, ref trail, "solution.") };
        }

        var reached = Nearest(focalLengthMm, plane, largest, ref trail);
        trail.Section("shortfall");
        var tilt = trail.Given("tilt", wanted.TiltDeg, "deg", "depth of field (72) for the wanted plane");
        var most = trail.Given("most", largest, "deg", "largest_tilt_deg");
        return new()
        {
            Obstacle = TiltObstacle.TiltRange,
            Setting = reached,
            ShortfallDeg = trail.Let("short", Abs(tilt) - most, "deg", "tilt that is missing", "not_reached.shortfall_deg"),
        };
    }

    /// <summary>The lowest elevation at which a lens lays its plane of focus on the table, or null when it forms no image from there.
    /// (76) [deg]</summary>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="axisMm">Distance along the axis d, above 0. [mm]</param>
    /// <param name="largestTiltDeg">Largest tilt T, above 0. [deg]</param>
    public static double? LowestElevationDeg(double focalLengthMm, double axisMm, double largestTiltDeg)
    {
        var (sin, cos) = SinCos(Guard.Positive(largestTiltDeg) * PI / 180);
        var share = Guard.Positive(focalLengthMm) / Guard.Positive(axisMm);
        return cos - share < TiltSetting.Clearance ? null : Atan(share / sin) * 180 / PI;
    }

    /// <summary>The longest focal length whose lens lays its plane of focus there at its largest tilt, or null when it forms no image
    /// then. (77) [mm]</summary>
    /// <param name="plane">The wanted plane, not parallel to the sensor.</param>
    /// <param name="largestTiltDeg">Largest tilt T, above 0. [deg]</param>
    public static double? LongestFocalLengthMm(TiltPlane plane, double largestTiltDeg)
    {
        ArgumentNullException.ThrowIfNull(plane);
        var (sin, cos) = SinCos(Guard.Positive(largestTiltDeg) * PI / 180);
        var f = Abs(plane.HingeMm) * sin;
        return f > 0 && cos - f * plane.PerCrossing >= TiltSetting.Clearance ? f : null;
    }

    /// <summary>The least distance along the axis from which a lens lays its plane of focus on the table, or null when it forms no
    /// image from there. (76) [mm]</summary>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="elevationDeg">How steeply the axis looks down e, above 0 and under 90. [deg]</param>
    /// <param name="largestTiltDeg">Largest tilt T, above 0. [deg]</param>
    public static double? LeastAxisMm(double focalLengthMm, double elevationDeg, double largestTiltDeg)
    {
        var (sin, cos) = SinCos(Guard.Positive(largestTiltDeg) * PI / 180);
        var share = Tan(Guard.Positive(elevationDeg) * PI / 180) * sin;
        return cos - share < TiltSetting.Clearance ? null : Guard.Positive(focalLengthMm) / share;
    }

    private static TiltSetting? Nearest<TTrail>(double focalLengthMm, TiltPlane plane, double? largestTiltDeg, ref TTrail trail)
        where TTrail : struct, ITrail => largestTiltDeg is { } largest
        ? TiltSetting.Of(
            focalLengthMm,
            plane with { HingeMm = (plane.HingeMm < 0 ? -1 : 1) * focalLengthMm / Sin(largest * PI / 180) },
            ref trail,
            "not_reached.nearest.")
        : null;
}
