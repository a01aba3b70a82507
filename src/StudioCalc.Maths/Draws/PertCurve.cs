using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The beta distribution of a PERT time on 0 to 1, by its peak.</summary>
/// <remarks>
/// <code>
/// density x^a (1 - x)^(4 - a) / B,   a = 4 peak
/// B = pi |0 - a| |1 - a| |2 - a| |3 - a| |4 - a| / (120 |sin(pi a)|)
/// </code>
/// <para>B is the beta function of a + 1 and 5 - a by Euler's reflection formula. The chance below x is the continued fraction of the
/// incomplete beta function, by Lentz's method. Source: standard texts, from memory; a test compares with a library.</para>
/// </remarks>
internal static class PertCurve
{
    private const double Tiny = 1e-300;

    public static double Below(double peak, double x)
    {
        if (x <= 0 || x >= 1)
        {
            return x <= 0 ? 0 : 1;
        }

        var (a, b) = (1 + 4 * peak, 5 - 4 * peak);
        return x < (a + 1) / (a + b + 2) ? Part(a, b, x, peak) : 1 - Part(b, a, 1 - x, 1 - peak);
    }

    // Bisection: the curve rises from 0 to 1.
    public static double Quantile(double peak, double share)
    {
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(peak, middle) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double Part(double a, double b, double x, double peak) =>
        Pow(x, a) * Pow(1 - x, b) / (a * Beta(4 * peak)) * Fraction(a, b, x);

    private static double Beta(double a)
    {
        var nearest = Round(a);
        var product = PI / 120;
        for (var k = 0; k <= 4; k++)
        {
            product *= k == nearest ? 1 : Abs(k - a);
        }

        var rest = Abs(a - nearest);
        return product * (rest == 0 ? 1 / PI : rest / Sin(PI * rest));
    }

    private static double Fraction(double a, double b, double x)
    {
        var c = 1.0;
        var d = 1 / Away(1 - (a + b) * x / (a + 1));
        var value = d;
        for (var m = 1; m <= 200; m++)
        {
            var even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / Away(1 + even * d);
            c = Away(1 + even / c);
            value *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / Away(1 + odd * d);
            c = Away(1 + odd / c);
            value *= d * c;
            if (Abs(d * c - 1) < 1e-15)
            {
                break;
            }
        }

        return value;
    }

    private static double Away(double value) => Abs(value) < Tiny ? Tiny : value;
}
