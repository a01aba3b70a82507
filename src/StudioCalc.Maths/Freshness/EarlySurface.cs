using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The surface of a thick piece early on, while its core knows nothing yet.</summary>
/// <remarks>
/// <code>
/// theta = exp(u²) erfc(u),   u = Bi sqrt(Fo)                         (18)
/// </code>
/// <para>Range: Fo up to about 0.1. exp(u²) erfc(u) is computed as one function, which neither overflows nor vanishes. Source:
/// standard texts.</para>
/// </remarks>
public static class EarlySurface
{
    /// <summary>theta of the surface. (18)</summary>
    /// <param name="biot">Biot number.</param>
    /// <param name="fourier">Fourier number.</param>
    public static double Theta(double biot, double fourier) => ScaledComplement(biot * Sqrt(fourier));

    // exp(x²) erfc(x) for x from 0: by the series of erf below 2, by Laplace's continued fraction above.
    private static double ScaledComplement(double x)
    {
        if (x >= 2)
        {
            var fraction = 0.0;
            for (var n = 120; n > 0; n--)
            {
                fraction = n / 2.0 / (x + fraction);
            }

            return 1 / ((x + fraction) * Sqrt(PI));
        }

        var (term, sum) = (x, x);
        for (var n = 1; Abs(term) > 1e-17 * sum; n++)
        {
            term *= 2 * x * x / (2 * n + 1);
            sum += term;
        }

        // The series of exp(x²) erf(x).
        return Exp(x * x) - 2 / Sqrt(PI) * sum;
    }
}
