using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a surface loses to the room: by convection, radiation and evaporation.</summary>
/// <remarks>
/// <code>
/// qc = hc (T - Ta)                                                   (6)
/// qr = eps sigma ((T + 273.15)^4 - (Tw + 273.15)^4)                  (7)
/// B  = (ws - wa) / (1 - ws),   m = hc / (cp Le^(2/3)) ln(1 + B)      (8)
/// qe = y m (2500900 - 2369 T)                                        (9)
/// </code>
/// <para>T, Ta, Tw: temperature of surface, air and walls in °C. hc: coefficient of convection. eps: 0.95, sigma:
/// 5.670374419e-8. ws, wa: vapour in saturated air at the surface, times the water's activity, and in the room, <see cref="HumidAir"/>
/// (5). m: evaporation in kg/(m² s); negative where water condenses. cp: 1007 J/(kg K). Le: 0.865. y: wetness from 0 to 1. Where
/// T passes 90 °C the vapour is held at its value there: B runs away near boiling. Source: Chilton and Colburn's analogy with Stefan
/// flow, standard texts, from memory. The form without the logarithm is 12 % low at 70 °C.</para>
/// </remarks>
/// <param name="Air">The air.</param>
/// <param name="WallsCelsius">Temperature of the walls. [°C]</param>
/// <param name="Convection">Coefficient hc. [W/(m² K)]</param>
/// <param name="Wetness">Wetness y, from 0 to 1.</param>
/// <param name="WaterActivity">Activity of the surface's water: 1 free water, 0.98 meat.</param>
public readonly record struct SurfaceLoss(
    HumidAir Air, double WallsCelsius, double Convection, double Wetness = 0, double WaterActivity = 1)
{
    private const double Emissivity = 0.95;
    private const double StefanBoltzmann = 5.670374419e-8;
    private const double AirSpecificHeat = 1007;
    private const double Lewis = 0.865;
    private const double HottestVapourCelsius = 90;

    private double Transfer => Convection / (AirSpecificHeat * Pow(Lewis, 2.0 / 3));

    /// <summary>Loss by convection. (6) [W/m²]</summary>
    public double ConvectionAt(double celsius) => Convection * (celsius - Air.TemperatureCelsius);

    /// <summary>Loss by radiation. (7) [W/m²]</summary>
    public double RadiationAt(double celsius) => Emissivity * StefanBoltzmann * (Fourth(celsius) - Fourth(WallsCelsius));

    /// <summary>Water that evaporates from a wholly wet surface. (8) [kg/(m² s)]</summary>
    public double VapourAt(double celsius)
    {
        var ws = HumidAir.MassShare(WaterActivity * HumidAir.SaturationHpa(Min(celsius, HottestVapourCelsius)));
        var wa = HumidAir.MassShare(Air.VapourHpa);
        return Transfer * Log(1 + (ws - wa) / (1 - ws));
    }

    /// <summary>The same where little evaporates or condenses, without the logarithm. [kg/(m² s)]</summary>
    public double LowRateVapourAt(double celsius) => Transfer
        * (HumidAir.MassShare(WaterActivity * HumidAir.SaturationHpa(celsius)) - HumidAir.MassShare(Air.VapourHpa));

    /// <summary>Loss by evaporation; negative where water condenses. (9) [W/m²]</summary>
    public double EvaporationAt(double celsius) =>
        Wetness == 0 ? 0 : Wetness * VapourAt(celsius) * LatentHeat(celsius);

    /// <summary>All of it. [W/m²]</summary>
    public double At(double celsius) => ConvectionAt(celsius) + RadiationAt(celsius) + EvaporationAt(celsius);

    /// <summary>The temperature at which the surface loses nothing. [°C]</summary>
    public double SettlesAtCelsius
    {
        get
        {
            var loss = this;
            return Root.Find(
                t => loss.At(t), Min(Air.TemperatureCelsius, WallsCelsius) - 60, Max(Air.TemperatureCelsius, WallsCelsius) + 60);
        }
    }

    /// <summary>Heat that it takes to evaporate water. [J/kg]</summary>
    public static double LatentHeat(double celsius) => 2500900 - 2369 * celsius;

    private static double Fourth(double celsius)
    {
        var kelvin = celsius + 273.15;
        return kelvin * kelvin * kelvin * kelvin;
    }
}
