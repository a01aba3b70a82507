namespace StudioCalc.V1;

public sealed partial class Aperture
{
    /// <summary>The aperture marked so on the lens, such as <c>f/5.6</c>.</summary>
    public static Aperture At(string mark) => new() { Mark = mark };
}

public sealed partial class ShutterSpeed
{
    /// <summary>The shutter speed marked so on the camera, such as <c>1/125</c> or <c>30 s</c>.</summary>
    public static ShutterSpeed At(string mark) => new() { Mark = mark };
}

public sealed partial class Iso
{
    /// <summary>The ISO speed marked so on the camera, such as <c>100</c>.</summary>
    public static Iso At(string mark) => new() { Mark = mark };
}

public sealed partial class CameraSettings
{
    /// <summary>Settings by their marks, such as <c>f/8</c>, <c>1/125</c> and <c>100</c>.</summary>
    public static CameraSettings Of(string aperture, string shutterSpeed, string iso) => new()
    {
        Aperture = Aperture.At(aperture),
        ShutterSpeed = ShutterSpeed.At(shutterSpeed),
        Iso = Iso.At(iso),
    };
}
