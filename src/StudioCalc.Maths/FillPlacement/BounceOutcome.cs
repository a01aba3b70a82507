using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Bounced light against direct light.</summary>
/// <remarks>
/// <code>
/// B = r B1                                                                 (75)
/// x = log2(B / D)                        over direct light                 (76)
/// c = log2((Dr + B) / (Dr + rc M1))      change by the surface             (77)
/// far = r (I w1 / d1²) (A w2 / (pi d2²)) product of two inverse squares    (78)
/// </code>
/// <para>r: reflectance. B1: light for a reflectance of 1, (72) or (73). M1: the same of a matt surface, (72). D: direct light that is
/// held against. Dr: direct light at the receiver, 0 where it is blocked. rc: reflectance of what the surface covers, taken to be
/// matt and lit alike. I: intensity of the source towards the surface's middle, d1 away. w1, w2: cosines at the surface and at
/// the receiver, d2 away, each times that of leaving. A: area of the surface. Source: derived.</para>
/// </remarks>
public static class BounceOutcome
{
    /// <summary>Bounced light B. (75)</summary>
    /// <param name="unitLight">Light for a reflectance of 1, B1.</param>
    /// <param name="residual">What the last halving changed of it, as a share.</param>
    /// <param name="reflectance">Reflectance r.</param>
    /// <param name="unit">Unit of light.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double Bounced<TTrail>(
        double unitLight, double residual, double reflectance, string unit, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        trail.Given("residual", residual, "", "share that halving the patches changed last; 0 for a mirror");
        var B1 = trail.Given("B1", unitLight, unit, "fill placement (72), or (73) for a mirror, for a reflectance of 1");
        var r = trail.Given("r", reflectance, "", "reflectance");
        return trail.Let("B", r * B1, unit, "fill placement (75)", answerField);
    }

    /// <summary>Bounced over direct light; null where either is none. (76) [stops]</summary>
    /// <param name="bounced">Bounced light B.</param>
    /// <param name="direct">Direct light D.</param>
    /// <param name="unit">Unit of light.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double? OverDirectStops<TTrail>(double bounced, double direct, string unit, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (!(bounced > 0 && direct > 0))
        {
            return null;
        }

        var B = trail.Given("B", bounced, unit, "bounced light");
        var D = trail.Given("D", direct, unit, "direct light, fill placement (5) to (8)");
        return trail.Let("x", Log2(B / D), "stops", "fill placement (76)", "bounced_over_direct_stops");
    }

    /// <summary>What the surface changes; null where there is no light without it or with it. (77) [stops]</summary>
    /// <param name="bounced">Bounced light B.</param>
    /// <param name="direct">Direct light at the receiver Dr.</param>
    /// <param name="covered">Light of what the surface covers, rc M1.</param>
    /// <param name="unit">Unit of light.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double? ChangeStops<TTrail>(double bounced, double direct, double covered, string unit, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (!(direct + bounced > 0 && direct + covered > 0))
        {
            return null;
        }

        var B = trail.Given("B", bounced, unit, "bounced light");
        var Dr = trail.Given("Dr", direct, unit, "direct light at the receiver");
        var Bc = trail.Given("Bc", covered, unit, "light of what the surface covers, rc M1");
        return trail.Let("c", Log2((Dr + B) / (Dr + Bc)), "stops", "fill placement (77)", "change_stops");
    }

    /// <summary>The product of two inverse squares; null where source, surface and receiver do not see one another. (78)</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="face">The only source.</param>
    /// <param name="strength">Its luminance or intensity.</param>
    /// <param name="reflectance">Reflectance r.</param>
    /// <param name="at">The receiver.</param>
    public static double? FarEstimate(BounceFace surface, LightFace face, double strength, double reflectance, in LightPoint at)
    {
        ArgumentNullException.ThrowIfNull(surface);
        ArgumentNullException.ThrowIfNull(face);
        var (way1, way2) = (surface.Axes.Centre - face.Axes.Centre, at.Place - surface.Axes.Centre);
        var (d1, d2) = (way1.Length, way2.Length);
        var intensity = strength * (face.IsPoint ? 1 : face.WeighedArea * Max(0, way1.Dot(face.Axes.Facing)) / d1);
        var w1 = Max(0, -way1.Dot(surface.Axes.Facing)) / d1;
        var cosine = -way2.Dot(at.Normal) / d2;
        var w2 = Max(0, way2.Dot(surface.Axes.Facing)) / d2 * (at.Collector == Collector.Dome ? (1 + cosine) / 2 : Max(0, cosine));
        var far = reflectance * (intensity * w1 / (d1 * d1)) * (surface.WidthMm * surface.HeightMm * w2 / (PI * d2 * d2));
        return far > 0 && double.IsFinite(far) ? far : null;
    }
}
