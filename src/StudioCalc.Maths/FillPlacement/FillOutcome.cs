namespace StudioCalc.Maths;

/// <summary>Why a pair of power and distance does not serve, or why none does.</summary>
public enum FillObstacle
{
    /// <summary>It serves.</summary>
    None,

    /// <summary>It would have to be nearer than allowed.</summary>
    NearestDistance,

    /// <summary>It would have to be further than allowed.</summary>
    FarthestDistance,

    /// <summary>No listed distance comes within the band.</summary>
    ListedDistances,

    /// <summary>The source looks too small.</summary>
    Subtense,

    /// <summary>The fall-off is too much.</summary>
    FallOff,

    /// <summary>The highest power gives too little.</summary>
    HighestPower,

    /// <summary>The lowest power gives too much.</summary>
    LowestPower,

    /// <summary>The receiver gets none of the light from anywhere allowed.</summary>
    Dark,
}

/// <summary>A power, and where the source then stands.</summary>
public sealed record FillWay
{
    /// <summary>The power, in stops below full. [stops]</summary>
    public required double BelowFullStops { get; init; }

    /// <summary>The line that it stands on, looked through.</summary>
    public required LineScan Scan { get; init; }

    /// <summary>Where it stands.</summary>
    public required SolvedPlace Place { get; init; }

    /// <summary>How soft and even the light is.</summary>
    public required FillSoftness Softness { get; init; }

    /// <summary>The straight way from where the centre of the face is now. [mm]</summary>
    public required double MovementMm { get; init; }

    /// <summary>Height of the lowest part of the face over the table. [mm]</summary>
    public required double LowestMm { get; init; }

    /// <summary>Elevation over the table, from the aim point. [deg]</summary>
    public double ElevationDeg => Math.Asin(Math.Clamp(Scan.Line.Direction.Z, -1, 1)) * 180 / Math.PI;

    /// <summary>Azimuth from the aim point: 0 is the front, 90 the right; 0 straight above. [deg]</summary>
    public double AzimuthDeg => Math.Abs(Scan.Line.Direction.X) + Math.Abs(Scan.Line.Direction.Y) < 1e-12
        ? 0
        : Math.Atan2(Scan.Line.Direction.X, -Scan.Line.Direction.Y) * 180 / Math.PI;
}

/// <summary>A pair that gives the wanted light and does not serve.</summary>
/// <param name="Obstacle">Why.</param>
/// <param name="Way">The pair.</param>
public sealed record FillLeftOut(FillObstacle Obstacle, FillWay Way);

/// <summary>Ways to place a fill, or why there are none.</summary>
/// <param name="Obstacle">Why there are none.</param>
/// <param name="Ways">Every way, in order of the preference.</param>
/// <param name="LeftOut">Pairs that do not serve, from the highest power.</param>
/// <param name="Nearest">Without any way, the nearest; null without light.</param>
/// <param name="ShortfallStops">How far the nearest is from the wanted light, not negative; null without light.</param>
public sealed record FillOutcome(
    FillObstacle Obstacle, IReadOnlyList<FillWay> Ways, IReadOnlyList<FillLeftOut> LeftOut, FillWay? Nearest, double? ShortfallStops);
