namespace StudioCalc.Maths;

/// <summary>What stands in the way of a ratio.</summary>
public enum BalanceObstacle
{
    /// <summary>Nothing: the ratio is reached.</summary>
    None,

    /// <summary>The shutter speed would have to be faster than the sync speed.</summary>
    SyncSpeed,

    /// <summary>The shutter speed would have to be slower than the slowest allowed.</summary>
    SlowestShutterSpeed,

    /// <summary>The flash would have to give more than full power.</summary>
    FullPower,

    /// <summary>The flash would have to give less than its lowest power.</summary>
    LowestPower,

    /// <summary>The aperture would have to be wider than the lens opens.</summary>
    WidestAperture,

    /// <summary>The aperture would have to be smaller than the lens closes.</summary>
    SmallestAperture,
}

/// <summary>Settings, what they give, and what stood in the way. Figures hold for marks and power steps as set.</summary>
public sealed record BalanceOutcome
{
    // Half of what a handheld meter tells.
    private const double LeastRestStops = 0.05;

    /// <summary>What stood in the way. Unless it is <see cref="BalanceObstacle.None"/>, the rest is the nearest to be had.</summary>
    public required BalanceObstacle Obstacle { get; init; }

    /// <summary>How far it stood in the way; 0 when nothing did. [stops]</summary>
    public required double ShortfallStops { get; init; }

    /// <summary>The f-number to set: the nearest mark, or a limit of the lens.</summary>
    public required double FNumber { get; init; }

    /// <summary>The shutter speed to set. [s]</summary>
    public required double ShutterSpeedS { get; init; }

    /// <summary>Power of the first head below full. [stops]</summary>
    public required double PowerBelowFullStops { get; init; }

    /// <summary>Change of the power of every head; positive is brighter. [stops]</summary>
    public required double PowerChangeStops { get; init; }

    /// <summary>Steps of the first head to turn the power by; positive is brighter.</summary>
    public required int PowerSteps { get; init; }

    /// <summary>The fill after the change.</summary>
    public required FlashLevel Fill { get; init; }

    /// <summary>Light gained by the light that the variable acts on. [stops]</summary>
    public required double ChangeStops { get; init; }

    /// <summary>The back light over the setting. [stops]</summary>
    public required double BackOverSettingStops { get; init; }

    /// <summary>The fill over the setting. [stops]</summary>
    public required double FillOverSettingStops { get; init; }

    /// <summary>A surface lit by both, over the setting. [stops]</summary>
    public required double BothOverSettingStops { get; init; }

    /// <summary>The back light over the fill. [stops]</summary>
    public required double BackOverFillStops { get; init; }

    /// <summary>The asked difference less the one reached. [stops]</summary>
    public required double RestStops { get; init; }

    /// <summary>New distance over old of the flash that takes up the rest, by inverse square; null where nothing worth a
    /// move is left, or the ratio is not reached. (31)</summary>
    public double? RestDistanceFactor => Obstacle == BalanceObstacle.None && Math.Abs(RestStops) >= LeastRestStops
        ? Math.Pow(2, RestStops / 2)
        : null;

    /// <summary>The difference as ratios.</summary>
    public required LightingRatio Ratio { get; init; }
}
