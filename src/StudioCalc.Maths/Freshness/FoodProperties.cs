using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Thermal properties of food.</summary>
/// <param name="Conductivity">Conductivity k. [W/(m K)]</param>
/// <param name="Density">Density rho. [kg/m³]</param>
/// <param name="SpecificHeat">Specific heat c. [J/(kg K)]</param>
public sealed record FoodProperties(double Conductivity, double Density, double SpecificHeat)
{
    /// <summary>Water at 50 °C, by the same polynomials as food.</summary>
    public static FoodProperties Water { get; } = FoodComposition.Of(1, 0, 0, 0, 0, 0).At(50).Properties;

    /// <summary>Porcelain, from memory.</summary>
    public static FoodProperties Porcelain { get; } = new(1.5, 2400, 800);

    /// <summary>Diffusivity k / (rho c). [m²/s]</summary>
    public double Diffusivity => Conductivity / (Density * SpecificHeat);

    /// <summary>Effusivity sqrt(k rho c). [J/(m² K s^0.5)]</summary>
    public double Effusivity => Sqrt(Conductivity * Density * SpecificHeat);
}

/// <summary>What food is made of, as shares of its mass with a sum of 1.</summary>
/// <remarks>
/// <code>
/// c = sum of x ci                                                    (10)
/// rho = (1 - z) / (sum of x / ri)                                    (11)
/// v = x / ri / (sum of x / ri)                                       (12)
/// ks = 1 / (sum of v / ki),   kp = sum of v ki,   k = (ks + kp) / 2  (13)
/// </code>
/// <para>x: shares of water, protein, fat, carbohydrate without fibre, fibre and ash. ci, ri, ki: their specific heat, density
/// and conductivity, polynomials of the temperature. z: share of air in the volume, with 0.025 W/(m K). ks, kp: conductivity with the
/// parts one behind the other and side by side; the truth lies between. Range: 0 to 150 °C, unfrozen. Source: Choi and Okos (1986),
/// by several open implementations that differ in signs; the constants here reproduce the handbook table of specific heats of
/// vegetables to 0.006 kJ/(kg K). Water's constant is 4.1762; a printed 4.1289 does not reproduce it.</para>
/// </remarks>
public sealed record FoodComposition
{
    private const double AirConductivity = 0.025;

    private readonly double[] _shares;
    private readonly double _air;

    private FoodComposition(double[] shares, double air) => (_shares, _air) = (shares, air);

    /// <summary>Shares that are brought to a sum of 1.</summary>
    /// <param name="water">Water.</param>
    /// <param name="protein">Protein.</param>
    /// <param name="fat">Fat.</param>
    /// <param name="carbohydrate">Carbohydrate without fibre.</param>
    /// <param name="fibre">Fibre.</param>
    /// <param name="ash">Ash.</param>
    /// <param name="air">Share of the volume that is air.</param>
    public static FoodComposition Of(
        double water, double protein, double fat, double carbohydrate, double fibre, double ash, double air = 0)
    {
        double[] shares = [water, protein, fat, carbohydrate, fibre, ash];
        var sum = Guard.Positive(shares.Sum());
        return new([.. shares.Select(share => share / sum)], air);
    }

    /// <summary>Its properties at a temperature, with the lowest and highest conductivity that the parts allow. (10) to (13)</summary>
    /// <param name="celsius">Temperature. [°C]</param>
    public (FoodProperties Properties, double Series, double Parallel) At(double celsius)
    {
        var (t, t2) = (celsius, celsius * celsius);
        double[] heats =
        [
            4176.2 - 9.0864e-2 * t + 5.4731e-3 * t2,
            2008.2 + 1.2089 * t - 1.3129e-3 * t2,
            1984.2 + 1.4733 * t - 4.8008e-3 * t2,
            1548.8 + 1.9625 * t - 5.9399e-3 * t2,
            1845.9 + 1.8306 * t - 4.6509e-3 * t2,
            1092.6 + 1.8896 * t - 3.6817e-3 * t2,
        ];
        double[] densities =
        [
            997.18 + 3.1439e-3 * t - 3.7574e-3 * t2,
            1329.9 - 0.5184 * t,
            925.59 - 0.41757 * t,
            1599.1 - 0.31046 * t,
            1311.5 - 0.36589 * t,
            2423.8 - 0.28063 * t,
        ];
        double[] conductivities =
        [
            0.57109 + 1.7625e-3 * t - 6.7036e-6 * t2,
            0.17881 + 1.1958e-3 * t - 2.7178e-6 * t2,
            0.18071 - 2.7604e-4 * t - 1.7749e-7 * t2,
            0.20141 + 1.3874e-3 * t - 4.3312e-6 * t2,
            0.18331 + 1.2497e-3 * t - 3.1683e-6 * t2,
            0.32962 + 1.4011e-3 * t - 2.9069e-6 * t2,
        ];
        var (heat, volume) = (0.0, 0.0);
        for (var i = 0; i < _shares.Length; i++)
        {
            heat += _shares[i] * heats[i];
            volume += _shares[i] / densities[i];
        }

        var (resistance, parallel) = (_air / AirConductivity, _air * AirConductivity);
        for (var i = 0; i < _shares.Length; i++)
        {
            var part = (1 - _air) * _shares[i] / densities[i] / volume;
            resistance += part / conductivities[i];
            parallel += part * conductivities[i];
        }

        var series = 1 / resistance;
        return (new((series + parallel) / 2, (1 - _air) / volume, heat), series, parallel);
    }
}
