namespace StudioCalc.V1;

public sealed partial class Reading
{
    /// <summary>Light that stays on, for which the meter showed <paramref name="settings"/>.</summary>
    public static Reading Of(CameraSettings settings) => new() { Continuous = new() { Settings = settings } };

    /// <summary>Flash alone, for which the meter showed the mark <paramref name="aperture"/> at <paramref name="iso"/>.</summary>
    public static Reading OfFlash(string aperture, string iso) => new()
    {
        Flash = new() { Settings = new() { Aperture = Aperture.At(aperture), Iso = Iso.At(iso) } },
    };
}

public sealed partial class FlashPower
{
    /// <summary>A fraction of full power, such as <c>1/8</c>.</summary>
    public static FlashPower At(string fraction) => new() { Fraction = fraction };
}
