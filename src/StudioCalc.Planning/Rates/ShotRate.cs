using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>Shots an hour by closed forms, and what bounds them.</summary>
/// <remarks>
/// <code>
/// Tc = ps ts + tx + tp            mean time of a shot at the set in s    (59)
/// rate = 3600 / Tc                                                      (60)
/// F = sum of t + (n - 1) max of t                                       (61)
/// top = 3600 / max(t / c)                                               (62)
/// X = 1 / (1 / m1 + 1 / m2 - 1 / (m1 + m2))                             (63)
/// </code>
/// <para>ps: share of shots that need a setup. ts, tx, tp: setup, swap of plates, shooting in s. (60) divides by the mean time: the mean of
/// the rates is larger and wrong (renewal reward theorem). t: a stage's time in s with c alike resources; n: dishes. (61) is exact for
/// identical dishes one after another; (62) is an upper bound that limited waiting does not reach. X: two exponential stages of m1 and m2
/// an hour with no place between them (Hunt 1956, from memory): with equal stages a third of the rate is lost.</para>
/// </remarks>
public static class ShotRate
{
    /// <summary>Long-run shots an hour. (60)</summary>
    /// <param name="setupS">Mean setup ts. [s]</param>
    /// <param name="setupShare">Share of shots that need one, from 0 to 1.</param>
    /// <param name="swapS">Swap of plates tx. [s]</param>
    /// <param name="shootS">Mean shooting time tp, above 0. [s]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double LongRun<TTrail>(double setupS, double setupShare, double swapS, double shootS, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("rate");
        var ts = trail.Given("ts", Guard.NotNegative(setupS), "s", "setup");
        var ps = trail.Given("ps", Binomial.Share(setupShare), "", "share of shots with a setup");
        var tx = trail.Given("tx", Guard.NotNegative(swapS), "s", "swap of plates");
        var tp = trail.Given("tp", Guard.Positive(shootS), "s", "shooting");
        var Tc = trail.Let("Tc", ps * ts + tx + tp, "s", "shoot plan (59)");
        return trail.Let("rate", 3600 / Tc, "", "shoot plan (60)");
    }

    /// <summary>The finish of identical dishes, one after another through every stage. [s] (61)</summary>
    /// <param name="dishes">Dishes n, 1 or more.</param>
    /// <param name="stagesS">Times of the stages. [s]</param>
    public static double IdenticalDishesFinishS(int dishes, IReadOnlyList<double> stagesS)
    {
        ArgumentNullException.ThrowIfNull(stagesS);
        ArgumentOutOfRangeException.ThrowIfLessThan(dishes, 1);
        return stagesS.Sum(t => Guard.NotNegative(t)) + (dishes - 1) * stagesS.Max();
    }

    /// <summary>The most dishes an hour that any order can reach. (62)</summary>
    /// <param name="stages">Mean time of each stage and how many of its resource there are.</param>
    public static double UpperBound(IReadOnlyList<(double MeanS, int Count)> stages)
    {
        ArgumentNullException.ThrowIfNull(stages);
        return 3600 / stages.Max(stage => Guard.Positive(stage.MeanS) / stage.Count);
    }

    /// <summary>Throughput of two exponential stages with no place between them, the first never short of work. (63)</summary>
    /// <param name="first">Rate of the first, in any unit, above 0.</param>
    /// <param name="second">Rate of the second, in the same unit.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double PairWithoutBuffer<TTrail>(double first, double second, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var m1 = trail.Given("m1", Guard.Positive(first), "", "rate of the first stage");
        var m2 = trail.Given("m2", Guard.Positive(second), "", "rate of the second stage");
        return trail.Let("X", 1 / (1 / m1 + 1 / m2 - 1 / (m1 + m2)), "", "shoot plan (63)");
    }
}
