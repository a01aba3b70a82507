using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Two circles that overlap.</summary>
/// <remarks>
/// <code>
/// x = (r² + t² - A²) / (2 t)     c = sqrt(r² - x²)                         (23)
/// V = (r² acos(x / r) + A² asin(c / A) - t c) / (pi r²)                    (24)
/// </code>
/// <para>t: distance of their middles. r, A: radius of the circle itself and of the other one. x, c: place and half length of the chord in
/// which they meet; beyond the other one's middle, x above t, the arc is pi less. Source: standard geometry.</para>
/// </remarks>
public static class Circles
{
    /// <summary>The share V of a circle that lies within another one, from 0 to 1. (24)</summary>
    /// <param name="apart">Distance t of their middles, not negative.</param>
    /// <param name="other">Radius A of the other one, positive.</param>
    /// <param name="own">Radius r of the circle itself, positive.</param>
    public static double OverlapShare(double apart, double other, double own)
    {
        var none = default(NoTrail);
        return OverlapShare(apart, other, own, ref none);
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="apart">Distance t of their middles, not negative; the trail holds it already.</param>
    /// <param name="other">Radius A of the other one, positive; the trail holds it already.</param>
    /// <param name="own">Radius r of the circle itself, positive; the trail holds it already.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double OverlapShare<TTrail>(double apart, double other, double own, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var (t, A, r) = (Guard.NotNegative(apart), Guard.Positive(other), Guard.Positive(own));
        if (t >= A + r)
        {
            return trail.Given("V", 0, "", "plate view (24): the circles lie apart", answerField);
        }

        if (t <= Abs(A - r))
        {
            return trail.Given("V", A >= r ? 1 : A * A / (r * r), "", "plate view (24): one circle lies within the other", answerField);
        }

        var pi = trail.Given("pi", PI, "", "half a turn");
        var x = trail.Let("x", Max(-r, Min(r, ((t - A) * (t + A) + r * r) / (2 * t))), "mm", "plate view (23)");
        var c = trail.Let("c", Sqrt(r * r - x * x), "mm", "plate view (23)");
        return t >= x
            ? trail.Let(
                "V", Max(0, Min(1, (r * r * Acos(x / r) + A * A * Asin(Min(1, c / A)) - t * c) / (pi * r * r))), "", "plate view (24)", answerField)
            : trail.Let(
                "V", Max(0, Min(1, (r * r * Acos(x / r) + A * A * (pi - Asin(Min(1, c / A))) - t * c) / (pi * r * r))), "", "plate view (24)", answerField);
    }
}
