namespace StudioCalc.Maths;

/// <summary>A line of sight: the points <c>From + Along t</c> with t from 0 on.</summary>
/// <param name="From">Where it starts. [mm]</param>
/// <param name="Along">Its direction, of any length. [mm]</param>
public readonly record struct SightLine(Vector From, Vector Along)
{
    /// <summary>The point at <paramref name="t"/>.</summary>
    public Vector At(double t) => From + Along * t;
}
