namespace StudioCalc.Maths;

/// <summary>How far sharpness reaches on each side of the focused plane.</summary>
/// <remarks>
/// <code>
/// w    = N c / f                                                      (7)
/// near = N c (1 + m / p) / (m (m + w))      in front                  (8)
/// far  = N c (1 + m / p) / (m (m - w))      behind; infinite for m up to w   (9)
/// xn   = f (1 + m / p) / (m + w)            near limit from the pupil (10)
/// xf   = f (1 + m / p) / (m - w)            far limit from the pupil  (11)
/// H    = f² / (N c) + f                     hyperfocal distance       (12)
/// </code>
/// <para>N: set f-number. c: permitted blur on the sensor. Exact for any lens free of aberrations and any magnification: in
/// object space a point's blur is set by the entrance pupil alone. (10) and (11) hold at infinity focus too. H counts from the
/// front principal plane of a lens with p = 1; focused there, the near limit is H / 2. Geometric blur only; see
/// <see cref="Diffraction"/>. Sources: D. M. Jacobson, "Photographic Lenses FAQ" (1997), question 11, for near and far at
/// p = 1; P. van Walree, "Derivation of the DOF equations", for the pupil; derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public sealed record SharpZone
{
    /// <summary>Depth in front of the focused plane; infinite with focus at infinity. [mm]</summary>
    public required double NearDepthMm { get; init; }

    /// <summary>Depth behind the focused plane; may be infinite. [mm]</summary>
    public required double FarDepthMm { get; init; }

    /// <summary>Near limit from the entrance pupil. [mm]</summary>
    public required double NearFromEntrancePupilMm { get; init; }

    /// <summary>Far limit from the entrance pupil; may be infinite. [mm]</summary>
    public required double FarFromEntrancePupilMm { get; init; }

    /// <summary>Whether it reaches to infinity.</summary>
    public bool FarIsInfinite => double.IsInfinity(FarDepthMm);

    /// <summary>Depth in front and behind together; may be infinite. [mm]</summary>
    public double TotalDepthMm => NearDepthMm + FarDepthMm;

    /// <summary>Evaluates the zone.</summary>
    /// <param name="lens">The lens and its focus.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="permittedBlurMm">Permitted blur c, above 0. [mm]</param>
    public static SharpZone Evaluate(LensFocus lens, double fNumber, double permittedBlurMm)
    {
        var none = default(NoTrail);
        return Evaluate(lens, fNumber, permittedBlurMm, ref none);
    }

    /// <summary>The same, and follows the sum.</summary>
    /// <param name="lens">The lens and its focus.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="permittedBlurMm">Permitted blur c, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="field">The answer message that holds the zone, with a point at its end, for the trail; empty when none
    /// does.</param>
    /// <param name="blurIs">What the permitted blur is, for the trail.</param>
    public static SharpZone Evaluate<TTrail>(
        LensFocus lens, double fNumber, double permittedBlurMm, ref TTrail trail, string field = "", string blurIs = "permitted blur")
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var f = trail.Given("f", lens.FocalLengthMm, "mm", "focal length at this focus");
        var m = trail.Given("m", lens.Magnification, "", "magnification");
        var p = trail.Given("p", lens.PupilMagnification, "", "pupil_magnification");
        var N = trail.Given("N", Guard.Positive(fNumber), "", "set f-number");
        var c = trail.Given("c", Guard.Positive(permittedBlurMm), "mm", blurIs);
        var w = trail.Let("w", N * c / f, "", "depth of field (7)");
        var xn = trail.Let("xn", f * (1 + m / p) / (m + w), "mm", "depth of field (10)", Field("near_from_entrance_pupil_mm"));
        var isInfinite = m <= w;
        var xf = isInfinite
            ? double.PositiveInfinity
            : trail.Let("xf", f * (1 + m / p) / (m - w), "mm", "depth of field (11)", Field("far_from_entrance_pupil_mm"));
        return new()
        {
            NearDepthMm = m == 0
                ? double.PositiveInfinity
                : trail.Let("near", N * c * (1 + m / p) / (m * (m + w)), "mm", "depth of field (8)", Field("near_depth_mm")),
            FarDepthMm = isInfinite
                ? double.PositiveInfinity
                : trail.Let("far", N * c * (1 + m / p) / (m * (m - w)), "mm", "depth of field (9)", Field("far_depth_mm")),
            NearFromEntrancePupilMm = xn,
            FarFromEntrancePupilMm = xf,
        };

        string Field(string name) => field.Length == 0 ? "" : field + name;
    }

    /// <summary>The f-number that the sensor sees, N (1 + m / p). (6)</summary>
    /// <param name="lens">The lens and its focus.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds it, for the trail.</param>
    public static double EffectiveFNumber<TTrail>(LensFocus lens, double fNumber, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var m = trail.Given("m", lens.Magnification, "", "magnification");
        var p = trail.Given("p", lens.PupilMagnification, "", "pupil_magnification");
        var N = trail.Given("N", Guard.Positive(fNumber), "", "set f-number");
        return trail.Let("Ne", N * (1 + m / p), "", "depth of field (6)", answerField);
    }

    /// <summary>Hyperfocal distance from the front principal plane. (12) [mm]</summary>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="permittedBlurMm">Permitted blur c, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double HyperfocalMm<TTrail>(double focalLengthMm, double fNumber, double permittedBlurMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var f = trail.Given("f", Guard.Positive(focalLengthMm), "mm", "focal length at this focus");
        var N = trail.Given("N", Guard.Positive(fNumber), "", "set f-number");
        var c = trail.Given("c", Guard.Positive(permittedBlurMm), "mm", "permitted blur");
        return trail.Let("H", f * f / (N * c) + f, "mm", "depth of field (12)", "hyperfocal_mm");
    }
}
