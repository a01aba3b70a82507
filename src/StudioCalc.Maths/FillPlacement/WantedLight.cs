using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The light that a source is to give at a receiver.</summary>
/// <remarks>
/// <code>
/// w = e0 2^c                                                (39)
/// w = H / k                                                 (40)
/// c = log2(w / e0)                                          (41)
/// H = C 2^(V - u) t / 100                                   (42)
/// g = log2(m / e0)                                          (43)
/// </code>
/// <para>w: wanted light of the face by unit luminance. e0: its light where it stands now. c: wanted change. H: wanted exposure, or with
/// light that stays on illuminance. k: strength. V: a reading at ISO 100; C: calibration constant of its meter, in lx s. u: how far the
/// wanted lies under it. t: shutter speed in s where the reading is of light that stays on and the source flashes, otherwise 1. m: the
/// most light on the line up to where the source stands. g: the most that moving closer can gain.</para>
/// </remarks>
public static class WantedLight
{
    /// <summary>Of a change. (39)</summary>
    /// <param name="now">Light e0 now, above 0.</param>
    /// <param name="changeStops">Change c. [stops]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double OfChange<TTrail>(double now, double changeStops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var e0 = trail.Given("e0", Guard.Positive(now), "", "light of the face where it stands now");
        var c = trail.Given("c", Guard.Finite(changeStops), "stops", "change_stops", "wanted_change_stops");
        return trail.Let("w", e0 * Pow(2, c), "", "fill placement (39)");
    }

    /// <summary>Of an exposure or illuminance. (40)</summary>
    /// <param name="amount">Exposure or illuminance H, above 0.</param>
    /// <param name="level">How bright the source is.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double OfAmount<TTrail>(double amount, SourceLevel level, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(level);
        var H = trail.Given("H", Guard.Positive(amount), level.IsFlash ? "lx s" : "lx", "wanted light");
        var k = trail.Given("k", level.Strength, "", "strength of the source");
        return trail.Let("w", H / k, "", "fill placement (40)");
    }

    /// <summary>The change from now. (41) [stops]</summary>
    /// <param name="wanted">Wanted light w, above 0.</param>
    /// <param name="now">Light e0 now, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double ChangeStops<TTrail>(double wanted, double now, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var w = trail.Given("w", Guard.Positive(wanted), "", "wanted light of the face");
        var e0 = trail.Given("e0", Guard.Positive(now), "", "light of the face where it stands now");
        return trail.Let("c", Log2(w / e0), "stops", "fill placement (41)", "wanted_change_stops");
    }

    /// <summary>Exposure or illuminance so far under a reading. (42)</summary>
    /// <param name="valueIso100Stops">The reading V. [stops]</param>
    /// <param name="constant">Calibration constant C, above 0. [lx s]</param>
    /// <param name="underStops">How far under it, u; positive is darker. [stops]</param>
    /// <param name="timeS">Shutter speed t, or 1. [s]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double Amount<TTrail>(
        double valueIso100Stops, double constant, double underStops, double timeS, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var V = trail.Given("V", Guard.Finite(valueIso100Stops), "stops", "the reading at ISO 100");
        var C = trail.Given("C", Guard.Positive(constant), "lx s", "calibration constant");
        var u = trail.Given("u", Guard.Finite(underStops), "stops", "how far under the reading");
        var t = trail.Given("t", Guard.Positive(timeS), "s", "shutter speed, or 1 where the reading does not depend on it");
        return trail.Let("H", C * Pow(2, V - u) * t / 100, "", "fill placement (42)", answerField);
    }

    /// <summary>The most that moving closer can gain; null without light now, and for a point that meets the receiver. (43) [stops]</summary>
    /// <param name="scan">The line.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double? MostGainStops<TTrail>(LineScan scan, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(scan);
        var now = scan.Line.Light(scan.Line.NowMm);
        if (!(now > 0) || scan.Line.MeetsPoint)
        {
            return null;
        }

        var e0 = trail.Given("e0", now, "", "light of the face where it stands now");
        var m = trail.Given("m", Max(now, Pow(2, scan.MostStops(scan.Line.NowMm))), "", "the most up to there");
        return trail.Let("g", Log2(m / e0), "stops", "fill placement (43)", "most_gain_stops");
    }
}
