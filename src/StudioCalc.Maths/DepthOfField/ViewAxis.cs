using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The axis of a camera that looks at a point on the set.</summary>
/// <remarks>
/// <code>
/// t  = -((x sin a - y cos a) cos e + z sin e)     (43)
/// tn = t - D / 2 cos e - H sin e                  (44)
/// tf = t + D / 2 cos e                            (45)
/// </code>
/// <para>t: depth of a point behind the plane through the aim point, square to the axis. x, y, z: the point from the aim point,
/// to the right, away from the front, and up. a: azimuth of the camera, 0 at the front. e: its elevation. tn, tf: nearest and
/// farthest part of an upright cylinder of diameter D and height H on the point; its depth is D cos e + H sin e. Exact for
/// depth along the axis. Source: derived in docs/models/depth-of-field.md.</para>
/// </remarks>
/// <param name="ElevationDeg">Elevation of the camera, from 0 to 90. [deg]</param>
/// <param name="AzimuthDeg">Azimuth of the camera. [deg]</param>
public sealed record ViewAxis(double ElevationDeg, double AzimuthDeg)
{
    /// <summary>The near and far part of an upright cylinder along the axis, from the plane through the aim point. [mm]</summary>
    /// <param name="component">The cylinder.</param>
    /// <param name="trail">Follows the sum.</param>
    public (double NearMm, double FarMm) DepthOf<TTrail>(UprightCylinder component, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(component);
        var pi = trail.Given("pi", PI, "", "half a turn");
        var E = trail.Given("E", ElevationDeg, "deg", "elevation_deg");
        var A = trail.Given("A", AzimuthDeg, "deg", "azimuth_deg");
        var e = trail.Let("e", E * pi / 180, "rad", "elevation");
        var a = trail.Let("a", A * pi / 180, "rad", "azimuth");
        var x = trail.Given("x", component.RightMm, "mm", "middle of the base, right of the aim point");
        var y = trail.Given("y", component.AwayMm, "mm", "middle of the base, behind the aim point");
        var z = trail.Given("z", component.UpMm, "mm", "middle of the base, above the aim point");
        var D = trail.Given("D", component.DiameterMm, "mm", "diameter_mm");
        var H = trail.Given("H", component.HeightMm, "mm", "height_mm");
        var t = trail.Let("t", 0 - ((x * Sin(a) - y * Cos(a)) * Cos(e) + z * Sin(e)), "mm", "depth of field (43)");
        return (
            trail.Let("tn", t - D / 2 * Cos(e) - H * Sin(e), "mm", "depth of field (44)"),
            trail.Let("tf", t + D / 2 * Cos(e), "mm", "depth of field (45)"));
    }
}

/// <summary>An upright cylinder.</summary>
/// <param name="RightMm">Middle of its base from the aim point, to the right seen from the front. [mm]</param>
/// <param name="AwayMm">Middle of its base from the aim point, away from the front. [mm]</param>
/// <param name="UpMm">Middle of its base from the aim point, up. [mm]</param>
/// <param name="DiameterMm">Diameter D, not negative. [mm]</param>
/// <param name="HeightMm">Height H, not negative. [mm]</param>
public sealed record UprightCylinder(double RightMm, double AwayMm, double UpMm, double DiameterMm, double HeightMm);
