using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>How long before the set is ready the photographer should call for a plate.</summary>
/// <remarks>
/// <code>
/// F = ci / (ci + cw)                                               (73)
/// sigma = ln(P90 / P50) / 1.2815515655446004                       (74)
/// lead = P50 exp(z(F) sigma)                                       (75)
/// </code>
/// <para>ci, cw: cost of a minute of an idle photographer, and of a waiting plate. P50, P90: the kitchen's lead, log-normal, in s. z: quantile
/// of the normal distribution. It holds where waiting costs the same every minute; where a plate has a budget use
/// <see cref="NormalWait.EarliestFireS"/>, too, or the simulated day. Source: the newsvendor problem, standard texts.</para>
/// </remarks>
public static class FireLead
{
    /// <summary>The lead. [s] (75)</summary>
    /// <param name="leadP50S">The kitchen's lead that half stay under, above 0. [s]</param>
    /// <param name="leadP90S">The lead that nine in ten stay under. [s]</param>
    /// <param name="idleCost">Cost of an idle minute, above 0, in any unit.</param>
    /// <param name="waitCost">Cost of a minute that a plate waits, above 0, in the same unit.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double LeadS<TTrail>(double leadP50S, double leadP90S, double idleCost, double waitCost, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(leadP90S, leadP50S);
        trail.Section("lead");
        var ci = trail.Given("ci", Guard.Positive(idleCost), "", "cost of an idle minute");
        var cw = trail.Given("cw", Guard.Positive(waitCost), "", "cost of a minute's wait");
        var P50 = trail.Given("P50", Guard.Positive(leadP50S), "s", "kitchen's lead, P50");
        var P90 = trail.Given("P90", Guard.Positive(leadP90S), "s", "kitchen's lead, P90");
        var F = trail.Let("F", ci / (ci + cw), "", "shoot plan (73)");
        var sigma = trail.Let("sigma", Log(P90 / P50) / 1.2815515655446004, "", "shoot plan (74)");
        var z = trail.Given("z", Deviations(F), "", "normal distribution, quantile F");
        return trail.Let("lead", P50 * Exp(z * sigma), "s", "shoot plan (75)", "lead_s");
    }

    // Quantile of the standard normal distribution.
    internal static double Deviations(double share) =>
        share == 0.5 ? 0 : share > 0.5 ? Normal.HalfWidth(2 * share - 1) : -Normal.HalfWidth(1 - 2 * share);
}
