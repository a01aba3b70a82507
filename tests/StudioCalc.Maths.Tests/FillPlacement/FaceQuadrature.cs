using MathNet.Numerics.Integration;

namespace StudioCalc.Maths.Tests;

/// <summary>Light of a face by adding up its area, without any formula of its edges.</summary>
/// <remarks>Gauss-Legendre points over the triangles of a fan. Triangles are quartered where the horizon of the receiver crosses them,
/// and where they are large for their distance. A fan of a concave outline has triangles of negative area, which take away
/// what others count twice.</remarks>
internal static class FaceQuadrature
{
    private const int CrossedDepth = 7;
    private const int NearDepth = 6;

    private static readonly GaussLegendreRule Rule = new(0, 1, 6);

    /// <summary>Integral of w cos a / r² over the face, with a the angle at the face and w a weight of the cosine at the receiver.</summary>
    public static double Light(LitPoint lit, Func<double, double> weight)
    {
        var corners = lit.Corners;
        var sum = 0.0;
        for (var i = 2; i < corners.Length; i++)
        {
            var doubled = (corners[i - 1] - corners[0]).Cross(corners[i] - corners[0]).Dot(lit.Axes.Facing);
            sum += Math.Sign(doubled) * Triangle(lit, weight, corners[0], corners[i - 1], corners[i], 0);
        }

        return sum;
    }

    /// <summary>Weight of a flat receiver.</summary>
    public static double Flat(double cosine) => Math.Max(0, cosine);

    /// <summary>Weight of a dome.</summary>
    public static double Dome(double cosine) => (1 + cosine) / 2;

    /// <summary>What a spot of the face gives, by unit of its area.</summary>
    public static double Spot(LitPoint lit, Vector spot, Func<double, double> weight)
    {
        var way = spot - lit.At.Place;
        var distance = way.Length;
        return weight(way.Dot(lit.At.Normal) / distance) * -way.Dot(lit.Axes.Facing) / (distance * distance * distance);
    }

    private static double Triangle(LitPoint lit, Func<double, double> weight, Vector a, Vector b, Vector c, int depth)
    {
        if (depth < CrossedDepth && (Crossed(lit.At, a, b, c) || (depth < NearDepth && IsNear(lit.At, a, b, c))))
        {
            var (ab, bc, ca) = ((a + b) * 0.5, (b + c) * 0.5, (c + a) * 0.5);
            return Triangle(lit, weight, a, ab, ca, depth + 1) + Triangle(lit, weight, ab, b, bc, depth + 1)
                + Triangle(lit, weight, ca, bc, c, depth + 1) + Triangle(lit, weight, ab, bc, ca, depth + 1);
        }

        var sum = 0.0;
        for (var i = 0; i < Rule.Order; i++)
        {
            var (s, edge) = (Rule.Abscissas[i], b - a);
            for (var j = 0; j < Rule.Order; j++)
            {
                var spot = a + (edge + (c - b) * Rule.Abscissas[j]) * s;
                sum += Rule.Weights[i] * Rule.Weights[j] * s * Spot(lit, spot, weight);
            }
        }

        return sum * (b - a).Cross(c - a).Length;
    }

    private static bool Crossed(in LightPoint at, Vector a, Vector b, Vector c)
    {
        var (ha, hb, hc) = ((a - at.Place).Dot(at.Normal), (b - at.Place).Dot(at.Normal), (c - at.Place).Dot(at.Normal));
        return Math.Min(ha, Math.Min(hb, hc)) < 0 && Math.Max(ha, Math.Max(hb, hc)) > 0;
    }

    private static bool IsNear(in LightPoint at, Vector a, Vector b, Vector c) =>
        Math.Max((a - b).Length, Math.Max((b - c).Length, (c - a).Length)) > ((a + b + c) * (1 / 3.0) - at.Place).Length;
}
