using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light of several sources at a receiver, added up.</summary>
/// <remarks>
/// <code>
/// Q = sum of v of flashes + t sum of v of sources that stay on        (15)
/// x = log2(Q S / (100 N²))     over settings                          (16)
/// </code>
/// <para>v: light as metered, (11). t: shutter speed in s. N: f-number. S: ISO. Light adds, stops and f-numbers do not.</para>
/// </remarks>
/// <param name="FlashLxS">Exposure by the flashes. [lx s]</param>
/// <param name="SteadyLx">Illuminance by the sources that stay on. [lx]</param>
/// <param name="Flash">Flash as metered: the square of the f-number at ISO 100.</param>
/// <param name="Steady">Light that stays on as metered: the square of the f-number at ISO 100 and 1 s.</param>
public readonly record struct LightSum(double FlashLxS, double SteadyLx, double Flash, double Steady)
{
    /// <summary>With a further source.</summary>
    /// <param name="isFlash">Whether it is flash.</param>
    /// <param name="amount">Its exposure or illuminance. [lx s, or lx]</param>
    /// <param name="metered">The same as metered, v.</param>
    public LightSum With(bool isFlash, double amount, double metered) => isFlash
        ? this with { FlashLxS = FlashLxS + amount, Flash = Flash + metered }
        : this with { SteadyLx = SteadyLx + amount, Steady = Steady + metered };

    /// <summary>All light Q at a shutter speed. (15)</summary>
    /// <param name="shutterSpeedS">The shutter speed t. [s]</param>
    public double At(double shutterSpeedS) => Flash + shutterSpeedS * Steady;

    /// <summary>All light over settings; minus infinity without any. (16) [stops]</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double StopsOver<TTrail>(CameraSettings settings, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var f = trail.Given("f", Flash, "", "flashes, the sum of v");
        var c = trail.Given("c", Steady, "", "sources that stay on, the sum of v");
        var t = trail.Given("t", settings.ShutterSpeedS, "s", "shutter speed");
        var N = trail.Given("N", settings.FNumber, "", "aperture");
        var S = trail.Given("S", settings.Iso, "", "ISO");
        var Q = trail.Let("Q", f + t * c, "", "fill placement (15)");
        return trail.Let("x", Log2(Q * S / (100 * N * N)), "stops", "fill placement (16)", answerField);
    }

    /// <summary>The f-number that a meter shows for the flashes at an ISO.</summary>
    public double FlashFNumber(double iso) => Sqrt(Flash * iso / 100);
}
