using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Blur of a point before or behind the focused plane, by defocus.</summary>
/// <remarks>
/// <code>
/// b = m f / N * |d| / (x + d)      d behind the plane, negative in front   (17)
/// B = m f / N                      a point at infinity                    (18)
/// </code>
/// <para>x: focused plane from the entrance pupil. Exact for any lens free of aberrations; it does not depend on the
/// permitted blur. A point in front blurs faster than one as far behind. Source: similar triangles through the entrance pupil,
/// derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public static class PointBlur
{
    /// <summary>Diameter of the blur disc on the sensor. (17) [mm]</summary>
    /// <param name="lens">The lens, not focused at infinity.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="offsetMm">Distance d behind the focused plane, above -x. [mm]</param>
    public static double DiameterMm(LensFocus lens, double fNumber, double offsetMm)
    {
        ArgumentNullException.ThrowIfNull(lens);
        var distance = Guard.Positive(Guard.Positive(lens.FromEntrancePupilMm) + offsetMm);
        return AtInfinityMm(lens, fNumber) * Abs(offsetMm) / distance;
    }

    /// <summary>Diameter of the blur disc of a point at infinity; 0 with focus there. (18) [mm]</summary>
    /// <param name="lens">The lens.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    public static double AtInfinityMm(LensFocus lens, double fNumber)
    {
        ArgumentNullException.ThrowIfNull(lens);
        return lens.Magnification * lens.FocalLengthMm / Guard.Positive(fNumber);
    }
}
