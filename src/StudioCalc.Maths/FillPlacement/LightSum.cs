using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light of several sources at a receiver, added up.</summary>
/// <remarks>
/// <code>
/// Q = sum of v of flashes + t sum of v of sources that stay on        (14)
/// x = log2(Q S / (100 N²))     over settings                          (14)
/// </code>
/// <para>v: light as metered, (11). t: shutter speed in s. N: f-number. S: ISO. Light adds, stops and f-numbers do not.</para>
/// </remarks>
/// <param name="Flash">Flash as metered: the square of the f-number at ISO 100.</param>
/// <param name="Steady">Light that stays on as metered: the square of the f-number at ISO 100 and 1 s.</param>
public readonly record struct LightSum(double Flash, double Steady)
{
    /// <summary>With a further source.</summary>
    public LightSum With(bool isFlash, double metered) =>
        isFlash ? this with { Flash = Flash + metered } : this with { Steady = Steady + metered };

    /// <summary>All light Q at a shutter speed. (14)</summary>
    /// <param name="shutterSpeedS">The shutter speed t. [s]</param>
    public double At(double shutterSpeedS) => Flash + shutterSpeedS * Steady;

    /// <summary>All light over settings; minus infinity without any. (14) [stops]</summary>
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
        var Q = trail.Let("Q", f + t * c, "", "fill placement (14)");
        return trail.Let("x", Log2(Q * S / (100 * N * N)), "stops", "fill placement (14)", answerField);
    }

    /// <summary>The f-number that a meter shows for the flashes at an ISO.</summary>
    public double FlashFNumber(double iso) => Sqrt(Flash * iso / 100);
}
