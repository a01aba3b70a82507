namespace StudioCalc.Maths;

/// <summary>What stands in the way of an exposure.</summary>
public enum ExposureObstacle
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The aperture would have to be wider than the lens opens.</summary>
    WidestAperture,

    /// <summary>The aperture would have to be smaller than the lens closes.</summary>
    SmallestAperture,

    /// <summary>The shutter speed would have to be faster than the camera allows.</summary>
    FastestShutterSpeed,

    /// <summary>The shutter speed would have to be slower than the slowest allowed.</summary>
    SlowestShutterSpeed,

    /// <summary>The ISO would have to be lower than the camera goes.</summary>
    LowestIso,

    /// <summary>The ISO would have to be higher than the camera goes.</summary>
    HighestIso,
}

/// <summary>What comes of solving for a setting.</summary>
public sealed record ExposureOutcome
{
    /// <summary>What stands in the way.</summary>
    public required ExposureObstacle Obstacle { get; init; }

    /// <summary>How far it stands in the way. [stops]</summary>
    public required double ShortfallStops { get; init; }

    /// <summary>F-number as given, or solved and kept within the limits.</summary>
    public required double FNumber { get; init; }

    /// <summary>Shutter speed as given, or solved and kept within the limits. [s]</summary>
    public required double ShutterSpeedS { get; init; }

    /// <summary>ISO as given, or solved and kept within the limits.</summary>
    public required double Iso { get; init; }

    /// <summary>What the settings give over what was asked for, the solved one at its mark; positive is more exposure. [stops]</summary>
    public required double RestStops { get; init; }

    /// <summary>Light lost by filters and close focus. [stops]</summary>
    public required double LensLossStops { get; init; }

    /// <summary>The f-number that the sensor sees, filters left out.</summary>
    public required double EffectiveFNumber { get; init; }
}
