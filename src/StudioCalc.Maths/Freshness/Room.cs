namespace StudioCalc.Maths;

/// <summary>How well the air of a room takes heat.</summary>
public enum AirMovement
{
    /// <summary>By its speed; 0 stands still.</summary>
    Speed,

    /// <summary>By a given coefficient of convection; radiation and evaporation come on top.</summary>
    Convection,

    /// <summary>By a given coefficient of the whole loss.</summary>
    Total,
}

/// <summary>The room that food cools or warms in.</summary>
/// <param name="Air">Its air.</param>
/// <param name="WallsCelsius">Temperature of walls and ceiling. [°C]</param>
/// <param name="Movement">How its air takes heat.</param>
/// <param name="Value">The speed or the coefficient. [m/s, or W/(m² K)]</param>
public sealed record Room(HumidAir Air, double WallsCelsius, AirMovement Movement, double Value)
{
    /// <summary>The loss of a surface at a temperature.</summary>
    /// <param name="celsius">The temperature. [°C]</param>
    /// <param name="form">The form of the surface.</param>
    /// <param name="sizeMm">Its size. [mm]</param>
    /// <param name="wetness">How much of it is wet, from 0 to 1; 0 with a total coefficient.</param>
    /// <param name="waterActivity">Activity of its water.</param>
    public SurfaceLoss SurfaceAt(double celsius, FlowForm form, double sizeMm, double wetness, double waterActivity) => new(
        Air,
        WallsCelsius,
        Movement == AirMovement.Speed
            ? AirFlow.Coefficient(form, sizeMm, celsius, Air.TemperatureCelsius, Value)
            : Value,
        wetness,
        waterActivity);

    /// <summary>The loss of a surface as a function of its temperature. [W/m²]</summary>
    /// <param name="form">The form of the surface.</param>
    /// <param name="sizeMm">Its size. [mm]</param>
    /// <param name="wetness">How much of it is wet.</param>
    /// <param name="waterActivity">Activity of its water.</param>
    public Func<double, double> Loss(FlowForm form, double sizeMm, double wetness, double waterActivity) => Movement switch
    {
        AirMovement.Total => celsius => Value * (celsius - Air.TemperatureCelsius),
        AirMovement.Convection => new SurfaceLoss(Air, WallsCelsius, Value, wetness, waterActivity).At,
        _ => celsius => SurfaceAt(celsius, form, sizeMm, wetness, waterActivity).At(celsius),
    };
}
