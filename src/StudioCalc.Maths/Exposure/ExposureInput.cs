namespace StudioCalc.Maths;

/// <summary>The setting that is solved for.</summary>
public enum ExposureUnknown
{
    /// <summary>The aperture.</summary>
    Aperture,

    /// <summary>The shutter speed.</summary>
    ShutterSpeed,

    /// <summary>The ISO.</summary>
    Iso,
}

/// <summary>A light, two settings, and what the third may be.</summary>
public sealed record ExposureInput
{
    /// <summary>The light to expose for.</summary>
    public required LightLevel Light { get; init; }

    /// <summary>Which setting is solved for; its own value here is not used.</summary>
    public required ExposureUnknown Unknown { get; init; }

    /// <summary>Set f-number.</summary>
    public double FNumber { get; init; } = 1;

    /// <summary>Set shutter speed. [s]</summary>
    public double ShutterSpeedS { get; init; } = 1;

    /// <summary>Set arithmetic ISO speed.</summary>
    public double Iso { get; init; } = 100;

    /// <summary>Exposure over what the light asks for; positive is more. [stops]</summary>
    public double CompensationStops { get; init; }

    /// <summary>Light lost in filters on the lens. [stops]</summary>
    public double FilterLossStops { get; init; }

    /// <summary>Light lost by focusing close. [stops]</summary>
    public double CloseUpLossStops { get; init; }

    /// <summary>The steps of the camera's dials.</summary>
    public StopScale Scale { get; init; } = StopScale.Third;

    /// <summary>How far the camera can be set.</summary>
    public CameraLimits Limits { get; init; } = new();
}
