namespace StudioCalc.Maths;

/// <summary>What stands in front of a meter's cell.</summary>
public enum Receptor
{
    /// <summary>Reflected light: the meter looks at the subject.</summary>
    Reflected,

    /// <summary>Incident light on a flat disc.</summary>
    Flat,

    /// <summary>Incident light on a dome.</summary>
    Dome,
}

/// <summary>Calibration constants of meters.</summary>
/// <remarks>Reflected light in cd s/m², incident light in lx s, both per unit of arithmetic ISO speed. Ranges: ISO 2720:1974
/// as quoted in Wikipedia, "Light meter" (the standard's own text not seen). 14 for reflected light is in use although it
/// lies outside the range.</remarks>
public static class MeterCalibration
{
    /// <summary>The constant in use when a meter states none: 12.5, 250 or 330.</summary>
    public static double Default(this Receptor receptor) => receptor switch
    {
        Receptor.Reflected => 12.5,
        Receptor.Flat => 250,
        Receptor.Dome => 330,
        _ => throw new ArgumentOutOfRangeException(nameof(receptor)),
    };

    /// <summary>Whether a constant lies within the range that ISO 2720:1974 recommends.</summary>
    public static bool IsRecommended(this Receptor receptor, double constant) => receptor switch
    {
        Receptor.Reflected => constant is >= 10.6 and <= 13.4,
        Receptor.Flat => constant is >= 240 and <= 400,
        Receptor.Dome => constant is >= 320 and <= 540,
        _ => throw new ArgumentOutOfRangeException(nameof(receptor)),
    };
}
