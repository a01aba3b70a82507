using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light lost in filters, in stops.</summary>
/// <remarks>
/// <code>
/// n = D / log10(2)      D: optical density                        (14)
/// n = log2(X)           X: filter factor                          (15)
/// </code>
/// <para>Densities add, stops add and factors multiply, so a stack is built up filter by filter. ND2 is a factor, one
/// stop; ND 2.0 is a density, 6.64 stops. Source: definitions of optical density and filter factor, as in Wikipedia,
/// "Neutral-density filter" and "Filter factor".</para>
/// </remarks>
public static class Filters
{
    /// <summary>Adds a filter told by its density to a loss. (14) [stops]</summary>
    /// <param name="lossStops">Loss so far in stops.</param>
    /// <param name="opticalDensity">Optical density D.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double AddDensity<TTrail>(double lossStops, double opticalDensity, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var n = Guard.Finite(lossStops);
        var D = trail.Given("D", Guard.Finite(opticalDensity), "", "optical_density");
        return trail.Let("n", n + D / Log10(2), "stops", "exposure (14)");
    }

    /// <summary>Adds a filter told by its factor to a loss. (15) [stops]</summary>
    /// <param name="lossStops">Loss so far in stops.</param>
    /// <param name="factor">Filter factor X, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double AddFactor<TTrail>(double lossStops, double factor, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var n = Guard.Finite(lossStops);
        var X = trail.Given("X", Guard.Positive(factor), "", "factor");
        return trail.Let("n", n + Log2(X), "stops", "exposure (15)");
    }

    /// <summary>Adds a filter told in stops to a loss. [stops]</summary>
    /// <param name="lossStops">Loss so far in stops.</param>
    /// <param name="filterStops">Loss of the filter in stops.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double AddStops<TTrail>(double lossStops, double filterStops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var n = Guard.Finite(lossStops);
        var added = trail.Given("added", Guard.Finite(filterStops), "stops", "loss_stops");
        return trail.Let("n", n + added, "stops", "stops add");
    }
}
