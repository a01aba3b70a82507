using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Blur by the edge of the aperture, and what it leaves of a depth.</summary>
/// <remarks>
/// <code>
/// a = z v Ne                 Airy disc, to its first dark ring        (13)
/// R = 1 / (z v Ne / 2)       line pairs resolved, Rayleigh            (14)
/// b = sqrt(d² + a²)          defocus d and diffraction together       (15)
/// D = 4 v Ne² / m²           depth by wave optics, v / NA²            (16)
/// </code>
/// <para>v: wavelength. z = 2.44, twice Rayleigh's 1.22 as
/// rounded everywhere (exactly twice the first zero of the Bessel function J1 over pi, 2.4393). Ne: effective f-number.
/// (15) is a convention: the true result is the blur of a defocused pupil, which no sum of two numbers gives. (16) is for air
/// and holds while NA = m / (2 Ne) is small. Sources: P. Hansma's root-sum-square as told by Q.-T. Luong, "How to select the
/// f-stop", Large Format Page; R. Littlefield, photomacrography.net (2014), for (16).</para>
/// </remarks>
public static class Diffraction
{
    /// <summary>Diameter of the Airy disc over wavelength and effective f-number, z.</summary>
    public const double AiryFactor = 2.44;

    /// <summary>Diameter of the Airy disc. (13) [µm]</summary>
    /// <param name="effectiveFNumber">Effective f-number Ne, above 0.</param>
    /// <param name="wavelengthUm">Wavelength v, above 0. [µm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds it, for the trail.</param>
    public static double AiryDiscUm<TTrail>(
        double effectiveFNumber, double wavelengthUm, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var Ne = trail.Given("Ne", Guard.Positive(effectiveFNumber), "", "effective f-number");
        var v = trail.Given("v", Guard.Positive(wavelengthUm), "µm", "wavelength");
        var z = trail.Given("z", AiryFactor, "", "first dark ring of the Airy disc");
        return trail.Let("a", z * v * Ne, "µm", "depth of field (13)", answerField);
    }

    /// <summary>Line pairs that an ideal lens resolves. (14) [1/mm]</summary>
    /// <param name="airyDiscUm">Diameter of the Airy disc a, above 0. [µm]</param>
    /// <param name="trail">Follows the sum; it must hold a already.</param>
    public static double ResolvedPerMm<TTrail>(double airyDiscUm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var a = Guard.Positive(airyDiscUm);
        return trail.Let("R", 2000 / a, "1/mm", "depth of field (14)", "resolved_per_mm");
    }

    /// <summary>Blur by defocus and diffraction together. (15), in the unit of both.</summary>
    /// <param name="defocus">Blur by defocus d, not negative.</param>
    /// <param name="airyDisc">Diameter of the Airy disc a, not negative.</param>
    public static double Together(double defocus, double airyDisc) =>
        Sqrt(Guard.NotNegative(defocus) * defocus + Guard.NotNegative(airyDisc) * airyDisc);

    /// <summary>What diffraction leaves of a permitted blur for defocus, or null when it leaves nothing; (15) the other way
    /// round, in the unit of both.</summary>
    /// <param name="permittedBlur">Permitted blur, above 0.</param>
    /// <param name="airyDisc">Diameter of the Airy disc, not negative.</param>
    public static double? LeftForDefocus(double permittedBlur, double airyDisc) =>
        Guard.Positive(permittedBlur) > Guard.NotNegative(airyDisc)
            ? Sqrt((permittedBlur - airyDisc) * (permittedBlur + airyDisc))
            : null;

    /// <summary>Depth by wave optics. (16) [mm]</summary>
    /// <param name="effectiveFNumber">Effective f-number Ne, above 0.</param>
    /// <param name="magnification">Magnification m, above 0.</param>
    /// <param name="wavelengthUm">Wavelength v, above 0. [µm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double WaveOpticsDepthMm<TTrail>(
        double effectiveFNumber, double magnification, double wavelengthUm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var Ne = trail.Given("Ne", Guard.Positive(effectiveFNumber), "", "effective f-number");
        var m = trail.Given("m", Guard.Positive(magnification), "", "magnification");
        var v = trail.Given("v", Guard.Positive(wavelengthUm), "µm", "wavelength");
        return trail.Let("D", 4 * v / 1000 * Ne * Ne / (m * m), "mm", "depth of field (16)", "wave_optics_depth_mm");
    }
}
