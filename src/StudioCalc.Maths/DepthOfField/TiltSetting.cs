using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A tilted lens focused on a plane.</summary>
/// <remarks>
/// <code>
/// sin(t) = f / J                                   (72)
/// v = f / (cos(t) - f / u)                         (73)
/// psi = atan(u / J)                                (74)
/// y = (f / v) (u' N c / f²) |J|                    (75)
/// </code>
/// <para>t: tilt of the lens out of parallel with the sensor. J, u: see <see cref="TiltPlane"/>. v: lens to sensor along the axis.
/// psi: plane of focus to sensor; with J from (72) it is the same as tan(psi) = (v / f) sin(t) / ((v / f) cos(t) - 1). y: sharp
/// height on either side of the plane of focus, parallel to the sensor, at distance u' along the axis: 0 at the hinge line. (72) to
/// (74) are exact for a thin lens; (75) is up to some 6 % off away from the axis. Source: H. M. Merklinger, "Focusing the View
/// Camera" (1993), second-hand, and View Camera, July and August 1996; checked by a trace of rays.</para>
/// </remarks>
public sealed record TiltSetting
{
    /// <summary>Tilt t: positive tips the front of the lens down. [deg]</summary>
    public required double TiltDeg { get; init; }

    /// <summary>The plane of focus.</summary>
    public required TiltPlane Plane { get; init; }

    /// <summary>Lens to sensor along the axis v. [mm]</summary>
    public required double LensToSensorMm { get; init; }

    /// <summary>Plane of focus to sensor psi, from above -90 to 90: positive where its top lies farther from the camera. [deg]</summary>
    public required double PlaneToSensorDeg { get; init; }

    /// <summary>Focuses a lens on a plane, or gives null when it forms no image of it. The plane's hinge must lie beyond the focal
    /// length.</summary>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="plane">The plane.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="field">The answer message that holds it, with a point at its end, for the trail.</param>
    public static TiltSetting? Of<TTrail>(double focalLengthMm, TiltPlane plane, ref TTrail trail, string field)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(plane);
        if (Cos(TiltRad(focalLengthMm, plane)) - focalLengthMm * plane.PerCrossing < Clearance)
        {
            return null;
        }

        trail.Section("tilt");
        var f = trail.Given("f", focalLengthMm, "mm", "focal_length_mm");
        var degrees = trail.Given("degrees", 180 / PI, "deg", "degrees to a radian");
        var q = trail.Given("q", plane.PerCrossing, "1/mm", "1 / u");
        if (plane.IsParallel)
        {
            return new()
            {
                TiltDeg = trail.Given("tilt", 0, "deg", "the plane is parallel to the sensor", field + "tilt_deg"),
                Plane = plane,
                LensToSensorMm = trail.Let("v", f / (1 - f * q), "mm", "depth of field (73)", field + "lens_to_sensor_mm"),
                PlaneToSensorDeg = 0,
            };
        }

        var J = trail.Given("J", plane.HingeMm, "mm", "hinge distance", field + "hinge_distance_mm");
        var t = trail.Let("t", Asin(f / J), "rad", "depth of field (72)");
        return new()
        {
            TiltDeg = trail.Let("tilt", t * degrees, "deg", "depth of field (72)", field + "tilt_deg"),
            Plane = plane,
            LensToSensorMm = trail.Let("v", f / (Cos(t) - f * q), "mm", "depth of field (73)", field + "lens_to_sensor_mm"),
            PlaneToSensorDeg = q == 0
                ? trail.Given("psi", 90, "deg", "the plane never crosses the axis", field + "plane_to_sensor_deg")
                : trail.Let("psi", Atan(1 / (q * J)) * degrees, "deg", "depth of field (74)", field + "plane_to_sensor_deg"),
        };
    }

    /// <summary>Half the height of the sharp wedge. (75) [mm]</summary>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="distanceMm">Distance u' along the axis, above 0. [mm]</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="permittedBlurMm">Permitted blur c, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds it, for the trail.</param>
    public double WedgeHalfHeightMm<TTrail>(
        double focalLengthMm, double distanceMm, double fNumber, double permittedBlurMm, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        trail.Section("wedge");
        var f = trail.Given("f", Guard.Positive(focalLengthMm), "mm", "focal_length_mm");
        var v = trail.Given("v", LensToSensorMm, "mm", "depth of field (73)");
        var J = trail.Given("J", Plane.HingeMm, "mm", "hinge distance");
        var N = trail.Given("N", Guard.Positive(fNumber), "", "set f-number");
        var c = trail.Given("c", Guard.Positive(permittedBlurMm), "mm", "permitted blur");
        var u = trail.Given("u", Guard.Positive(distanceMm), "mm", "distance along the axis");
        return trail.Let("y", f / v * (u * N * c / (f * f)) * Abs(J), "mm", "depth of field (75)", answerField);
    }

    internal const double Clearance = 1e-12;

    internal static double TiltRad(double focalLengthMm, TiltPlane plane) => Asin(focalLengthMm / plane.HingeMm);
}
