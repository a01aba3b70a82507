using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How focus scatters along the axis of the lens.</summary>
/// <param name="SpreadMm">Standard deviation s of all causes together, above 0. [mm]</param>
/// <param name="BiasMm">Where focus falls on average b, behind the wanted plane. [mm]</param>
/// <remarks>
/// <code>
/// e = d / z(K)                     (60)
/// s = sqrt(e² + a² + q²)           (61)
/// </code>
/// <para>e: spread of focus. d: half the sharp depth of frames of which the share K was sharp; z: half width of the standard normal
/// distribution that holds that share. a, q: spread of the camera's movement and of the plate's place. The causes are taken to be
/// normal and independent; (60) to be free of bias. Source: the sum of variances; no published spread of focus is known, so it is
/// always an input.</para>
/// </remarks>
public sealed record FocusError(double SpreadMm, double BiasMm)
{
    /// <summary>Spread of focus from a keep rate seen before. (60) [mm]</summary>
    /// <param name="keptShare">Share K of frames that were sharp, above 0 and below 1.</param>
    /// <param name="halfDepthMm">Half the sharp depth d of those frames, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double SpreadFromKeepRateMm<TTrail>(double keptShare, double halfDepthMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Given("K", keptShare, "", "observed.kept_share");
        var d = trail.Given("d", Guard.Positive(halfDepthMm), "mm", "observed.half_depth_mm");
        var zK = trail.Given("zK", Normal.HalfWidth(keptShare), "", "half width of the normal distribution that holds K");
        return trail.Let("e", d / zK, "mm", "depth of field (60)");
    }

    /// <summary>Joins the causes. (61)</summary>
    /// <param name="focusMm">Spread of focus e, above 0. [mm]</param>
    /// <param name="cameraMm">Spread of the camera's movement a, not negative. [mm]</param>
    /// <param name="plateMm">Spread of the plate's place q, not negative. [mm]</param>
    /// <param name="biasMm">Where focus falls on average b. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static FocusError Of<TTrail>(double focusMm, double cameraMm, double plateMm, double biasMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var e = trail.Given("e", Guard.Positive(focusMm), "mm", "spread of focus");
        var a = trail.Given("a", Guard.NotNegative(cameraMm), "mm", "camera_movement_mm, 0 without one");
        var q = trail.Given("q", Guard.NotNegative(plateMm), "mm", "plate_placement_mm, 0 without one");
        return new(trail.Let("s", Sqrt(e * e + a * a + q * q), "mm", "depth of field (61)", "spread_mm"), Guard.Finite(biasMm));
    }
}
