using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Points and weights of Gauss and Legendre for integrals from -1 to 1.</summary>
/// <remarks>The points are the roots of the Legendre polynomial of degree n, found by Newton's method; the weights are
/// 2 / ((1 - x²) P'(x)²). They are exact for polynomials up to degree 2n - 1. Source: from memory; held against integrals of
/// powers in tests.</remarks>
public static class GaussPoints
{
    /// <summary>Number of points.</summary>
    public const int Count = 12;

    private static readonly (double Point, double Weight)[] Twelve = Make();

    /// <summary>The points with their weights.</summary>
    public static ReadOnlySpan<(double Point, double Weight)> All => Twelve;

    private static (double Point, double Weight)[] Make()
    {
        var points = new (double Point, double Weight)[Count];
        for (var i = 0; i < Count; i++)
        {
            var x = -Cos(PI * (i + 0.75) / (Count + 0.5));
            var slope = 0.0;
            for (var round = 0; round < 8; round++)
            {
                (var value, slope) = Legendre(x);
                x -= value / slope;
            }

            points[i] = (x, 2 / ((1 - x * x) * slope * slope));
        }

        return points;
    }

    private static (double Value, double Slope) Legendre(double x)
    {
        var (before, value) = (1.0, x);
        for (var k = 2; k <= Count; k++)
        {
            (before, value) = (value, ((2 * k - 1) * x * value - (k - 1) * before) / k);
        }

        return (value, Count * (x * value - before) / (x * x - 1));
    }
}
