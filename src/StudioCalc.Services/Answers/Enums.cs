using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Shared enums between contract and maths. The checks have let only known values in.</summary>
internal static class Enums
{
    public static Maths.StopScale ToMaths(this StopScale scale) => scale switch
    {
        StopScale.Whole => Maths.StopScale.Whole,
        StopScale.Half => Maths.StopScale.Half,
        StopScale.Third => Maths.StopScale.Third,
        StopScale.Tenth => Maths.StopScale.Tenth,
        _ => throw new ArgumentOutOfRangeException(nameof(scale)),
    };

    public static StopScale ToContract(this Maths.StopScale scale) => scale switch
    {
        Maths.StopScale.Whole => StopScale.Whole,
        Maths.StopScale.Half => StopScale.Half,
        Maths.StopScale.Third => StopScale.Third,
        Maths.StopScale.Tenth => StopScale.Tenth,
        _ => throw new ArgumentOutOfRangeException(nameof(scale)),
    };

    public static Maths.Receptor ToMaths(this Receptor receptor) => receptor switch
    {
        Receptor.Reflected => Maths.Receptor.Reflected,
        Receptor.Flat => Maths.Receptor.Flat,
        Receptor.Dome => Maths.Receptor.Dome,
        _ => throw new ArgumentOutOfRangeException(nameof(receptor)),
    };

    public static Receptor ToContract(this Maths.Receptor receptor) => receptor switch
    {
        Maths.Receptor.Reflected => Receptor.Reflected,
        Maths.Receptor.Flat => Receptor.Flat,
        Maths.Receptor.Dome => Receptor.Dome,
        _ => throw new ArgumentOutOfRangeException(nameof(receptor)),
    };
}
