using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a flash's duration means for a picture.</summary>
/// <remarks>
/// <code>
/// z = log2(1 / (1 - 10^(-t / T)))   light cut off by the shutter   (44)
/// </code>
/// <para>T: t0.1, the time above a tenth of the peak. t: time from the trigger until the shutter closes. (44) holds for a
/// pulse that dies away exponentially: t0.1 is then where a tenth of the light is still to come. A pulse that is cut off
/// electronically ends sooner and loses less. t0.5 is never turned into t0.1: their ratio is 3.3 for an exponential pulse
/// and near 1 for a cut-off one. Source: derived in docs/models/exposure.md; the two durations are defined in ISO 2827
/// (second-hand).</para>
/// </remarks>
public static class FlashDuration
{
    /// <summary>Light lost when the shutter closes before an exponential pulse is over. (44) [stops]</summary>
    /// <param name="shutterSpeedS">Exposure time t. [s]</param>
    /// <param name="t01S">Flash duration t0.1. [s]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double CutOffStops<TTrail>(double shutterSpeedS, double t01S, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var t = trail.Given("t", Guard.Positive(shutterSpeedS), "s", "shutter speed");
        var T = trail.Given("T", Guard.Positive(t01S), "s", "flash duration t0.1");
        return trail.Let("z", Log2(1 / (1 - Pow(10, -t / T))), "stops", "exposure (44)", "flash_cut_off_stops");
    }
}
