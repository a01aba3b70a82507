using static System.Math;

namespace StudioCalc.Maths;

/// <summary>One or more equal flash units at one place.</summary>
/// <remarks>
/// <code>
/// Q = u * 2^-(x + l) * (1000 G / D)² * 100 / Sg                   (30)
/// J = W * 2^-x                                                    (43)
/// </code>
/// <para>Q: the square of the f-number that the units ask for at ISO 100; a doubling is one stop. u: number of units,
/// x: stops below full power, l: loss by filters and modifiers in stops, G: guide number at full power in m at ISO Sg,
/// D: distance in mm, W: stored energy at full power in J. Holds while the source is small for its distance, and for the
/// reflector that the guide number was stated with. Source: docs/models/exposure.md, Flash.</para>
/// </remarks>
public sealed record FlashUnit
{
    /// <summary>Guide number at full power, in metres times f-number. Not read where it is solved for. [m]</summary>
    public double GuideNumberM { get; init; } = 1;

    /// <summary>The ISO of the guide number.</summary>
    public double GuideNumberIso { get; init; } = 100;

    /// <summary>Distance to the subject. Not read where it is solved for. [mm]</summary>
    public double DistanceMm { get; init; } = 1000;

    /// <summary>Power below full. Not read where it is solved for. [stops]</summary>
    public double PowerBelowFullStops { get; init; }

    /// <summary>Number of units.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Light lost by filters and modifiers. [stops]</summary>
    public double LossStops { get; init; }

    /// <summary>Stored energy at full power; null when it is not known. [J]</summary>
    public double? FullEnergyJ { get; init; }

    /// <summary>The square of the f-number that these units ask for at ISO 100. (30)</summary>
    public double FNumberSquared<TTrail>(ref TTrail trail, string symbol = "Q")
        where TTrail : struct, ITrail
    {
        var G = trail.Given("G", Guard.Positive(GuideNumberM), "m", "guide number");
        var Sg = trail.Given("Sg", Guard.Positive(GuideNumberIso), "", "ISO of the guide number");
        var D = trail.Given("D", Guard.Positive(DistanceMm), "mm", "distance");
        var x = trail.Given("x", Guard.Finite(PowerBelowFullStops), "stops", "power below full");
        var l = trail.Given("l", Guard.Finite(LossStops), "stops", "filters on the units");
        var u = trail.Given("u", Guard.Positive(Count), "", "number of units");
        return trail.Let(symbol, u * Pow(2, -(x + l)) * Pow(1000 * G / D, 2) * 100 / Sg, "", "exposure (30)");
    }
}
