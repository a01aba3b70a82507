using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How the temperature of food follows from the heat in it.</summary>
public interface IHeatStore
{
    /// <summary>Temperature of food that holds so much heat. [°C]</summary>
    double Celsius(double heat);

    /// <summary>Heat in food of a temperature. [J/kg]</summary>
    double Heat(double celsius);
}

/// <summary>Food whose specific heat stays as it is.</summary>
internal readonly record struct PlainStore(double SpecificHeat) : IHeatStore
{
    public double Celsius(double heat) => heat / SpecificHeat;

    public double Heat(double celsius) => SpecificHeat * celsius;
}

/// <summary>Ice cream and sorbet: water that freezes little by little below a freezing point.</summary>
/// <remarks>
/// <code>
/// i = (xw - 0.4 xp) (1 - Tf / T)                                     share of ice in the mass   (27)
/// H = (T - Tr) (1550 + 1260 xs - (xw - 0.4 xp) 333600 Tf / (Tr T))   below Tf                   (28)
/// H = H(Tf) + (4190 - 2300 xs - 628 xs³) (T - Tf)                    above                      (29)
/// </code>
/// <para>xw, xp, xs: water, protein and solids (1 - xw) in the mass. Tf: initial freezing point in °C, from the mix: about -2.7 for
/// vanilla, -2 to -4 for sorbet, lower with alcohol. Tr: -40 °C. H: heat in J/kg from Tr. Source: the food chapter of a handbook after
/// Miles, Schwartzberg and Chen, through public code that implements it; (29) from memory.</para>
/// </remarks>
/// <param name="Water">Share of water xw.</param>
/// <param name="Protein">Share of protein xp.</param>
/// <param name="FreezingCelsius">Initial freezing point Tf, below 0. [°C]</param>
public readonly record struct IceCreamMix(double Water, double Protein, double FreezingCelsius)
    : IHeatStore
{
    /// <summary>Specific heat without any water, a bound from below. [J/(kg K)]</summary>
    public const double LeastSpecificHeat = 1550;

    private const double Reference = -40;
    private const double Fusion = 333600;

    private double Freezable => Water - 0.4 * Protein;

    private double Solids => 1 - Water;

    private double Rise => LeastSpecificHeat + 1260 * Solids;

    private double Pull => Freezable * Fusion * FreezingCelsius / Reference;

    /// <summary>Share of its mass that is ice. (27)</summary>
    /// <param name="celsius">Temperature. [°C]</param>
    public double Ice(double celsius) => celsius < FreezingCelsius ? Freezable * (1 - FreezingCelsius / celsius) : 0;

    /// <summary>Heat from -40 °C. (28), (29) [J/kg]</summary>
    /// <param name="celsius">Temperature. [°C]</param>
    public double Heat(double celsius) => celsius < FreezingCelsius
        ? (celsius - Reference) * (Rise - Pull / celsius)
        : Heat(BitDecrement(FreezingCelsius)) + Melted * (celsius - FreezingCelsius);

    /// <summary>Temperature from the heat. [°C]</summary>
    /// <param name="heat">Heat from -40 °C. [J/kg]</param>
    public double Celsius(double heat)
    {
        var atFreezing = Heat(BitDecrement(FreezingCelsius));
        if (heat >= atFreezing)
        {
            return FreezingCelsius + (heat - atFreezing) / Melted;
        }

        // (28) times T is a square equation; the colder root is the one below freezing.
        var (a, b, c) = (Rise, -(Pull + Rise * Reference + heat), Pull * Reference);
        return (-b - Sqrt(b * b - 4 * a * c)) / (2 * a);
    }

    private double Melted => 4190 - 2300 * Solids - 628 * Solids * Solids * Solids;
}
