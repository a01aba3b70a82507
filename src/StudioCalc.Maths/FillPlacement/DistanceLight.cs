using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light metered at a distance before a source.</summary>
/// <remarks>
/// <code>
/// L = V + log2(C / 100)                                              (20)
/// </code>
/// <para>V: exposure value or flash value at ISO 100. C: calibration constant, in lx s. L: log2 of illuminance in lx, or of exposure in
/// lx s.</para>
/// </remarks>
/// <param name="DistanceMm">Distance from the face, d. [mm]</param>
/// <param name="LightStops">Light L. [stops]</param>
public readonly record struct DistanceLight(double DistanceMm, double LightStops)
{
    /// <summary>Of a reading. (20)</summary>
    /// <param name="distanceMm">Distance from the face, above 0. [mm]</param>
    /// <param name="value">Exposure value or flash value at ISO 100, V. [stops]</param>
    /// <param name="constant">Calibration constant C, above 0. [lx s]</param>
    /// <param name="trail">Follows the sum.</param>
    public static DistanceLight Of<TTrail>(double distanceMm, double value, double constant, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var V = trail.Given("V", Guard.Finite(value), "stops", "the reading at ISO 100");
        var C = trail.Given("C", Guard.Positive(constant), "lx s", "calibration constant");
        return new(Guard.Positive(distanceMm), trail.Let("L", V + Log2(C / 100), "stops", "fill placement (20)"));
    }
}
