using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Aperture, shutter speed and ISO, as exact values behind their marks.</summary>
/// <remarks>Made by the constructor; the default value has no settings and every member throws or is not a number.</remarks>
public readonly record struct CameraSettings
{
    /// <summary>Makes settings.</summary>
    /// <param name="fNumber">Set f-number, above 0.</param>
    /// <param name="shutterSpeedS">Exposure time in seconds, above 0.</param>
    /// <param name="iso">Arithmetic ISO speed, above 0.</param>
    public CameraSettings(double fNumber, double shutterSpeedS, double iso)
    {
        FNumber = Guard.Positive(fNumber);
        ShutterSpeedS = Guard.Positive(shutterSpeedS);
        Iso = Guard.Positive(iso);
    }

    /// <summary>Set f-number.</summary>
    public double FNumber { get; }

    /// <summary>Exposure time. [s]</summary>
    public double ShutterSpeedS { get; }

    /// <summary>Arithmetic ISO speed.</summary>
    public double Iso { get; }
}
