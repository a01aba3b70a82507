namespace StudioCalc.Maths;

/// <summary>What comes first among the ways to place a fill.</summary>
public enum FillPreference
{
    /// <summary>The larger source as seen from the receiver.</summary>
    Softer,

    /// <summary>The least fall-off over the flat plate.</summary>
    MoreEven,

    /// <summary>The least way from where the source stands.</summary>
    LeastMovement,
}

/// <summary>What a fill is planned with.</summary>
public sealed record FillInput
{
    /// <summary>The face where it stands now.</summary>
    public required LightFace Face { get; init; }

    /// <summary>The point that it faces. [mm]</summary>
    public required Vector Aim { get; init; }

    /// <summary>Its turn about the line to that point. [deg]</summary>
    public double RollDeg { get; init; }

    /// <summary>The receiver.</summary>
    public required LineReceiver Receiver { get; init; }

    /// <summary>Directions in which it may stand, from its aim point; none for the one now. [deg]</summary>
    public IReadOnlyList<(double ElevationDeg, double AzimuthDeg)> Directions { get; init; } = [];

    /// <summary>The powers that the head has, in stops below full. [stops]</summary>
    public required IReadOnlyList<double> PowersBelowFullStops { get; init; }

    /// <summary>Strength k of the source at full power, see <see cref="SourceLevel"/>.</summary>
    public required double FullStrength { get; init; }

    /// <summary>The wanted exposure at the receiver. [lx s]</summary>
    public required double WantedLxS { get; init; }

    /// <summary>The nearest distance allowed. [mm]</summary>
    public double NearestMm { get; init; } = DistanceSolver.LeastMm;

    /// <summary>The farthest. [mm]</summary>
    public double FarthestMm { get; init; } = DistanceSolver.MostMm;

    /// <summary>The only distances allowed, in place of the range; null for a range. [mm]</summary>
    public IReadOnlyList<double>? DistancesMm { get; init; }

    /// <summary>The band about a distance, by which a listed one may miss. [stops]</summary>
    public required double BandStops { get; init; }

    /// <summary>Diameter of the plate. [mm]</summary>
    public required double PlateDiameterMm { get; init; }

    /// <summary>Height of an edge whose shadow is told. [mm]</summary>
    public double? EdgeHeightMm { get; init; }

    /// <summary>What comes first.</summary>
    public FillPreference Preference { get; init; }

    /// <summary>The least subtense that serves. [deg]</summary>
    public double? LeastSubtenseDeg { get; init; }

    /// <summary>The largest fall-off from front to back of the flat plate that serves. [stops]</summary>
    public double? LargestFallOffStops { get; init; }

    /// <summary>The allowed distance nearest to one.</summary>
    public double AllowedMm(double distanceMm) => DistancesMm is { } list
        ? list.MinBy(allowed => Math.Abs(Math.Log(distanceMm / allowed)))
        : Math.Clamp(distanceMm, NearestMm, FarthestMm);
}
