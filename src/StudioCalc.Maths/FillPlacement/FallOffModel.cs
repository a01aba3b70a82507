using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How light falls off before a source.</summary>
public enum FallOffModel
{
    /// <summary>A soft face.</summary>
    SoftFace,

    /// <summary>A beam from an origin behind the face, or before it.</summary>
    Beam,

    /// <summary>A point.</summary>
    Point,
}

/// <summary>The models' fall-off.</summary>
/// <remarks>
/// <code>
/// G = log2(d² + R²)       a soft face: a disc of radius R, on its axis     (21)
/// G = 2 log2(d + D)       a beam: a point D behind the face                (22)
/// G = 2 log2(d)           a point                                         (23)
/// </code>
/// <para>G: light lost by distance; light is c - G. d: distance from the face. (21) is exact for a disc, and within 0.001 stop for an
/// octagon from a third of its width on; a long strip departs from it close by. Where d + D is not above 0 a beam has no light.</para>
/// </remarks>
internal static class FallOffModels
{
    /// <summary>The size that tells a model: R, D, or nothing. [mm]</summary>
    public static string Symbol(this FallOffModel model) => model == FallOffModel.SoftFace ? "R" : "D";

    /// <summary>The equation.</summary>
    public static string Equation(this FallOffModel model) => model switch
    {
        FallOffModel.SoftFace => "fill placement (21)",
        FallOffModel.Beam => "fill placement (22)",
        _ => "fill placement (23)",
    };

    /// <summary>Light lost G. (21) to (23) [stops]</summary>
    public static double Loss<TTrail>(this FallOffModel model, double distanceMm, double sizeMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var d = trail.Given("d", distanceMm, "mm", "distance");
        switch (model)
        {
            case FallOffModel.SoftFace:
                var R = sizeMm;
                return trail.Let("G", Log2(d * d + R * R), "stops", "fill placement (21)");
            case FallOffModel.Beam:
                var D = sizeMm;
                return trail.Let("G", 2 * Log2(d + D), "stops", "fill placement (22)");
            default:
                return trail.Let("G", 2 * Log2(d), "stops", "fill placement (23)");
        }
    }

    /// <summary>Slope of G by the size, up to a factor that is the same at all distances.</summary>
    public static double Slope(this FallOffModel model, double distanceMm, double sizeMm) => model == FallOffModel.SoftFace
        ? 1 / (distanceMm * distanceMm + sizeMm * sizeMm)
        : 1 / (distanceMm + sizeMm);
}
