using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a lens takes in.</summary>
/// <remarks>
/// <code>
/// m = W / F                                     (23)
/// A = 2 atan(s / (2 f (1 + m / p)))             (24)
/// D = L - l                                     (25)
/// r = (x + g) / x                               (26)
/// F = (L - h) / (2 + M + 1 / M)                 (27)
/// e = (k - m) f                                 (28)
/// </code>
/// <para>W: side of the sensor. F in (23): the same side of the field in the focused plane. A: angle of view over a side or
/// diagonal s of the sensor, seen from the entrance pupil with the lens extended for its focus. D: working distance; l: front of
/// the lens to the sensor. r: size in the picture of a thing in the focused plane over that of an equal one g behind it; x:
/// entrance pupil to focused plane. F in (27): focal length that fills the frame from the same sensor distance at magnification
/// M. e: extension behind the lens that takes it from m to k. Exact for any lens free of aberrations and distortion; r depends on
/// neither focal length nor sensor. (28) holds for f at the lens's present focus, not for the marked one. Source: Gaussian
/// optics, docs/models/depth-of-field.md.</para>
/// </remarks>
public static class Framing
{
    /// <summary>Magnification from a side of the sensor and of the field. (23)</summary>
    /// <param name="sensorSideMm">Side of the sensor W, above 0. [mm]</param>
    /// <param name="fieldSideMm">Side of the field F, above 0. [mm]</param>
    /// <param name="trail">Follows the sum; it must hold F already.</param>
    public static double MagnificationOf<TTrail>(double sensorSideMm, double fieldSideMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var W = trail.Given("W", Guard.Positive(sensorSideMm), "mm", "width of the sensor");
        var F = Guard.Positive(fieldSideMm);
        return trail.Let("m", W / F, "", "depth of field (23)");
    }

    /// <summary>Angles of view over width, height and diagonal. (24) [deg]</summary>
    /// <param name="lens">The lens and its focus.</param>
    /// <param name="widthMm">Width of the sensor W, above 0. [mm]</param>
    /// <param name="heightMm">Height of the sensor H, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static ViewAngles AnglesOfView<TTrail>(LensFocus lens, double widthMm, double heightMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var f = trail.Given("f", lens.FocalLengthMm, "mm", "focal length at this focus");
        var m = trail.Given("m", lens.Magnification, "", "magnification");
        var p = trail.Given("p", lens.PupilMagnification, "", "pupil_magnification");
        var W = trail.Given("W", Guard.Positive(widthMm), "mm", "width of the sensor");
        var H = trail.Given("H", Guard.Positive(heightMm), "mm", "height of the sensor");
        var degrees = trail.Given("degrees", 180 / PI, "deg", "degrees to a radian");
        var b = trail.Let("b", 2 * f * (1 + m / p), "mm", "depth of field (24)");
        return new(
            trail.Let("Aw", 2 * Atan(W / b) * degrees, "deg", "depth of field (24)", "horizontal_angle_deg"),
            trail.Let("Ah", 2 * Atan(H / b) * degrees, "deg", "depth of field (24)", "vertical_angle_deg"),
            trail.Let("Ad", 2 * Atan(Sqrt(W * W + H * H) / b) * degrees, "deg", "depth of field (24)", "diagonal_angle_deg"));
    }

    /// <summary>Working distance; negative when the lens would reach beyond the focused plane. (25) [mm]</summary>
    /// <param name="lens">The lens, not focused at infinity.</param>
    /// <param name="lensFrontToSensorMm">Front of the lens to the sensor l, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double WorkingDistanceMm<TTrail>(LensFocus lens, double lensFrontToSensorMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var L = trail.Given("L", Guard.Positive(lens.FromSensorMm), "mm", "focused plane to sensor, (3)", "focus.from_sensor_mm");
        var l = trail.Given("l", Guard.Positive(lensFrontToSensorMm), "mm", "lens_front_to_sensor_mm");
        return trail.Let("D", L - l, "mm", "depth of field (25)", "working_distance_mm");
    }

    /// <summary>Size of a thing in the focused plane over that of an equal one behind it. (26)</summary>
    /// <param name="lens">The lens, not focused at infinity.</param>
    /// <param name="behindMm">Distance g behind the focused plane, not negative. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double NearToFarSize<TTrail>(LensFocus lens, double behindMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var x = trail.Given(
            "x", Guard.Positive(lens.FromEntrancePupilMm), "mm", "entrance pupil to focused plane, (1)", "focus.from_entrance_pupil_mm");
        var g = trail.Given("g", Guard.NotNegative(behindMm), "mm", "far_behind_mm");
        return trail.Let("r", (x + g) / x, "", "depth of field (26)", "near_to_far_size");
    }

    /// <summary>Focal length that fills the frame from the same sensor distance. (27) [mm]</summary>
    /// <param name="lens">The lens, not focused at infinity.</param>
    /// <param name="sensorWidthMm">Width of the sensor W, above 0. [mm]</param>
    /// <param name="fillWidthMm">Width that fills the frame, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double FillingFocalLengthMm<TTrail>(
        LensFocus lens, double sensorWidthMm, double fillWidthMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var L = trail.Given("L", Guard.Positive(lens.FromSensorMm), "mm", "focused plane to sensor, (3)", "focus.from_sensor_mm");
        var h = trail.Given("h", lens.PrincipalSeparationMm, "mm", "principal_separation_mm");
        var W = trail.Given("W", Guard.Positive(sensorWidthMm), "mm", "width of the sensor");
        var w = trail.Given("w", Guard.Positive(fillWidthMm), "mm", "fill_width_mm");
        var M = trail.Let("M", W / w, "", "depth of field (23)");
        return trail.Let("F", (L - h) / (2 + M + 1 / M), "mm", "depth of field (27)", "filling_focal_length_mm");
    }

    /// <summary>Extension behind the lens for a magnification; negative when it is beyond that already. (28) [mm]</summary>
    /// <param name="lens">The lens and its focus.</param>
    /// <param name="wantedMagnification">Wanted magnification k, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double ExtensionMm<TTrail>(LensFocus lens, double wantedMagnification, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var f = trail.Given("f", lens.FocalLengthMm, "mm", "focal length at this focus");
        var m = trail.Given("m", lens.Magnification, "", "magnification");
        var k = trail.Given("k", Guard.Positive(wantedMagnification), "", "wanted_magnification");
        return trail.Let("e", (k - m) * f, "mm", "depth of field (28)", "extension_mm");
    }
}

/// <summary>Angles of view.</summary>
/// <param name="HorizontalDeg">Over the width. [deg]</param>
/// <param name="VerticalDeg">Over the height. [deg]</param>
/// <param name="DiagonalDeg">Over the diagonal. [deg]</param>
public sealed record ViewAngles(double HorizontalDeg, double VerticalDeg, double DiagonalDeg);
