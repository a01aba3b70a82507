using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How much light a glossy surface mirrors.</summary>
/// <remarks>
/// <code>
/// s = sqrt(1 - c²) / n       k = sqrt(1 - s²)                      (35)
/// P = ((n c - k) / (n c + k))²   Q = ((c - n k) / (c + n k))²      (36)
/// M = (P + Q) / 2                                                  (37)
/// </code>
/// <para>c: cosine of the angle between the ray and the normal. n: refractive index, above 1. P, Q: shares of the light that vibrates in
/// the plane of the two rays, and across it. M: share of unpolarised light. A clear body; metal is taken as 0.9 at every angle, common
/// practice between steel and silver. Source: Fresnel's equations, docs/models/plate-view.md.</para>
/// </remarks>
/// <param name="RefractiveIndex">Refractive index n, above 1; null for metal.</param>
public sealed record Gloss(double? RefractiveIndex)
{
    /// <summary>What metal mirrors.</summary>
    public const double MetalShare = 0.9;

    /// <summary>Share of unpolarised light that mirrors M. (37)</summary>
    /// <param name="cosine">Cosine c between ray and normal, from 0 to 1.</param>
    public double Share(double cosine)
    {
        var none = default(NoTrail);
        return Share(cosine, ref none);
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="cosine">Cosine c between ray and normal, from 0 to 1.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double Share<TTrail>(double cosine, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (RefractiveIndex is not { } index)
        {
            return trail.Given("M", MetalShare, "", "metal, common practice", answerField);
        }

        var c = trail.Given("c", cosine, "", "cosine between ray and normal");
        var n = trail.Given("n", Guard.Positive(index), "", "refractive index");
        var (P, Q) = Polarised(c, n, ref trail);
        return trail.Let("M", (P + Q) / 2, "", "plate view (37)", answerField);
    }

    /// <summary>Share of the mirrored light that a polarising filter cannot take away: P over P and Q. 1 for metal. (36)</summary>
    /// <param name="cosine">Cosine c between ray and normal, from 0 to 1.</param>
    public double PolarisedRest(double cosine)
    {
        if (RefractiveIndex is not { } n)
        {
            return 1;
        }

        var none = default(NoTrail);
        var (inPlane, across) = Polarised(cosine, n, ref none);
        return inPlane / (inPlane + across);
    }

    private static (double P, double Q) Polarised<TTrail>(double c, double n, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var s = trail.Let("s", Sqrt(Max(0, 1 - c * c)) / n, "", "plate view (35)");
        var k = trail.Let("k", Sqrt(1 - s * s), "", "plate view (35)");
        var P = trail.Let("P", Pow((n * c - k) / (n * c + k), 2), "", "plate view (36)");
        var Q = trail.Let("Q", Pow((c - n * k) / (c + n * k), 2), "", "plate view (36)");
        return (P, Q);
    }
}
