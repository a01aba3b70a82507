using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>How many of n independent tries succeed.</summary>
/// <remarks>Chances run from the likeliest count outwards by the ratio of neighbours, and are divided by their sum: only the four
/// basic operations are used, so that the same request gives the same bits everywhere. Source: the binomial distribution.</remarks>
public static class Binomial
{
    // Rounding must not turn a confidence that is just met into one that is not.
    private const double Rounding = 1e-12;

    /// <summary>The chance of fewer than <paramref name="successes"/>, and that of as many or more.</summary>
    /// <param name="tries">Number of tries n, not below 0.</param>
    /// <param name="chance">Chance that a try succeeds, from 0 to 1.</param>
    /// <param name="successes">Number of successes.</param>
    public static (double Fewer, double AtLeast) Split(int tries, double chance, int successes)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(tries);
        var p = Share(chance);
        if (successes <= 0)
        {
            return (0, 1);
        }

        if (successes > tries || p == 0)
        {
            return (1, 0);
        }

        if (p == 1)
        {
            return (0, 1);
        }

        var mode = Math.Min(tries, (int)((tries + 1.0) * p));
        var (fewer, atLeast) = (0.0, 0.0);
        var (up, down) = (p / (1 - p), (1 - p) / p);
        for (var (k, weight) = (mode, 1.0); k >= 0 && weight > 0; weight *= k * down / (tries - k + 1.0), k--)
        {
            (fewer, atLeast) = k < successes ? (fewer + weight, atLeast) : (fewer, atLeast + weight);
        }

        for (var (k, weight) = (mode + 1, (tries - mode) * up / (mode + 1.0)); k <= tries && weight > 0; weight *= (tries - k) * up / (k + 1.0), k++)
        {
            (fewer, atLeast) = k < successes ? (fewer + weight, atLeast) : (fewer, atLeast + weight);
        }

        var sum = fewer + atLeast;
        return (fewer / sum, atLeast / sum);
    }

    /// <summary>The least count that is not passed with a chance of at least <paramref name="share"/>.</summary>
    /// <param name="tries">Number of tries n, not below 0.</param>
    /// <param name="chance">Chance that a try succeeds, from 0 to 1.</param>
    /// <param name="share">The share, above 0 and not above 1.</param>
    public static int Quantile(int tries, double chance, double share)
    {
        var (low, high) = (0, tries);
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            (low, high) = Split(tries, chance, middle + 1).Fewer + Rounding >= share ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    /// <summary>The fewest tries with which <paramref name="successes"/> are reached with a confidence; null where that takes more than
    /// <paramref name="most"/>. It is also the quantile of the tries needed: the negative binomial distribution.</summary>
    /// <param name="chance">Chance that a try succeeds, from 0 to 1.</param>
    /// <param name="successes">Wanted successes.</param>
    /// <param name="confidence">Wanted confidence, above 0 and below 1.</param>
    /// <param name="most">The most tries that are looked at.</param>
    public static int? FewestTries(double chance, int successes, double confidence, int most)
    {
        bool Enough(int tries) => Split(tries, chance, successes).AtLeast + Rounding >= confidence;
        if (!Enough(most))
        {
            return null;
        }

        var (low, high) = (0, Math.Min(most, Math.Max(successes, 1)));
        while (!Enough(high))
        {
            (low, high) = (high + 1, (int)Math.Min(most, 2L * high));
        }

        while (low < high)
        {
            var middle = low + (high - low) / 2;
            (low, high) = Enough(middle) ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    internal static double Share(double chance) =>
        Guard.NotNegative(chance) <= 1 ? chance : throw new ArgumentOutOfRangeException(nameof(chance), "Must not be above 1.");
}
