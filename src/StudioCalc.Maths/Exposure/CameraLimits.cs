namespace StudioCalc.Maths;

/// <summary>How far a camera and its lens can be set, as exact values behind their marks.</summary>
public sealed record CameraLimits
{
    /// <summary>F-number of the widest aperture.</summary>
    public double WidestFNumber { get; init; } = Marks.Aperture.Find("0.7", StopScale.Whole)!.Value;

    /// <summary>F-number of the smallest aperture.</summary>
    public double SmallestFNumber { get; init; } = Marks.Aperture.Find("90", StopScale.Whole)!.Value;

    /// <summary>The fastest shutter speed; 0 when nothing limits it. [s]</summary>
    public double FastestShutterSpeedS { get; init; }

    /// <summary>The slowest shutter speed; infinite when nothing limits it. [s]</summary>
    public double SlowestShutterSpeedS { get; init; } = double.PositiveInfinity;

    /// <summary>The fastest shutter speed at which flash covers the frame; null when it is not known. [s]</summary>
    public double? SyncSpeedS { get; init; }

    /// <summary>The lowest ISO; 0 when nothing limits it.</summary>
    public double LowestIso { get; init; }

    /// <summary>The highest ISO; infinite when nothing limits it.</summary>
    public double HighestIso { get; init; } = double.PositiveInfinity;
}
