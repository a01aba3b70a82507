using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Window light at one place against another, and against the open sky.</summary>
/// <remarks>
/// <code>
/// share  = e / Eh                                              (58)
/// change = log2(e / e1)                                        (59)
/// rule   = 2 log2(D1 / D)          inverse square              (60)
/// Ev     = k e                     k by a reading, (9)         (61)
/// </code>
/// <para>e, e1: light of the window at a place and at the first, by unit luminance of the sky, (56). Eh: the open sky on a horizontal
/// surface, (53). D, D1: distance to the plane of the glass. Ev: illuminance. Source: definitions.</para>
/// </remarks>
public static class WindowShift
{
    /// <summary>Share of the light outdoors. (58)</summary>
    /// <param name="light">Light of the window e.</param>
    /// <param name="openHorizontal">Light of the open sky Eh, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double Share<TTrail>(double light, double openHorizontal, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var e = trail.Given("e", light, "sr", "fill placement (56), summed by Gauss points");
        var Eh = trail.Given("Eh", Guard.Positive(openHorizontal), "sr", "fill placement (53)");
        return trail.Let("share", e / Eh, "", "fill placement (58)", answerField);
    }

    /// <summary>Change of light against the first place. (59) [stops]</summary>
    /// <param name="light">Light of the window e, above 0.</param>
    /// <param name="first">Light of the window at the first place e1, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double ChangeStops<TTrail>(double light, double first, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var e = trail.Given("e", Guard.Positive(light), "sr", "fill placement (56), summed by Gauss points");
        var e1 = trail.Given("e1", Guard.Positive(first), "sr", "fill placement (56) at the first place");
        return trail.Let("change", Log2(e / e1), "stops", "fill placement (59)", answerField);
    }

    /// <summary>What inverse square would say. (60) [stops]</summary>
    /// <param name="distanceMm">Distance to the glass D, above 0. [mm]</param>
    /// <param name="firstMm">That of the first place D1, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double InverseSquareStops<TTrail>(double distanceMm, double firstMm, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var D = trail.Given("D", Guard.Positive(distanceMm), "mm", "distance_mm");
        var D1 = trail.Given("D1", Guard.Positive(firstMm), "mm", "distance_mm of the first place");
        return trail.Let("rule", 2 * Log2(D1 / D), "stops", "fill placement (60)", answerField);
    }

    /// <summary>Illuminance at a place. (61) [lx]</summary>
    /// <param name="light">Light of the window e.</param>
    /// <param name="strength">Luminance k by a reading, (9). [cd/m²]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double IlluminanceLx<TTrail>(double light, double strength, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var e = trail.Given("e", light, "sr", "fill placement (56), summed by Gauss points");
        var k = trail.Given("k", strength, "cd/m²", "fill placement (9)");
        return trail.Let("Ev", k * e, "lx", "fill placement (61)", answerField);
    }
}
