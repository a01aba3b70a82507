using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a window's glass passes.</summary>
/// <remarks>
/// <code>
/// P(c) = -0.028378 + 3.156075 c - 3.058376 c² - 1.428919 c³ + 4.014235 c⁴ - 1.775827 c⁵    (54)
/// T(c) = T P(c) / Pd                       Pd = 2 times the integral of P(c) c from 0 to 1   (55)
/// </code>
/// <para>c: cosine of the angle between ray and the glass's normal. T: share of diffuse light that passes. (54) is 6 mm clear glass;
/// (55) gives it the diffuse transmittance T, as if further panes changed only the size. Source: (54) P. Tregenza and S. Sharples,
/// algorithm 2.34, second-hand.</para>
/// </remarks>
/// <param name="DiffuseTransmittance">Share of diffuse light that it passes T, or of all light where it does not go by angle.</param>
/// <param name="GoesByAngle">Whether it passes less of what meets it at a slant.</param>
public sealed record WindowGlass(double DiffuseTransmittance, bool GoesByAngle)
{
    private const double DiffuseOfPolynomial = 2 * (-0.028378 / 2 + 3.156075 / 3 - 3.058376 / 4 - 1.428919 / 5 + 4.014235 / 6 - 1.775827 / 7);

    /// <summary>No glass, or an open window.</summary>
    public static WindowGlass None { get; } = new(1, GoesByAngle: false);

    /// <summary>One clear pane.</summary>
    public static WindowGlass SingleClear { get; } = new(0.8, GoesByAngle: true);

    /// <summary>Two clear panes.</summary>
    public static WindowGlass DoubleClear { get; } = new(0.7, GoesByAngle: true);

    /// <summary>Share of light that passes along a ray.</summary>
    /// <param name="c">Cosine of the angle between ray and the glass's normal, from 0 to 1.</param>
    public double Transmittance(double c) => GoesByAngle
        ? DiffuseTransmittance / DiffuseOfPolynomial
            * Max(0, -0.028378 + c * (3.156075 + c * (-3.058376 + c * (-1.428919 + c * (4.014235 - 1.775827 * c)))))
        : DiffuseTransmittance;
}
