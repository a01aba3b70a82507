using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How many frames give sharp ones.</summary>
/// <remarks>
/// <code>
/// n = max(1, ceil(ln(1 - C) / ln(1 - P)))                                 (64)
/// R = sum of binom(n, i) P^i (1 - P)^(n - i) for i below k                (65)
/// nk: the least n of k and more with R not above 1 - C                    (66)
/// </code>
/// <para>P: chance that a frame is sharp, each for itself. C: confidence. k: keepers wanted. R: chance of fewer. Frames under one
/// locked focus share one error: then all are sharp or none, and the chance of any number is P. Source: success-run sampling, as
/// told by F. Schenkelberg, Quality Digest (2015); the binomial distribution.</para>
/// </remarks>
public static class KeeperCount
{
    /// <summary>The most frames that are counted.</summary>
    public const int MostFrames = 100000;

    // Rounding error of a quotient that is a whole number, such as ln(0.25) / ln(0.5).
    private const double Rounding = 1e-9;

    /// <summary>Frames for at least one keeper, or null above <see cref="MostFrames"/>. (64)</summary>
    /// <param name="chance">The chance that a frame is sharp.</param>
    /// <param name="confidence">Confidence C, above 0 and below 1.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds it, for the trail.</param>
    public static int? ForOne<TTrail>(KeepChance chance, double confidence, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var least = LogOfMiss(chance);
        if (least == 0 || Log(1 - confidence) / least > MostFrames)
        {
            return null;
        }

        var lm = trail.Given("lm", Max(least, -1000), "", "natural logarithm of 1 - P, at least -1000");
        var lc = trail.Given("lc", Log(1 - Guard.Positive(confidence)), "", "natural logarithm of 1 - confidence_share");
        return (int)trail.Let("n", Max(1, Ceiling(lc / lm - 0.000000001)), "", "depth of field (64)", answerField);
    }

    /// <summary>Frames for a number of keepers, or null above <see cref="MostFrames"/>. (66)</summary>
    /// <param name="chance">The chance that a frame is sharp.</param>
    /// <param name="confidence">Confidence C, above 0 and below 1.</param>
    /// <param name="keepers">Keepers wanted k, above 0.</param>
    public static int? ForSeveral(KeepChance chance, double confidence, int keepers)
    {
        var most = (1 - Guard.Positive(confidence)) * (1 + Rounding);
        if (ChanceOfFewer(chance, MostFrames, keepers) > most)
        {
            return null;
        }

        var (low, high) = (keepers - 1, MostFrames);
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            (low, high) = ChanceOfFewer(chance, middle, keepers) > most ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>Chance that frames give fewer keepers than wanted, R. (65)</summary>
    /// <remarks>The largest term by logarithms, the others by the ratio of neighbours, so that nothing overflows or is lost.</remarks>
    /// <param name="chance">The chance that a frame is sharp.</param>
    /// <param name="frames">Frames n, above 0.</param>
    /// <param name="keepers">Keepers wanted k, above 0.</param>
    public static double ChanceOfFewer(KeepChance chance, int frames, int keepers)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(frames);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(keepers);
        if (frames < keepers || chance.Keep == 0)
        {
            return 1;
        }

        if (chance.Miss == 0)
        {
            return 0;
        }

        var mode = (int)Min(keepers - 1, Floor((frames + 1) * chance.Keep));
        var odds = chance.Keep / chance.Miss;
        var sum = 1.0;
        var term = 1.0;
        for (var i = mode; i > 0 && term > 0; i--)
        {
            term *= i / (odds * (frames - i + 1));
            sum += term;
        }

        term = 1;
        for (var i = mode + 1; i < keepers; i++)
        {
            term *= odds * (frames - i + 1) / i;
            sum += term;
        }

        return Min(1, sum * Exp(LogOfTerm(chance, frames, mode)));
    }

    // ln(1 - P), with all its figures for a small P.
    private static double LogOfMiss(KeepChance chance)
    {
        if (chance.Keep > 0.5)
        {
            return Log(chance.Miss);
        }

        var miss = 1 - chance.Keep;
        return miss == 1 ? -chance.Keep : Log(miss) * chance.Keep / (1 - miss);
    }

    private static double LogOfTerm(KeepChance chance, int frames, int i)
    {
        var log = i * Log(chance.Keep) + (frames - i) * LogOfMiss(chance);
        for (var j = 1; j <= i; j++)
        {
            log += Log((double)(frames - j + 1) / j);
        }

        return log;
    }
}
