namespace StudioCalc.Maths;

/// <summary>What is changed to reach a ratio while all else is held.</summary>
public enum BalanceVariable
{
    /// <summary>The flash head's power.</summary>
    FlashPower,

    /// <summary>The shutter speed.</summary>
    ShutterSpeed,
}

/// <summary>The light that an exposure is set for.</summary>
public enum PlacedLight
{
    /// <summary>The continuous back light.</summary>
    Back,

    /// <summary>The flash fill.</summary>
    Fill,
}

/// <summary>A continuous back light, a flash fill, a camera, and the ratio that is wanted.</summary>
public sealed record BalanceInput
{
    /// <summary>The back light alone, at the plate.</summary>
    public required LightLevel Back { get; init; }

    /// <summary>The fill alone, at the plate, at its present power: all its flashes together.</summary>
    public required FlashLevel Fill { get; init; }

    /// <summary>The wanted difference of back light over fill. [stops]</summary>
    public required double BackOverFillStops { get; init; }

    /// <summary>The light that the exposure is set for.</summary>
    public required PlacedLight Placed { get; init; }

    /// <summary>How far that light stands over the setting. [stops]</summary>
    public required double PlacedOverSettingStops { get; init; }

    /// <summary>The shutter speed that is held while the power changes. [s]</summary>
    public required double ShutterSpeedS { get; init; }

    /// <summary>The ISO that is held.</summary>
    public required double Iso { get; init; }

    /// <summary>Light lost in the lens. [stops]</summary>
    public double LensLossStops { get; init; }

    /// <summary>The scale of the camera's dials.</summary>
    public StopScale Scale { get; init; } = StopScale.Third;

    /// <summary>Present power of the first head below full. [stops]</summary>
    public required double PowerBelowFullStops { get; init; }

    /// <summary>Lowest power of the first head below full. [stops]</summary>
    public required double LowestPowerBelowFullStops { get; init; }

    /// <summary>The steps of the first head's power.</summary>
    public StopScale PowerScale { get; init; } = StopScale.Tenth;

    /// <summary>Further heads of the fill, which turn with the first one.</summary>
    public IReadOnlyList<FlashHead> FurtherHeads { get; init; } = [];

    /// <summary>Filters at hand, each by the light that it takes, not negative. [stops]</summary>
    public IReadOnlyList<double> FiltersAtHandStops { get; init; } = [];

    /// <summary>The fastest shutter speed at which flash covers the frame. [s]</summary>
    public required double SyncSpeedS { get; init; }

    /// <summary>The slowest shutter speed allowed; infinite when there is no limit. [s]</summary>
    public double SlowestShutterSpeedS { get; init; } = double.PositiveInfinity;

    /// <summary>The widest aperture of the lens.</summary>
    public required double WidestFNumber { get; init; }

    /// <summary>The smallest aperture of the lens.</summary>
    public required double SmallestFNumber { get; init; }

    /// <summary>The lowest ISO; 0 when there is no limit.</summary>
    public double LowestIso { get; init; }

    /// <summary>The highest ISO; infinite when there is no limit.</summary>
    public double HighestIso { get; init; } = double.PositiveInfinity;
}
