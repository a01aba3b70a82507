using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light of a flat polygon that is equally bright all over, at a point.</summary>
/// <remarks>
/// <code>
/// F = 1 / (2 pi) sum of t_i (n . g_i)                       (1)
/// t = atan2(|a x b|, a . b),   g = (a x b) / |a x b|        (2)
/// W = sum of 2 atan2(a . (b x c), abc + (a . b) c + (b . c) a + (c . a) b)   (3)
/// </code>
/// <para>F: configuration factor, illuminance over pi times luminance. n: normal of the receiver. a, b: an edge's two
/// corners from the receiver. W: solid angle, over a fan of triangles. The polygon is cut at the receiver's horizon before
/// the sum, for what lies behind it gives no light. Corners run counter-clockwise seen from the lit side, and the receiver is
/// on that side; concave outlines are right too. An edge through the receiver counts as none. Source: Lambert, Photometria (1760),
/// from memory; (3) van Oosterom and Strackee (1983), from memory. Derived in docs/models/fill-placement.md.</para>
/// </remarks>
public static class PolygonLight
{
    /// <summary>Configuration factor F of the part before a flat receiver, from 0 to 1.</summary>
    /// <param name="corners">The polygon.</param>
    /// <param name="place">The receiver, on the lit side.</param>
    /// <param name="normal">Its unit normal.</param>
    public static double Factor(ReadOnlySpan<Vector> corners, Vector place, Vector normal)
    {
        var none = default(NoTrail);
        return Factor(corners, place, normal, ref none);
    }

    /// <summary>The same, followed edge by edge.</summary>
    /// <param name="corners">The polygon.</param>
    /// <param name="place">The receiver, on the lit side.</param>
    /// <param name="normal">Its unit normal.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Factor<TTrail>(ReadOnlySpan<Vector> corners, Vector place, Vector normal, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var S = trail.Given("S", 0, "", "sum over the edges");
        Vector first = default, last = default;
        var any = false;
        var from = corners[^1] - place;
        var fromHeight = from.Dot(normal);
        foreach (var corner in corners)
        {
            var to = corner - place;
            var toHeight = to.Dot(normal);
            if (fromHeight < 0 != toHeight < 0)
            {
                Reach(from + (to - from) * (fromHeight / (fromHeight - toHeight)), ref trail);
            }

            if (toHeight >= 0)
            {
                Reach(to, ref trail);
            }

            (from, fromHeight) = (to, toHeight);
        }

        if (any)
        {
            S = Add(S, last, first, normal, ref trail);
        }

        var pi = trail.Given("pi", PI, "", "half a turn");
        return trail.Let("F", Max(0, S / (2 * pi)), "", "fill placement (1)");

        void Reach(Vector to, ref TTrail trail)
        {
            if (any)
            {
                S = Add(S, last, to, normal, ref trail);
            }
            else
            {
                (first, any) = (to, true);
            }

            last = to;
        }
    }

    /// <summary>The same sum without the cut: what lies behind the receiver counts as negative.</summary>
    public static double SignedFactor(ReadOnlySpan<Vector> corners, Vector place, Vector normal)
    {
        var none = default(NoTrail);
        var sum = 0.0;
        var from = corners[^1] - place;
        foreach (var corner in corners)
        {
            var to = corner - place;
            sum = Add(sum, from, to, normal, ref none);
            from = to;
        }

        return sum / (2 * PI);
    }

    /// <summary>Light e by unit luminance, by the receiver's collector. (5) (6) [sr]</summary>
    /// <param name="corners">The polygon.</param>
    /// <param name="at">The receiver, on the lit side.</param>
    public static double Light(ReadOnlySpan<Vector> corners, in LightPoint at) => at.Collector == Collector.Dome
        ? (PI * SignedFactor(corners, at.Place, at.Normal) + SolidAngle(corners, at.Place)) / 2
        : PI * Factor(corners, at.Place, at.Normal);

    /// <summary>Solid angle W of the whole polygon. [sr]</summary>
    /// <param name="corners">The polygon.</param>
    /// <param name="place">The receiver, on the lit side.</param>
    public static double SolidAngle(ReadOnlySpan<Vector> corners, Vector place)
    {
        var sum = 0.0;
        var a = corners[0] - place;
        var la = a.Length;
        for (var i = 2; i < corners.Length; i++)
        {
            var b = corners[i - 1] - place;
            var c = corners[i] - place;
            var (lb, lc) = (b.Length, c.Length);
            sum += 2 * Atan2(a.Dot(b.Cross(c)), la * lb * lc + a.Dot(b) * lc + b.Dot(c) * la + c.Dot(a) * lb);
        }

        return Abs(sum);
    }

    private static double Add<TTrail>(double S, Vector a, Vector b, Vector normal, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var cross = b.Cross(a);
        var length = cross.Length;
        if (length == 0)
        {
            return S;
        }

        var C = trail.Given("C", length, "mm²", "length of a x b, of the next edge's corners");
        var D = trail.Given("D", a.Dot(b), "mm²", "a . b");
        var G = trail.Given("G", cross.Dot(normal) / length, "", "n . g");
        return trail.Let("S", S + Atan2(C, D) * G, "", "fill placement (2)");
    }
}
