using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The apertures of a stack.</summary>
/// <remarks>
/// <code>
/// Ns = c / (sqrt(2) g)           deepest aperture                  (40)
/// d  = sqrt(c² - (g N)²)         blur that is left for defocus     (41)
/// </code>
/// <para>The depth of a frame goes with N d, which is greatest at (40). g: see <see cref="DepthAperture"/>, at the front of the
/// subject, where it is largest. Source: derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public static class StackAperture
{
    /// <summary>The aperture that takes the fewest frames; null where diffraction leaves no depth at any.</summary>
    /// <param name="input">What the stack is to hold; its own aperture plays no part.</param>
    /// <param name="fNumbers">Set f-numbers to choose from.</param>
    public static double? Deepest(StackInput input, IEnumerable<double> fNumbers)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(fNumbers);
        var (deepest, most) = ((double?)null, 0.0);
        foreach (var N in fNumbers)
        {
            if (N * (input with { FNumber = N }).DefocusBlurMm is { } depth && depth > most)
            {
                (deepest, most) = (N, depth);
            }
        }

        return deepest;
    }

    /// <summary>The mark nearest to the aperture of a stack at which all of it fits, towards the one that takes the fewest frames;
    /// where diffraction leaves the stack no depth, that one. The Airy disc (13) stays within the permitted blur. Null when no mark
    /// does it.</summary>
    /// <param name="input">What the stack is to hold.</param>
    /// <param name="times">How long its frames take; null when not known.</param>
    /// <param name="scale">The scale of the marks.</param>
    /// <param name="wavelengthUm">Wavelength, above 0. [µm]</param>
    public static double? ThatFits(StackInput input, StackTimes? times, StopScale scale, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(input);
        var most = StackOutcome.MostFrames(times);
        var g = DepthAperture.AiryGrowthMm(input.Lens, wavelengthUm);
        double[] marks = [.. Marks.Aperture.All(scale).Select(mark => mark.Value).Where(N => g * N <= input.PermittedBlurMm)];
        if (most < 1 || Deepest(input, marks) is not { } deepest)
        {
            return null;
        }

        double[] towards = input.DefocusBlurMm is null ? [deepest]
            : deepest > input.FNumber ? [.. marks.Where(N => N > input.FNumber * (1 + Rounding) && N <= deepest)]
            : [.. marks.Where(N => N < input.FNumber * (1 - Rounding) && N >= deepest).Reverse()];
        return ClosedAperture.First(towards, N =>
        {
            var none = default(NoTrail);
            return StackFrames.Plan(input with { FNumber = N }, most, ref none).IsWhole;
        });
    }

    private const double Rounding = 1e-9;
}
