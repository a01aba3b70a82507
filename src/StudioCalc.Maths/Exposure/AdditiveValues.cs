using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The additive system of photographic exposure: settings as sums of stops.</summary>
/// <remarks>
/// <code>
/// Av = log2(N²)      Tv = -log2(t)      Sv = log2(S / 3.125)      (25)
/// Bv = Av + Tv - Sv                                               (25)
/// </code>
/// <para>ISO 100 is Sv 5. Source: Exif, as repeated in public code comments (the standard's text not seen). The constant
/// of the older standard ASA PH2.5-1960 differs by 0.106 stop.</para>
/// </remarks>
public static class AdditiveValues
{
    /// <summary>The arithmetic speed at Sv 0.</summary>
    public const double IsoAtZero = 3.125;

    /// <summary>Av of an f-number. (25) [stops]</summary>
    public static double OfFNumber(double fNumber) => 2 * Log2(Guard.Positive(fNumber));

    /// <summary>Tv of an exposure time. (25) [stops]</summary>
    public static double OfTimeS(double timeS) => 0 - Log2(Guard.Positive(timeS));

    /// <summary>Sv of an arithmetic speed. (25) [stops]</summary>
    public static double OfIso(double iso) => Log2(Guard.Positive(iso) / IsoAtZero);

    /// <summary>The f-number of an Av.</summary>
    public static double FNumber(double apertureValueStops) => Pow(2, Guard.Finite(apertureValueStops) / 2);

    /// <summary>The exposure time of a Tv. [s]</summary>
    public static double TimeS(double timeValueStops) => Pow(2, -Guard.Finite(timeValueStops));

    /// <summary>The arithmetic speed of an Sv.</summary>
    public static double Iso(double speedValueStops) => IsoAtZero * Pow(2, Guard.Finite(speedValueStops));
}
