using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How much of a thing shows over another one in front of it.</summary>
/// <remarks>
/// <code>
/// H = F - g tan e      within 0 and B                              (29)
/// tan e = (F - B) / g    the top begins to show                    (30)
/// tan e = F / g          all shows                                 (31)
/// g = F / tan e          the gap that shows all                    (32)
/// </code>
/// <para>F, B: heights of the one in front and of the one behind. g: gap between the back of the first and the front of the second. e:
/// elevation of the camera, seen from the top edge in front. H: how much of the second is hidden, from the table up. Exact for an upright front
/// behind a level edge, at any distance of the camera. Source: derived in docs/models/plate-view.md.</para>
/// </remarks>
/// <param name="FrontHeightMm">Height of the one in front F. [mm]</param>
/// <param name="BackHeightMm">Height of the one behind B, above 0. [mm]</param>
/// <param name="GapMm">Gap g. [mm]</param>
public sealed record ThingBehind(double FrontHeightMm, double BackHeightMm, double GapMm)
{
    private const double Degrees = 180 / PI;

    /// <summary>Elevation above which the top shows; null where it never does. (30) [deg]</summary>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double? TopShowsDeg<TTrail>(ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var F = trail.Given("F", FrontHeightMm, "mm", "front_height_mm");
        var B = trail.Given("B", BackHeightMm, "mm", "back_height_mm");
        if (F >= B && F > 0 && GapMm == 0)
        {
            return null;
        }

        if (F <= B)
        {
            return trail.Given("Et", 0, "deg", "the one behind is no lower", answerField);
        }

        return Angle(F - B, GapMm, "plate view (30)", "Et", ref trail, answerField);
    }

    /// <summary>Lowest elevation at which all shows; null where it never does. (31) [deg]</summary>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double? WholeShowsDeg<TTrail>(ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (FrontHeightMm == 0)
        {
            return trail.Given("Ew", 0, "deg", "the one in front has no height", answerField);
        }

        return GapMm == 0 ? null : Angle(FrontHeightMm, GapMm, "plate view (31)", "Ew", ref trail, answerField);
    }

    /// <summary>The gap that shows all; null where none does. (32) [mm]</summary>
    /// <param name="elevationDeg">Elevation, from 0 to 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double? WholeShowsGapMm<TTrail>(double elevationDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (FrontHeightMm == 0)
        {
            return trail.Given("gw", 0, "mm", "the one in front has no height", answerField);
        }

        if (!double.IsFinite(FrontHeightMm / Tan(elevationDeg / Degrees)))
        {
            return null;
        }

        var F = trail.Given("F", FrontHeightMm, "mm", "front_height_mm");
        var e = Radians(elevationDeg, ref trail);
        return trail.Let("gw", F / Tan(e), "mm", "plate view (32)", answerField);
    }

    /// <summary>How much of the one behind is hidden H, from the table up. (29) [mm]</summary>
    /// <param name="elevationDeg">Elevation, from 0 to 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double HiddenMm<TTrail>(double elevationDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var F = trail.Given("F", FrontHeightMm, "mm", "front_height_mm");
        var B = trail.Given("B", BackHeightMm, "mm", "back_height_mm");
        var g = trail.Given("g", GapMm, "mm", "gap_mm");
        var e = Radians(elevationDeg, ref trail);
        return trail.Let("H", Max(0, Min(B, F - g * Tan(e))), "mm", "plate view (29)", answerField);
    }

    /// <summary>Share of the height of the one behind that shows.</summary>
    /// <param name="hiddenMm">How much is hidden H. [mm]</param>
    /// <param name="trail">Follows the sum; it must hold H and B already.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double VisibleShare<TTrail>(double hiddenMm, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var (H, B) = (hiddenMm, BackHeightMm);
        return trail.Let("V", 1 - H / B, "", "plate view (29), over the height", answerField);
    }

    private static double Radians<TTrail>(double elevationDeg, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var E = trail.Given("E", elevationDeg, "deg", "elevation from the table");
        var degrees = trail.Given("degrees", Degrees, "deg", "degrees to a radian");
        return trail.Let("e", E / degrees, "rad", "elevation");
    }

    private static double Angle<TTrail>(double over, double along, string source, string symbol, ref TTrail trail, string answerField)
        where TTrail : struct, ITrail
    {
        var o = trail.Given("o", over, "mm", "height to be looked over");
        var g = trail.Given("g", along, "mm", "gap_mm");
        var degrees = trail.Given("degrees", Degrees, "deg", "degrees to a radian");
        return trail.Let(symbol, Atan2(o, g) * degrees, "deg", source, answerField);
    }
}
