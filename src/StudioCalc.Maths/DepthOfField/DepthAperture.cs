using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What keeps one frame from holding a depth.</summary>
public enum DepthObstacle
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The lens does not close so far.</summary>
    SmallestAperture,

    /// <summary>No aperture of the lens holds it, because of diffraction.</summary>
    Diffraction,

    /// <summary>The given aperture is too wide.</summary>
    GivenAperture,
}

/// <summary>The aperture that holds two points, with diffraction counted.</summary>
/// <remarks>
/// <code>
/// g  = z v (1 + m / p)                   Airy disc over set f-number           (35)
/// Ng = B / c                             by defocus alone                      (36)
/// Nl = sqrt(B / g),  bl = sqrt(2 g B)    least blur                            (37)
/// Nw = sqrt(2) B / sqrt(c² + sqrt(c⁴ - 4 g² B²))   widest                      (38)
/// Nd = sqrt(c² + sqrt(c⁴ - 4 g² B²)) / (sqrt(2) g) smallest                    (39)
/// </code>
/// <para>B: see <see cref="TwoPointFocus"/>. c: permitted blur. z, v: see <see cref="Diffraction"/>. (38) and (39) are the roots
/// of (B / N)² + (g N)² = c²; they exist while bl is at most c. At v = 0.546 µm, (37) is sqrt(375 dv) for the effective f-number,
/// within (dv / 2 v)² of the image distance v, because B (1 + m / p) is nearly dv / 2. Sources: P. Hansma (1996)
/// as told by Q.-T. Luong, "How to select the f-stop", Large Format Page, for (37); (38), (39) derived in
/// docs/models/depth-of-field.md.</para>
/// </remarks>
public static class DepthAperture
{
    private const double Rounding = 1e-9;

    /// <summary>Airy disc over set f-number, g. (35) [mm]</summary>
    /// <param name="lens">The lens and its focus.</param>
    /// <param name="wavelengthUm">Wavelength v, above 0. [µm]</param>
    public static double AiryGrowthMm(LensFocus lens, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(lens);
        return Diffraction.AiryFactor * Guard.Positive(wavelengthUm) / 1000 * lens.EffectiveFactor;
    }

