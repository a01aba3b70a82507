using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Water vapour in the air of a room.</summary>
/// <remarks>
/// <code>
/// es(t) = 6.112 exp(17.62 t / (243.12 + t))                          (1)
/// g     = ln(RH) + 17.62 t / (243.12 + t),   td = 243.12 g / (17.62 - g)   (2)
/// es(tw) - 0.000653 (1 + 0.000944 tw) p (t - tw) = RH es(t)          (3)
/// es'(ts) (ts - t) = es(ts) - RH es(t)                               (4)
/// w     = 0.62198 e / (p - 0.37802 e)                                (5)
/// </code>
/// <para>es: saturation vapour pressure over water, in hPa. t: temperature in °C. RH: relative humidity. td: dew point. tw:
/// wet-bulb temperature, by the psychrometer's equation. ts: the lowest temperature of a wet surface over which the mixing line
/// to the room crosses saturation, so that steam can show. w: mass of vapour in a mass of moist air. p: 1013.25 hPa. Range of
/// (1): -45 to 60 °C; 1.2 % high at 80. Source: WMO-No. 8, Annex 4.B, seen in a weather-station manual; (3) Sonntag (1990) after
/// Assmann, from memory.</para>
/// </remarks>
/// <param name="TemperatureCelsius">Temperature t. [°C]</param>
/// <param name="RelativeHumidity">Relative humidity RH, from 0 to 1.</param>
public readonly record struct HumidAir(double TemperatureCelsius, double RelativeHumidity)
{
    /// <summary>Air pressure at sea level. [hPa]</summary>
    public const double PressureHpa = 1013.25;

    /// <summary>Pressure of its vapour e. [hPa]</summary>
    public double VapourHpa => RelativeHumidity * SaturationHpa(TemperatureCelsius);

    /// <summary>Dew point td; minus infinity in dry air. (2) [°C]</summary>
    public double DewPointCelsius
    {
        get
        {
            var g = Log(RelativeHumidity) + 17.62 * TemperatureCelsius / (243.12 + TemperatureCelsius);
            return double.IsNegativeInfinity(g) ? g : 243.12 * g / (17.62 - g);
        }
    }

    /// <summary>Wet-bulb temperature tw. (3) [°C]</summary>
    public double WetBulbCelsius
    {
        get
        {
            var (t, e) = (TemperatureCelsius, VapourHpa);
            return Root.Find(tw => SaturationHpa(tw) - 0.000653 * (1 + 0.000944 * tw) * PressureHpa * (t - tw) - e, t - 60, t);
        }
    }

    /// <summary>Lowest temperature of a wet surface from which steam can show; null if none up to 100 does. (4) [°C]</summary>
    public double? SteamFromCelsius
    {
        get
        {
            var (t, e) = (TemperatureCelsius, VapourHpa);
            double Excess(double ts) => SaturationSlope(ts) * (ts - t) - (SaturationHpa(ts) - e);
            return RelativeHumidity >= 1 ? t : Excess(100) <= 0 ? null : Root.Find(Excess, t, 100);
        }
    }

    /// <summary>Saturation vapour pressure over water. (1) [hPa]</summary>
    /// <param name="celsius">Temperature. [°C]</param>
    public static double SaturationHpa(double celsius) => 6.112 * Exp(17.62 * celsius / (243.12 + celsius));

    /// <summary>Mass of vapour in a mass of moist air. (5)</summary>
    /// <param name="vapourHpa">Pressure of the vapour. [hPa]</param>
    public static double MassShare(double vapourHpa) => 0.62198 * vapourHpa / (PressureHpa - 0.37802 * vapourHpa);

    private static double SaturationSlope(double celsius) =>
        SaturationHpa(celsius) * 17.62 * 243.12 / ((243.12 + celsius) * (243.12 + celsius));
}
