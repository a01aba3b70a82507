using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>A plate that is fired by the clock, and a set that is ready when it is: both times normal.</summary>
public sealed record NormalWaitInput
{
    /// <summary>When the set is ready, on average. [s]</summary>
    public required double ReadyS { get; init; }

    /// <summary>Deviation of that. [s]</summary>
    public required double ReadyDeviationS { get; init; }

    /// <summary>The kitchen's lead from fire to set, on average. [s]</summary>
    public required double LeadS { get; init; }

    /// <summary>Deviation of that. [s]</summary>
    public required double LeadDeviationS { get; init; }

    /// <summary>How long the plate may wait. [s]</summary>
    public required double BudgetS { get; init; }
}

/// <summary>What a fire time means for plate and photographer.</summary>
/// <remarks>
/// <code>
/// W ~ N(mu, sd),  mu = R - fire - lead,  sd = sqrt(sR² + sL²)                       (69)
/// Pb = 1 - Phi((B - mu) / sd)                 chance that the plate waits too long   (70)
/// wait = mu Phi(mu / sd) + sd phi(mu / sd)    idle = wait - mu                       (71)
/// fire = R - lead - B + z(1 - e) sd           earliest with Pb at most e             (72)
/// </code>
/// <para>All in s; Phi and phi: normal distribution and density, z its quantile. Source: the normal loss function, standard texts.</para>
/// </remarks>
/// <param name="BreakChance">Chance Pb that the budget is broken.</param>
/// <param name="WaitS">Expected wait of the plate. [s]</param>
/// <param name="IdleS">Expected idle time of the photographer. [s]</param>
public sealed record NormalWait(double BreakChance, double WaitS, double IdleS)
{
    /// <summary>Evaluates a fire time.</summary>
    /// <param name="input">Set, kitchen and plate.</param>
    /// <param name="fireS">When the plate is fired. [s]</param>
    /// <param name="trail">Follows the sum.</param>
    public static NormalWait Evaluate<TTrail>(NormalWaitInput input, double fireS, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("fire by the clock");
        var R = trail.Given("R", Guard.Finite(input.ReadyS), "s", "set is ready, mean");
        var sR = trail.Given("sR", Guard.NotNegative(input.ReadyDeviationS), "s", "its deviation");
        var lead = trail.Given("lead", Guard.NotNegative(input.LeadS), "s", "kitchen's lead, mean");
        var sL = trail.Given("sL", Guard.NotNegative(input.LeadDeviationS), "s", "its deviation");
        var B = trail.Given("B", Guard.NotNegative(input.BudgetS), "s", "budget");
        var fire = trail.Given("fire", Guard.Finite(fireS), "s", "fire time");
        var mu = trail.Let("mu", R - fire - lead, "s", "shoot plan (69)");
        var sd = trail.Let("sd", Sqrt(sR * sR + sL * sL), "s", "shoot plan (69)");
        if (sd == 0)
        {
            return new(mu > B ? 1 : 0, Max(mu, 0), Max(-mu, 0));
        }

        var x = trail.Let("x", (B - mu) / sd, "", "budget in deviations");
        var Pb = trail.Given("Pb", Normal.Below(-x), "", "shoot plan (70), normal distribution beyond x", "break_chance");
        var y = trail.Let("y", mu / sd, "", "mean wait in deviations");
        var Py = trail.Given("Py", Normal.Below(y), "", "normal distribution below y");
        var wait = trail.Let("wait", mu * Py + sd * Exp(-y * y / 2) * 0.3989422804014327, "s", "shoot plan (71)", "wait_s");
        return new(Pb, wait, trail.Let("idle", wait - mu, "s", "shoot plan (71)", "idle_s"));
    }

    /// <summary>The earliest fire time with which the budget is broken with a chance of at most <paramref name="risk"/>. [s] (72)</summary>
    /// <param name="input">Set, kitchen and plate.</param>
    /// <param name="risk">The chance e, above 0 and below 1.</param>
    public static double EarliestFireS(NormalWaitInput input, double risk)
    {
        ArgumentNullException.ThrowIfNull(input);
        var sd = Sqrt(input.ReadyDeviationS * input.ReadyDeviationS + input.LeadDeviationS * input.LeadDeviationS);
        return input.ReadyS - input.LeadS - input.BudgetS + FireLead.Deviations(1 - risk) * sd;
    }

    internal static double Density(double x) => Exp(-x * x / 2) * 0.3989422804014327;
}