    /// <summary>Solves for the aperture.</summary>
    /// <param name="focus">The lens, focused between the points.</param>
    /// <param name="permittedBlurMm">Permitted blur c, above 0. [mm]</param>
    /// <param name="wavelengthUm">Wavelength v, above 0. [µm]</param>
    /// <param name="range">The apertures of the lens.</param>
    /// <param name="trail">Follows the sum.</param>
    public static ApertureOutcome Solve<TTrail>(
        TwoPointFocus focus, double permittedBlurMm, double wavelengthUm, ApertureRange range, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(range);
        trail.Section("aperture");
        var (f, m, p) = (focus.Lens.FocalLengthMm, focus.Lens.Magnification, focus.Lens.PupilMagnification);
        var (xn, xf) = (focus.NearMm, focus.FarMm);
        var dv = focus.FocusSpreadMm(ref trail);
        var c = trail.Given("c", Guard.Positive(permittedBlurMm), "mm", "permitted blur");
        var z = trail.Given("z", Diffraction.AiryFactor, "", "first dark ring of the Airy disc");
        var v = trail.Given("v", Guard.Positive(wavelengthUm), "µm", "wavelength");
        var B = trail.Let("B", f * m * (xf - xn) / (xf + xn), "mm", "depth of field (34)");
        var g = trail.Let("g", z * v / 1000 * (1 + m / p), "mm", "depth of field (35)");
        var Ng = trail.Let("Ng", B / c, "", "depth of field (36)", "geometric_aperture.f_number");
        var Nl = trail.Let("Nl", Sqrt(B / g), "", "depth of field (37)", "least_blur_aperture.f_number");
        var bl = trail.Let("bl", 1000 * Sqrt(2 * g * B), "µm", "depth of field (37)", "least_blur_um");
        var choice = new ApertureChoice(range.Settable(), wavelengthUm);
        var widest = Widest(B, c, g, range);
        var isReached = widest is not null;
        double exact, set;
        if (isReached)
        {
            var Nw = trail.Let("Nw", Sqrt(2) * B / Sqrt(c * c + Sqrt(Max(c * c * c * c - 4 * g * g * B * B, 0))), "", "depth of field (38)");
            var No = trail.Given("No", range.WidestFNumber, "", "widest aperture of the lens");
            exact = trail.Let("Nx", Max(Nw, No), "", "the lens opens no wider", "solution.aperture.f_number");
            set = (choice with { FNumbers = [.. choice.FNumbers.Where(range.IsMark)] }).Widest(focus, c) ?? exact;
        }
        else
        {
            exact = set = trail.Given(
                "Nx", choice.LeastBlur(focus), "", "the mark or limit that blurs least", "not_reached.nearest.aperture.f_number");
        }

        var place = isReached ? "solution." : "not_reached.nearest.";
        var N = trail.Given("N", set, "", range.IsMark(set) ? "mark" : "no mark holds");
        var Ne = trail.Let("Ne", N * (1 + m / p), "", "depth of field (6)", place + "effective_f_number");
        var a = trail.Let("a", z * v * Ne, "µm", "depth of field (13)", place + "airy_disc_um");
        var d = trail.Let("d", 1000 * B / N, "µm", "depth of field (34)", place + "end_blur_um");
        var b = trail.Let("b", Sqrt(d * d + a * a), "µm", "depth of field (15)", place + "end_blur_with_diffraction_um");
        return new()
        {
            Obstacle = isReached ? DepthObstacle.None
                : bl <= 1000 * c && Nl > range.SmallestFNumber ? DepthObstacle.SmallestAperture : DepthObstacle.Diffraction,
            FNumber = exact,
            SetFNumber = set,
            EffectiveFNumber = Ne,
            AiryDiscUm = a,
            EndBlurUm = d,
            EndBlurWithDiffractionUm = b,
            ShortfallUm = isReached ? 0 : trail.Let("over", b - 1000 * c, "µm", "blur beyond the permitted one", "not_reached.shortfall_um"),
            GeometricFNumber = Ng,
            LeastBlurFNumber = Nl,
            LeastBlurUm = bl,
            FocusSpreadMm = dv,
        };
    }

    // The widest aperture of the range that holds, or null. (38), (39)
    private static double? Widest(double B, double c, double g, ApertureRange range)
    {
        if (2 * g * B > c * c * (1 + Rounding))
        {
            return null;
        }

        var root = Sqrt(c * c + Sqrt(Max(c * c * c * c - 4 * g * g * B * B, 0)));
        var widest = Max(Sqrt(2) * B / root, range.WidestFNumber);
        return range.Holds(widest) && widest <= root / (Sqrt(2) * g) * (1 + Rounding) ? widest : null;
    }
}

/// <summary>What comes of solving for the aperture that holds two points.</summary>
public sealed record ApertureOutcome
{
    /// <summary>What stands in the way.</summary>
    public required DepthObstacle Obstacle { get; init; }

    /// <summary>The set f-number solved for, or the nearest to be had.</summary>
    public required double FNumber { get; init; }

    /// <summary>The mark to set, or <see cref="FNumber"/> where no mark holds. The figures below are for it.</summary>
    public required double SetFNumber { get; init; }

    /// <summary>Effective f-number.</summary>
    public required double EffectiveFNumber { get; init; }

    /// <summary>Diameter of the Airy disc. [µm]</summary>
    public required double AiryDiscUm { get; init; }

    /// <summary>Blur of the points by defocus. [µm]</summary>
    public required double EndBlurUm { get; init; }

    /// <summary>Blur of the points with diffraction. [µm]</summary>
    public required double EndBlurWithDiffractionUm { get; init; }

    /// <summary>How much of it is beyond the permitted one; 0 when reached. [µm]</summary>
    public required double ShortfallUm { get; init; }

    /// <summary>Set f-number by defocus alone, Ng.</summary>
    public required double GeometricFNumber { get; init; }

    /// <summary>Set f-number of the least blur, Nl.</summary>
    public required double LeastBlurFNumber { get; init; }

    /// <summary>That blur. [µm]</summary>
    public required double LeastBlurUm { get; init; }

    /// <summary>The images of the points apart, dv. [mm]</summary>
    public required double FocusSpreadMm { get; init; }
}
