namespace StudioCalc.Maths;

/// <summary>The apertures to choose from where two points are to be held, and whether diffraction counts.</summary>
/// <param name="FNumbers">Set f-numbers, the widest first.</param>
/// <param name="WavelengthUm">Wavelength for diffraction; null leaves it out. [µm]</param>
public sealed record ApertureChoice(IReadOnlyList<double> FNumbers, double? WavelengthUm)
{
    private const double Rounding = 1e-9;

    /// <summary>Blur at both points. (15), (34) [mm]</summary>
    /// <param name="focus">The lens, focused between the points.</param>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    public double BlurMm(TwoPointFocus focus, double fNumber)
    {
        ArgumentNullException.ThrowIfNull(focus);
        return Diffraction.Together(
            focus.BlurTimesFNumberMm / Guard.Positive(fNumber),
            WavelengthUm is { } v ? DepthAperture.AiryGrowthMm(focus.Lens, v) * fNumber : 0);
    }

    /// <summary>The widest aperture that holds both points, or null.</summary>
    /// <param name="focus">The lens, focused between the points; null when it cannot be.</param>
    /// <param name="permittedBlurMm">Permitted blur, above 0. [mm]</param>
    public double? Widest(TwoPointFocus? focus, double permittedBlurMm)
    {
        for (var i = 0; focus is not null && i < FNumbers.Count; i++)
        {
            if (BlurMm(focus, FNumbers[i]) <= permittedBlurMm * (1 + Rounding))
            {
                return FNumbers[i];
            }
        }

        return null;
    }

    /// <summary>The aperture that blurs the points least.</summary>
    /// <param name="focus">The lens, focused between the points.</param>
    public double LeastBlur(TwoPointFocus focus) => FNumbers.MinBy(fNumber => BlurMm(focus, fNumber));
}
