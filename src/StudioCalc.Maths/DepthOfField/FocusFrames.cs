using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The frames of a stack by focus ring that holds two points, each frame's zone overlapping the last one's.</summary>
/// <remarks>
/// <code>
/// Ns = c / (sqrt(2) g)                      deepest aperture                    (40)
/// w  = N sqrt(c² - (g N)²) / f              the blur that diffraction leaves    (41)
/// m  = (f / xn - w) / (1 - f / (p xn))      zone starts at xn                   (42)
/// xf = f (1 + m / p) / (m - w)              and ends at xf; next xn = xf - o (xf - xn)
/// </code>
/// <para>g: see <see cref="DepthAperture"/>, at the magnification of the near point, the largest. o: overlap. Depth goes with
/// N sqrt(c² - (g N)²), which is greatest at (40). (42) is (10) solved for m. The entrance pupil stays. Source: derived in
/// docs/models/depth-of-field.md; an overlap of a fifth: common practice.</para>
/// </remarks>
public static class FocusFrames
{
    /// <summary>Share of each frame's depth that the next one covers again.</summary>
    public const double Overlap = 0.2;

    /// <summary>More frames are no remedy.</summary>
    public const int Most = 500;

    /// <summary>The stack as a remedy, or null where diffraction leaves no depth or the frames are too many.</summary>
    /// <param name="focus">The lens, focused between the points.</param>
    /// <param name="permittedBlurMm">Permitted blur c, above 0. [mm]</param>
    /// <param name="fNumbers">Set f-numbers to choose from.</param>
    /// <param name="wavelengthUm">Wavelength, above 0. [µm]</param>
    public static DepthRemedy? Stack(
        TwoPointFocus focus, double permittedBlurMm, IReadOnlyList<double> fNumbers, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(focus);
        var c = Guard.Positive(permittedBlurMm);
        var near = new LensFocus(focus.Lens.FocalLengthMm, focus.NearMagnification, focus.Lens.PupilMagnification);
        var g = DepthAperture.AiryGrowthMm(near, wavelengthUm);
        var deepest = c / (Sqrt(2) * g);
        var N = fNumbers.MinBy(fNumber => Abs(Log(fNumber / deepest)));
        return Diffraction.LeftForDefocus(c, g * N) is { } left && Count(focus, N, left) is { } frames
            ? new(DepthRemedyKind.Stack, N) { Frames = frames }
            : null;
    }

    /// <summary>Frames between the points, or null above <see cref="Most"/>.</summary>
    /// <param name="focus">The lens, focused between the points.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="permittedBlurMm">Permitted blur by defocus, above 0. [mm]</param>
    public static int? Count(TwoPointFocus focus, double fNumber, double permittedBlurMm)
    {
        ArgumentNullException.ThrowIfNull(focus);
        var (f, p) = (focus.Lens.FocalLengthMm, focus.Lens.PupilMagnification);
        var w = Guard.Positive(fNumber) * Guard.Positive(permittedBlurMm) / f;
        var xn = focus.NearMm;
        for (var frames = 1; frames <= Most; frames++)
        {
            var m = (f / xn - w) / (1 - f / (p * xn));
            var xf = m <= w ? double.PositiveInfinity : f * (1 + m / p) / (m - w);
            if (xf >= focus.FarMm)
            {
                return frames;
            }

            xn = xf - Overlap * (xf - xn);
        }

        return null;
    }
}
