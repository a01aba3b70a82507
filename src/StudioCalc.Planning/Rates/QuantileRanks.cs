using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>Ranks of sorted values between which a quantile lies.</summary>
/// <remarks>
/// <code>
/// l = quantile of Bin(n, P) at (1 - C) / 2     u = that at (1 + C) / 2, plus 1     (64)
/// coverage = P(l &lt;= Bin(n, P) &lt;= u - 1)                                            (65)
/// </code>
/// <para>Free of any distribution. Ranks count from 1. Source: David and Nagaraja, Order Statistics (second-hand).</para>
/// </remarks>
/// <param name="Lower">Rank l of the lower end.</param>
/// <param name="Upper">Rank u of the upper end.</param>
/// <param name="Coverage">The confidence that is truly had.</param>
public sealed record QuantileRanks(int Lower, int Upper, double Coverage)
{
    /// <summary>The ranks; null where there are too few values. (64)</summary>
    /// <param name="count">Number of values n, 1 or more.</param>
    /// <param name="quantile">The quantile P, above 0 and below 1.</param>
    /// <param name="confidence">Wanted confidence C, above 0 and below 1.</param>
    public static QuantileRanks? Of(int count, double quantile, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var lower = Binomial.Quantile(count, quantile, (1 - confidence) / 2);
        var upper = Binomial.Quantile(count, quantile, (1 + confidence) / 2) + 1;
        return lower < 1 || upper > count
            ? null
            : new(lower, upper, Binomial.Split(count, quantile, lower).AtLeast - Binomial.Split(count, quantile, upper).AtLeast);
    }

    /// <summary>The fewest values whose largest lies above a quantile with a confidence: least n with 1 - P^n >= C (Wilks 1941).</summary>
    /// <param name="quantile">The quantile P, above 0 and below 1.</param>
    /// <param name="confidence">Wanted confidence C, above 0 and below 1.</param>
    public static int FewestForMaximum(double quantile, double confidence) =>
        (int)Math.Ceiling(Math.Log(1 - Binomial.Share(confidence)) / Math.Log(Guard.Positive(quantile)) - 1e-9);

    /// <summary>The quantile of sorted values: the least that a share of them does not pass.</summary>
    /// <param name="sorted">Values from low to high.</param>
    /// <param name="quantile">The quantile, above 0 and not above 1.</param>
    public static long Value(ReadOnlySpan<long> sorted, double quantile) =>
        sorted[Math.Clamp((int)Math.Ceiling(quantile * sorted.Length - 1e-9) - 1, 0, sorted.Length - 1)];
}
