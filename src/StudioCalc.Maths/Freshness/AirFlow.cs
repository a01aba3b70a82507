using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The form of a surface over which air flows.</summary>
public enum FlowForm
{
    /// <summary>A level surface that faces up; its size is its diameter.</summary>
    FaceUp,

    /// <summary>A level surface that faces down; its size is its diameter.</summary>
    FaceDown,

    /// <summary>An upright surface; its size is its height.</summary>
    Upright,

    /// <summary>A level round piece; its size is its diameter.</summary>
    Cylinder,

    /// <summary>A ball; its size is its diameter.</summary>
    Ball,
}

/// <summary>The coefficient of convection in air that stands still or moves.</summary>
/// <remarks>
/// <code>
/// Ra = 9.81 |T - Ta| s³ Pr / ((tf + 273.15) nu²)                     (19)
/// Nu = 0.54 Ra^(1/4), over 2e7 0.15 Ra^(1/3)     the hot face up, the cold down; s = D / 4   (20)
/// Nu = 0.27 Ra^(1/4)                             the hot face down, the cold up; s = D / 4   (21)
/// Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492 / Pr)^(9/16))^(8/27))²   upright; s = height    (22)
/// Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559 / Pr)^(9/16))^(8/27))²    cylinder; s = D        (23)
/// Nu = 2 + 0.589 Ra^(1/4) / (1 + (0.469 / Pr)^(9/16))^(4/9)           ball; s = D            (24)
/// Nv = 0.664 sqrt(Re) Pr^(1/3), ball 2 + 0.6 sqrt(Re) Pr^(1/3)        moving air; s = D      (25)
/// h  = (h_still³ + h_moving³)^(1/3),   h_i = Nu k / s                                        (26)
/// </code>
/// <para>T, Ta: temperature of surface and air; tf their mean. k, nu, Pr: conductivity, viscosity and Prandtl number of air at
/// tf, straight lines through table values at 0 and 100 °C, from memory. Range: from -50 to 300 °C; below Ra = 10000 the level
/// forms run on down to Nu = 1. Source: Cengel, chapter 9, second-hand; (22), (23) Churchill and Chu; (24) to (26) from
/// memory.</para>
/// </remarks>
public static class AirFlow
{
    /// <summary>The coefficient of convection h. [W/(m² K)]</summary>
    /// <param name="form">The form of the surface.</param>
    /// <param name="sizeMm">Its size. [mm]</param>
    /// <param name="surfaceCelsius">Temperature of the surface T. [°C]</param>
    /// <param name="airCelsius">Temperature of the air Ta. [°C]</param>
    /// <param name="speed">Speed of the air, 0 for still. [m/s]</param>
    public static double Coefficient(FlowForm form, double sizeMm, double surfaceCelsius, double airCelsius, double speed)
    {
        var size = Guard.Positive(sizeMm) / 1000;
        var film = (surfaceCelsius + airCelsius) / 2;
        var conductivity = 0.02364 + 7.0e-5 * film;
        var viscosity = 1.338e-5 + 9.2e-8 * film;
        var prandtl = 0.7362 - 2.5e-4 * film;
        var isLevel = form is FlowForm.FaceUp or FlowForm.FaceDown;
        var s = isLevel ? size / 4 : size;
        var rayleigh = 9.81 * Abs(surfaceCelsius - airCelsius) * s * s * s * prandtl / ((film + 273.15) * viscosity * viscosity);
        var still = Still(form, rayleigh, prandtl, surfaceCelsius > airCelsius) * conductivity / s;
        if (speed == 0)
        {
            return still;
        }

        var stream = Sqrt(speed * size / viscosity) * Cbrt(prandtl);
        var moving = (form == FlowForm.Ball ? 2 + 0.6 * stream : 0.664 * stream) * conductivity / size;
        return Cbrt(still * still * still + moving * moving * moving);
    }

    private static double Still(FlowForm form, double rayleigh, double prandtl, bool isHot) => form switch
    {
        FlowForm.FaceUp or FlowForm.FaceDown when form == FlowForm.FaceUp == isHot =>
            Max(1, rayleigh > 2e7 ? 0.15 * Cbrt(rayleigh) : 0.54 * Pow(rayleigh, 0.25)),
        FlowForm.FaceUp or FlowForm.FaceDown => Max(1, 0.27 * Pow(rayleigh, 0.25)),
        FlowForm.Upright => Square(0.825 + 0.387 * Pow(rayleigh, 1.0 / 6) / Pow(1 + Pow(0.492 / prandtl, 9.0 / 16), 8.0 / 27)),
        FlowForm.Cylinder => Square(0.60 + 0.387 * Pow(rayleigh, 1.0 / 6) / Pow(1 + Pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27)),
        _ => 2 + 0.589 * Pow(rayleigh, 0.25) / Pow(1 + Pow(0.469 / prandtl, 9.0 / 16), 4.0 / 9),
    };

    private static double Square(double value) => value * value;
}
