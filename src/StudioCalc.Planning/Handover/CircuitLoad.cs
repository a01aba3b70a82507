using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>What hangs on one circuit.</summary>
public sealed record CircuitInput
{
    /// <summary>Real power of all loads together. [W]</summary>
    public required double PowerW { get; init; }

    /// <summary>Mains voltage, above 0. [V]</summary>
    public required double VoltageV { get; init; }

    /// <summary>Rating of the breaker, above 0. [A]</summary>
    public required double BreakerA { get; init; }

    /// <summary>Share of the rating that may be used, above 0 and not above 1: 0.8 for loads of three hours and more where that rule
    /// is used.</summary>
    public double UsableShare { get; init; } = 0.8;

    /// <summary>Power factor, above 0 and not above 1: 1 for heat and lamps, less for chargers without correction.</summary>
    public double PowerFactor { get; init; } = 1;
}

/// <summary>Current of a circuit, and what is left.</summary>
/// <remarks>
/// <code>
/// I = W / (V pf)                                                   (95)
/// A = y b                          usable current                  (96)
/// left = A - I      spare = left V pf                              (97)
/// </code>
/// <para>One phase. b: rating of the breaker in A. y: 0.8 for continuous loads (125 % of a load of three hours or more, as in the US National
/// Electrical Code, from memory); elsewhere other rules hold. Flash heads draw far more for the moment of recycling than on average,
/// and motors when they start: take the plate's rating. An electrician has the last word.</para>
/// </remarks>
/// <param name="CurrentA">Current I. [A]</param>
/// <param name="UsableA">Usable current A. [A]</param>
/// <param name="HeadroomA">What is left; negative where the circuit is overloaded. [A]</param>
/// <param name="HeadroomW">The same as real power. [W]</param>
public sealed record CircuitLoad(double CurrentA, double UsableA, double HeadroomA, double HeadroomW)
{
    /// <summary>Evaluates a circuit.</summary>
    /// <param name="input">Loads and breaker.</param>
    /// <param name="trail">Follows the sum.</param>
    public static CircuitLoad Evaluate<TTrail>(CircuitInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("circuit");
        var W = trail.Given("W", Guard.NotNegative(input.PowerW), "W", "power of the loads");
        var V = trail.Given("V", Guard.Positive(input.VoltageV), "V", "mains voltage");
        var pf = trail.Given("pf", Guard.Positive(Binomial.Share(input.PowerFactor)), "", "power factor");
        var b = trail.Given("b", Guard.Positive(input.BreakerA), "A", "rating of the breaker");
        var y = trail.Given("y", Guard.Positive(Binomial.Share(input.UsableShare)), "", "usable share of it");
        var I = trail.Let("I", W / (V * pf), "A", "shoot plan (95)", "current_a");
        var A = trail.Let("A", y * b, "A", "shoot plan (96)", "usable_a");
        var left = trail.Let("left", A - I, "A", "shoot plan (97)", "headroom_a");
        return new(I, A, left, trail.Let("spare", left * V * pf, "W", "shoot plan (97)", "headroom_w"));
    }
}
