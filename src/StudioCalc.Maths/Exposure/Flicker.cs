using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A shutter speed mark under light that flickers.</summary>
/// <param name="TimeS">The exact time behind the mark. [s]</param>
/// <param name="Banding">Brightest less darkest band over their sum, from 0 to 1.</param>
/// <param name="Flickers">Flickers that it spans, to the nearest whole one but at least one.</param>
/// <param name="BandFreeTimeS">The time of just so many flickers. [s]</param>
public sealed record FlickerMark(double TimeS, double Banding, int Flickers, double BandFreeTimeS);

/// <summary>Bands in a picture by light that flickers with the mains, while the shutter runs over the sensor.</summary>
/// <remarks>
/// <code>
/// period = 1 / (2 f)                                              (52)
/// y = 2 f t                       flickers in the exposure         (53)
/// b = |sin(pi y) / (pi y)|        banding                          (54)
/// </code>
/// <para>Light that follows the mains' power, 1 + cos(2 pi 2f s) at the time s, gathered over the time t from a start that
/// runs over the frame, swings between t (1 - b) and t (1 + b). b is brightest less darkest over their sum. f: mains
/// frequency in Hz, t: shutter speed in s. b is 0 at whole multiples of the period.</para>
/// <para>A lamp that never goes dark shows weaker bands than this, one with short peaks (some gas-discharge lamps, cheap
/// light-emitting diodes) stronger ones at other harmonics, and one that is driven at another frequency follows that: the
/// figure is a bound for the raised cosine only. Source: derived in docs/models/exposure.md.</para>
/// </remarks>
public static class Flicker
{
    /// <summary>Time of one flicker. (52) [s]</summary>
    public static double PeriodS<TTrail>(double mainsFrequencyHz, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var f = trail.Given("f", Guard.Positive(mainsFrequencyHz), "Hz", "mains_frequency_hz");
        return trail.Let("period", 1 / (2 * f), "s", "exposure (52)", "flicker_period_s");
    }

    /// <summary>Banding of a shutter speed. (53) (54)</summary>
    /// <param name="mainsFrequencyHz">Frequency of the mains. [Hz]</param>
    /// <param name="timeS">Exposure time. [s]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Banding<TTrail>(double mainsFrequencyHz, double timeS, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var f = trail.Given("f", Guard.Positive(mainsFrequencyHz), "Hz", "mains_frequency_hz");
        var t = trail.Given("t", Guard.Positive(timeS), "s", "shutter speed");
        var pi = trail.Given("pi", PI, "", "half the circumference of the unit circle");
        var y = trail.Let("y", 2 * f * t, "", "exposure (53)");
        return trail.Let("b", Abs(Sin(pi * y) / (pi * y)), "", "exposure (54)", "banding");
    }

    /// <summary>The marks whose bands stay within <paramref name="tolerated"/>, from fast to slow.</summary>
    /// <param name="mainsFrequencyHz">Frequency of the mains. [Hz]</param>
    /// <param name="tolerated">The strongest banding that is tolerated, from 0 to 1.</param>
    /// <param name="scale">The scale of the marks.</param>
    /// <param name="fastestS">The fastest shutter speed. [s]</param>
    /// <param name="slowestS">The slowest shutter speed. [s]</param>
    public static IReadOnlyList<FlickerMark> WithoutBands(
        double mainsFrequencyHz, double tolerated, StopScale scale, double fastestS, double slowestS)
    {
        var none = default(NoTrail);
        return
        [
            .. ShutterMarks.Within(scale, fastestS, slowestS)
                .Select(time => Judge(mainsFrequencyHz, time, ref none))
                .Where(mark => mark.Banding <= tolerated),
        ];
    }

    private static FlickerMark Judge(double mainsFrequencyHz, double timeS, ref NoTrail none)
    {
        var flickers = Max(1, (int)Round(2 * mainsFrequencyHz * timeS));
        return new(timeS, Banding(mainsFrequencyHz, timeS, ref none), flickers, flickers * PeriodS(mainsFrequencyHz, ref none));
    }
}
