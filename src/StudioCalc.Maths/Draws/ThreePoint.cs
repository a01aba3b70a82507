using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How three estimates of a time are spread.</summary>
public enum Spread
{
    /// <summary>Beta-PERT.</summary>
    Pert,

    /// <summary>A triangle.</summary>
    Triangle,

    /// <summary>Log-normal, by median and ninetieth percentile.</summary>
    LogNormal,
}

/// <summary>A time told by its shortest, likely and longest value.</summary>
/// <remarks>
/// <code>
/// beta-PERT: a1 = 1 + 4 (m - a) / (b - a),   a2 = 1 + 4 (b - m) / (b - a)   on [a, b]
/// mean = (a + 4 m + b) / 6,   variance = (mean - a) (b - mean) / 7
/// triangle: mean = (a + m + b) / 3,   variance = (a² + m² + b² - a m - a b - m b) / 18
/// log-normal: median m, sigma = ln(b / m) / 1.2815515655446004
/// </code>
/// <para>a, m, b: shortest, likely, longest. In a log-normal spread b is what nine in ten stay under, and a does not matter.
/// Source: standard texts; the older variance ((b - a) / 6)² of PERT is up to a seventh low.</para>
/// </remarks>
/// <param name="Shortest">Shortest a. [s]</param>
/// <param name="Likely">Likely m, not below the shortest. [s]</param>
/// <param name="Longest">Longest b, not below the likely. [s]</param>
/// <param name="Spread">How they are spread.</param>
public readonly record struct ThreePoint(double Shortest, double Likely, double Longest, Spread Spread)
{
    private const double NinetiethPercentile = 1.2815515655446004;

    /// <summary>The mean. [s]</summary>
    public double Mean => Spread switch
    {
        Spread.Pert => (Shortest + 4 * Likely + Longest) / 6,
        Spread.Triangle => (Shortest + Likely + Longest) / 3,
        _ => Likely * Exp(Sigma * Sigma / 2),
    };

    /// <summary>The variance. [s²]</summary>
    public double Variance => Spread switch
    {
        Spread.Pert => (Mean - Shortest) * (Longest - Mean) / 7,
        Spread.Triangle => (Shortest * Shortest + Likely * Likely + Longest * Longest
            - Shortest * Likely - Shortest * Longest - Likely * Longest) / 18,
        _ => Mean * Mean * (Exp(Sigma * Sigma) - 1),
    };

    private double Sigma => Likely > 0 ? Log(Longest / Likely) / NinetiethPercentile : 0;

    /// <summary>The time that a share stays under. [s]</summary>
    /// <param name="share">The share, above 0 and below 1.</param>
    public double Quantile(double share)
    {
        if (Guard.Positive(share) >= 1)
        {
            throw new ArgumentOutOfRangeException(nameof(share), "Must be below 1.");
        }

        if (Spread == Spread.LogNormal)
        {
            return share == 0.5 || Longest <= Likely ? Likely
                : Likely * Exp(Sigma * (share > 0.5 ? Normal.HalfWidth(2 * share - 1) : -Normal.HalfWidth(1 - 2 * share)));
        }

        if (Longest <= Shortest)
        {
            return Likely;
        }

        var width = Longest - Shortest;
        var peak = (Likely - Shortest) / width;
        return Shortest + width * (Spread == Spread.Triangle ? Triangle(peak, share) : PertCurve.Quantile(peak, share));
    }

    /// <summary>A random value. [s]</summary>
    /// <param name="key">The key of the draws.</param>
    /// <param name="draw">The number of the draw.</param>
    /// <param name="what">What is drawn: two times of one draw differ by it.</param>
    public double Draw((uint First, uint Second) key, uint draw, uint what) => Draw(key, draw, what, 0);

    /// <summary>A random value in whole milliseconds, half up: the same on every machine but for a value next to a half. [ms]</summary>
    /// <param name="key">The key of the draws.</param>
    /// <param name="draw">The number of the draw.</param>
    /// <param name="what">What is drawn.</param>
    /// <param name="part">Which part of it: a stage, a try.</param>
    public long DrawMs((uint First, uint Second) key, uint draw, uint what, uint part) =>
        (long)Floor(1000 * Draw(key, draw, what, part) + 0.5);

    private double Draw((uint First, uint Second) key, uint draw, uint what, uint part)
    {
        if (Spread == Spread.LogNormal)
        {
            return Longest > Likely ? Likely * Exp(Sigma * Gauss(Philox.Uniform(key, (draw, what, 0, part)))) : Likely;
        }

        if (Longest <= Shortest)
        {
            return Likely;
        }

        var width = Longest - Shortest;
        var peak = (Likely - Shortest) / width;
        return Shortest + width * (Spread == Spread.Triangle
            ? Triangle(peak, Philox.Uniform(key, (draw, what, 0, part)).First)
            : Pert(peak, key, draw, what, part));
    }

    private static double Triangle(double peak, double u) => u < peak ? Sqrt(u * peak) : 1 - Sqrt((1 - u) * (1 - peak));

    // By rejection under the density's peak: two or three tries.
    private static double Pert(double peak, (uint First, uint Second) key, uint draw, uint what, uint part)
    {
        var (before, after) = (4 * peak, 4 * (1 - peak));
        var most = Power(peak, before) * Power(1 - peak, after);
        for (var attempt = 0u; ; attempt++)
        {
            var (x, u) = Philox.Uniform(key, (draw, what, attempt, part));
            if (u * most <= Power(x, before) * Power(1 - x, after))
            {
                return x;
            }
        }
    }

    private static double Power(double x, double exponent) => exponent == 0 ? 1 : Pow(x, exponent);

    // Box and Muller.
    private static double Gauss((double First, double Second) u) => Sqrt(-2 * Log(1 - u.First)) * Cos(2 * PI * u.Second);
}
