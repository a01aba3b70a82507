using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A decay in which equal times lose equal shares: foams, bubbles, browning.</summary>
/// <remarks>
/// <code>
/// t = h log2(1 / s)                                                  (36)
/// </code>
/// <para>h: half-life. s: share that is left. Beer foam falls a little faster late than this. Source: Leike, European Journal of
/// Physics 23:21 (2002), by its abstract.</para>
/// </remarks>
public static class FirstOrder
{
    /// <summary>Until a share is left. (36) [s]</summary>
    /// <param name="halfLifeS">Half-life h, above 0. [s]</param>
    /// <param name="shareLeft">Share s, above 0 and below 1.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double TimeS<TTrail>(double halfLifeS, double shareLeft, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var h = trail.Given("h", Guard.Positive(halfLifeS), "s", "half-life");
        var s = trail.Given("s", Guard.Positive(shareLeft), "", "share that is left when the look ends");
        return trail.Let("t", h * Log2(1 / s), "s", "freshness (36)", answerField);
    }

    /// <summary>The half-life of a decay that leaves a share after a time. (36) [s]</summary>
    /// <param name="seconds">The time. [s]</param>
    /// <param name="shareLeft">Share s, above 0 and below 1.</param>
    public static double HalfLifeS(double seconds, double shareLeft) => Guard.Positive(seconds) / Log2(1 / Guard.Positive(shareLeft));
}
