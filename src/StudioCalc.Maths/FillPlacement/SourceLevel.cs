using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How bright a source is, and with which meter that is told.</summary>
/// <remarks>
/// <code>
/// k = C 2^V / (100 e)                                       (9)
/// H = k e                                                   (10)
/// v = 100 H / C                                             (11)
/// </code>
/// <para>V: metered light, exposure value or flash value at ISO 100. C: calibration constant, in lx s. e: light of the face by unit
/// luminance at the meter in (9), at the receiver in (10). k: luminance of the rim in cd/m², or with flash its time integral;
/// of a point, intensity. H: illuminance in lx, or exposure in lx s. v: the same as a meter with constant C tells it, 1 at exposure value 0 and ISO 100.
/// Source: the incident-light equation of ISO 2720:1974; see docs/models/exposure.md.</para>
/// </remarks>
/// <param name="IsFlash">Whether it is flash, told in lx s; otherwise it stays on, in lx.</param>
/// <param name="Strength">Luminance or intensity k.</param>
/// <param name="FlatConstant">Constant of the meter with a flat receptor. [lx s]</param>
/// <param name="DomeConstant">Constant of the meter with a dome. [lx s]</param>
public sealed record SourceLevel(bool IsFlash, double Strength, double FlatConstant, double DomeConstant)
{
    /// <summary>Of a luminance of the rim, told with meters of the usual constants.</summary>
    /// <param name="luminanceCdPerM2">Luminance. [cd/m²]</param>
    public static SourceLevel OfLuminance(double luminanceCdPerM2) => new(
        IsFlash: false, Guard.Positive(luminanceCdPerM2), Receptor.Flat.Default(), Receptor.Dome.Default());

    /// <summary>Of a reading. (9)</summary>
    /// <param name="isFlash">Whether the reading is of flash.</param>
    /// <param name="value">Exposure value or flash value at ISO 100, V. [stops]</param>
    /// <param name="constant">Calibration constant C of the meter. [lx s]</param>
    /// <param name="collector">The meter's receptor.</param>
    /// <param name="light">Light e of the face at the meter, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static SourceLevel OfReading<TTrail>(
        bool isFlash, double value, double constant, Collector collector, double light, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var V = trail.Given("V", value, "stops", "the reading at ISO 100");
        var C = trail.Given("C", Guard.Positive(constant), "lx s", "calibration constant");
        var e = trail.Given("e", Guard.Positive(light), "", "light of the face at the meter, by unit luminance");
        var k = trail.Let("k", C * Pow(2, V) / (100 * e), "", "fill placement (9)");
        return collector == Collector.Flat
            ? new(isFlash, k, constant, Receptor.Dome.Default())
            : new(isFlash, k, Receptor.Flat.Default(), constant);
    }

    /// <summary>The same source so many stops brighter.</summary>
    public SourceLevel Brighter(double stops) => this with { Strength = Strength * Pow(2, stops) };

    /// <summary>Illuminance or exposure H at a receiver. (10) [lx, or lx s]</summary>
    /// <param name="light">Light e of the face at the receiver.</param>
    /// <param name="trail">Follows the sum.</param>
    public double At<TTrail>(double light, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var k = trail.Given("k", Strength, "", "strength of the source");
        var e = trail.Given("e", light, "", "light of the face at the receiver, by unit luminance");
        return trail.Let("H", k * e, IsFlash ? "lx s" : "lx", "fill placement (10)");
    }

    /// <summary>What the source's own meter tells of H. (11)</summary>
    /// <param name="amount">Illuminance or exposure H.</param>
    /// <param name="collector">The receptor.</param>
    /// <param name="trail">Follows the sum.</param>
    public double Metered<TTrail>(double amount, Collector collector, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var H = trail.Given("H", amount, IsFlash ? "lx s" : "lx", "light at the receiver");
        var C = trail.Given("C", collector == Collector.Flat ? FlatConstant : DomeConstant, "lx s", "calibration constant");
        return trail.Let("v", 100 * H / C, "", "fill placement (11)");
    }
}
