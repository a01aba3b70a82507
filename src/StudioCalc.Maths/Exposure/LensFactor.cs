using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The share of a luminance that a lens turns into exposure at the sensor.</summary>
/// <remarks>
/// <code>
/// q = pi / 4 * T * V * cos(a)^4                                   (23)
/// </code>
/// <para>T: transmittance of the glass. V: vignetting, the share that the barrel does not cut off. a: angle off the axis.
/// T 0.9, V 0.98 and 10 degrees give 0.6516, which ISO 12232 rounds to 0.65. Source: ISO 12232:2006 as implemented in
/// the test suite of the open library colour-hdri (the standard's text not seen).</para>
/// </remarks>
public static class LensFactor
{
    /// <summary>The rounded value of ISO 12232.</summary>
    public const double Standard = 0.65;

    /// <summary>The lens factor q. (23)</summary>
    /// <param name="transmittance">Transmittance T, above 0.</param>
    /// <param name="vignetting">Vignetting V, above 0.</param>
    /// <param name="angleDeg">Angle off the axis a, from 0 to below 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double FromTransmission<TTrail>(double transmittance, double vignetting, double angleDeg, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var pi = trail.Given("pi", PI, "", "pi");
        var Tg = trail.Given("Tg", Guard.Positive(transmittance), "", "lens_transmission.transmittance");
        var V = trail.Given("V", Guard.Positive(vignetting), "", "lens_transmission.vignetting");
        var a = trail.Given("a", Guard.NotNegative(angleDeg) * PI / 180, "rad", "lens_transmission.angle_deg, 180 degrees are pi");
        return trail.Let("q", pi / 4 * Tg * V * Pow(Cos(a), 4), "", "exposure (23)");
    }
}
