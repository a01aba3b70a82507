using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The largest crop of given proportions, cut from the middle of the frame.</summary>
/// <remarks>
/// <code>
/// s = min(W / w, H / h)       a = s w       b = s h       kept = a b / (W H)      (29)
/// </code>
/// <para>W, H: width and height of the sensor as it is held. w, h: proportions of the crop as given, so that an upright crop of a
/// lying frame loses most of it. a, b: the part of the sensor that is left. Pixels are counted whole, downwards.</para>
/// </remarks>
public sealed record FrameCrop
{
    // Rounding error of a product that is a whole number of pixels.
    private const double Rounding = 1e-9;

    /// <summary>Width of the sensor that is left, a. [mm]</summary>
    public required double WidthMm { get; init; }

    /// <summary>Height of the sensor that is left, b. [mm]</summary>
    public required double HeightMm { get; init; }

    /// <summary>Share of the frame's area that is left.</summary>
    public required double KeptShare { get; init; }

    /// <summary>Cuts. (29)</summary>
    /// <param name="sensorWidthMm">Width of the sensor W, above 0. [mm]</param>
    /// <param name="sensorHeightMm">Height of the sensor H, above 0. [mm]</param>
    /// <param name="width">Width of the crop w in its proportions, above 0.</param>
    /// <param name="height">Height of the crop h in the same measure, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="field">The answer message of the crop, with a point at its end, for the trail.</param>
    public static FrameCrop Cut<TTrail>(
        double sensorWidthMm, double sensorHeightMm, double width, double height, ref TTrail trail, string field = "")
        where TTrail : struct, ITrail
    {
        var W = trail.Given("W", Guard.Positive(sensorWidthMm), "mm", "width of the sensor");
        var H = trail.Given("H", Guard.Positive(sensorHeightMm), "mm", "height of the sensor");
        var w = trail.Given("w", Guard.Positive(width), "", "width of the crop");
        var h = trail.Given("h", Guard.Positive(height), "", "height of the crop");
        var s = trail.Let("s", Min(W / w, H / h), "mm", "depth of field (29)");
        var a = trail.Let("a", s * w, "mm", "depth of field (29)");
        var b = trail.Let("b", s * h, "mm", "depth of field (29)");
        return new()
        {
            WidthMm = a,
            HeightMm = b,
            KeptShare = trail.Let("kept", Min(1, a * b / (W * H)), "", "depth of field (29)", field + "kept_share"),
        };
    }

    /// <summary>Whole pixels left along a side.</summary>
    /// <param name="sideMm">The part of the sensor that is left, above 0. [mm]</param>
    /// <param name="pixelsPerMm">Pixels of the sensor, above 0. [1/mm]</param>
    public static double PixelsAlong(double sideMm, double pixelsPerMm) =>
        Floor(Guard.Positive(sideMm) * Guard.Positive(pixelsPerMm) + Rounding);
}
