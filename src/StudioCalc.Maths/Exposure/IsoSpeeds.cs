namespace StudioCalc.Maths;

/// <summary>ISO speeds in their logarithmic form.</summary>
/// <remarks>
/// <code>
/// S = 10^((D - 1) / 10)          D: logarithmic speed in degrees      (1)
/// </code>
/// <para>Source: ISO 6, ISO 2240 and ISO 5800, as quoted in Wikipedia, "Film speed" (the standards' own text not seen).
/// It differs from the binary marks of cameras by up to 0.04 stop.</para>
/// </remarks>
public static class IsoSpeeds
{
    /// <summary>The arithmetic speed of a logarithmic one. (1)</summary>
    /// <param name="logarithmicSpeedDeg">Logarithmic speed in degrees, as in ISO 100/21°.</param>
    public static double FromLogarithmic(double logarithmicSpeedDeg) => Math.Pow(10, (Guard.Finite(logarithmicSpeedDeg) - 1) / 10);
}
