namespace StudioCalc.Maths;

/// <summary>The steps in which a dial, a ring or a meter is marked.</summary>
public enum StopScale
{
    /// <summary>Whole stops.</summary>
    Whole,

    /// <summary>Half stops.</summary>
    Half,

    /// <summary>Third stops.</summary>
    Third,

    /// <summary>Tenths of a stop. Apertures show a whole-stop mark and a digit; shutter speeds and ISO fall back on thirds.</summary>
    Tenth,
}

/// <summary>Arithmetic of <see cref="StopScale"/>.</summary>
public static class StopScales
{
    /// <summary>Steps to one stop: 1, 2, 3 or 10.</summary>
    public static int StepsPerStop(this StopScale scale) => scale switch
    {
        StopScale.Whole => 1,
        StopScale.Half => 2,
        StopScale.Third => 3,
        StopScale.Tenth => 10,
        _ => throw new ArgumentOutOfRangeException(nameof(scale)),
    };
}
