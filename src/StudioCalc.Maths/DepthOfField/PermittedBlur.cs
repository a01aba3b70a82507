using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Blur on the sensor that passes as sharp, by the use of the picture.</summary>
/// <remarks>
/// <code>
/// c = sqrt(W² + H²) / k                                  (19)
/// c = V / 250 / (r g)       g: enlargement               (20)
/// g = max(w / W, h / H)                                  (21)
/// c = j W / n                                            (22)
/// </code>
/// <para>W, H: width and height of the sensor. k: a convention, from 1000 to 1730. V: viewing distance in mm. r: line pairs a
/// millimetre that the viewer resolves at 250 mm. w, h: the print, which crops the picture to its proportions. j: pixels;
/// n: pixels along W. Sources: Camera Lens News 1 of a lens maker for diagonal over 1000 and 1500 (second-hand); (20) from
/// print tables, such as 0.2 mm over 7; (22) common practice, no source.</para>
/// </remarks>
public static class PermittedBlur
{
    /// <summary>By a share of the diagonal. (19) [mm]</summary>
    /// <param name="widthMm">Width of the sensor W, above 0. [mm]</param>
    /// <param name="heightMm">Height of the sensor H, above 0. [mm]</param>
    /// <param name="divisor">The divisor k, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double ByDiagonalMm<TTrail>(double widthMm, double heightMm, double divisor, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var W = trail.Given("W", Guard.Positive(widthMm), "mm", "width of the sensor");
        var H = trail.Given("H", Guard.Positive(heightMm), "mm", "height of the sensor");
        var k = trail.Given("k", Guard.Positive(divisor), "", "named criterion");
        return trail.Let("c", Sqrt(W * W + H * H) / k, "mm", "depth of field (19)");
    }

    /// <summary>By print and viewing distance. (20), (21) [mm]</summary>
    /// <param name="widthMm">Width of the sensor W, above 0. [mm]</param>
    /// <param name="heightMm">Height of the sensor H, above 0. [mm]</param>
    /// <param name="print">How the picture is looked at.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double ByPrintMm<TTrail>(double widthMm, double heightMm, PrintViewing print, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(print);
        var W = trail.Given("W", Guard.Positive(widthMm), "mm", "width of the sensor");
        var H = trail.Given("H", Guard.Positive(heightMm), "mm", "height of the sensor");
        var w = trail.Given("w", Guard.Positive(print.WidthMm), "mm", "width of the print");
        var h = trail.Given("h", Guard.Positive(print.HeightMm), "mm", "height of the print");
        var V = trail.Given("V", Guard.Positive(print.ViewingDistanceMm), "mm", "viewing_distance_mm");
        var r = trail.Given("r", Guard.Positive(print.ResolvedPerMm), "1/mm", "resolved_per_mm");
        var g = trail.Let("g", Max(w / W, h / H), "", "depth of field (21)");
        return trail.Let("c", V / 250 / (r * g), "mm", "depth of field (20)");
    }

    /// <summary>By pixels. (22) [mm]</summary>
    /// <param name="longSideMm">Longer side of the sensor W, above 0. [mm]</param>
    /// <param name="longSidePixels">Pixels along it n, above 0.</param>
    /// <param name="pixels">Pixels j, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double ByPixelsMm<TTrail>(double longSideMm, double longSidePixels, double pixels, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var W = trail.Given("W", Guard.Positive(longSideMm), "mm", "longer side of the sensor");
        var n = trail.Given("n", Guard.Positive(longSidePixels), "", "long_side_pixels");
        var j = trail.Given("j", Guard.Positive(pixels), "", "pixels");
        return trail.Let("c", j * W / n, "mm", "depth of field (22)");
    }
}

/// <summary>How a picture will be looked at.</summary>
/// <param name="WidthMm">Width of the print. [mm]</param>
/// <param name="HeightMm">Height of the print. [mm]</param>
/// <param name="ViewingDistanceMm">Distance from which it is looked at. [mm]</param>
/// <param name="ResolvedPerMm">Line pairs that the viewer resolves at 250 mm. [1/mm]</param>
public sealed record PrintViewing(double WidthMm, double HeightMm, double ViewingDistanceMm, double ResolvedPerMm);
