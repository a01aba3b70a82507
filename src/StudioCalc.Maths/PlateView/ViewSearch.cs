namespace StudioCalc.Maths;

/// <summary>Which views are looked at, and what a good one is worth.</summary>
public sealed record ViewSearch
{
    /// <summary>What stands on the table, with the plate as it is.</summary>
    public required ViewScene Scene { get; init; }

    /// <summary>The camera; its azimuth and elevation are searched.</summary>
    public required ViewGeometry Camera { get; init; }

    /// <summary>How much each component matters, from 0 to 1, at least one above 0; those of 0 need not show.</summary>
    public required IReadOnlyList<double> Importances { get; init; }

    /// <summary>The main component.</summary>
    public required int Main { get; init; }

    /// <summary>Which things stay when the plate turns: components first.</summary>
    public required IReadOnlyList<bool> Stays { get; init; }

    /// <summary>Elevations. [deg]</summary>
    public required IReadOnlyList<double> ElevationsDeg { get; init; }

    /// <summary>Azimuths. [deg]</summary>
    public required IReadOnlyList<double> AzimuthsDeg { get; init; }

    /// <summary>Turns of the plate. [deg]</summary>
    public required IReadOnlyList<double> TurnsDeg { get; init; }

    /// <summary>The weights, not all 0; 0 for parts without a subject.</summary>
    public required ViewWeights Weights { get; init; }

    /// <summary>Share of each component that must show.</summary>
    public required double LeastShare { get; init; }

    /// <summary>Depth of field; may be infinite. [mm]</summary>
    public double SharpMm { get; init; } = double.PositiveInfinity;

    /// <summary>Lowest height of the entrance pupil. [mm]</summary>
    public double LowestMm { get; init; } = double.NegativeInfinity;

    /// <summary>Greatest height of the entrance pupil. [mm]</summary>
    public double HighestMm { get; init; } = double.PositiveInfinity;

    /// <summary>How many views are wanted, at least 1.</summary>
    public int Count { get; init; } = 3;

    /// <summary>How far they differ at least. [deg]</summary>
    public double LeastDifferenceDeg { get; init; } = 15;

    /// <summary>How many views there are.</summary>
    public int Views => TurnsDeg.Count * ElevationsDeg.Count * AzimuthsDeg.Count;

    /// <summary>The view at a place of the list, by turn, elevation and azimuth.</summary>
    public ViewPlace At(int view) => new(
        ElevationsDeg[view / AzimuthsDeg.Count % ElevationsDeg.Count],
        AzimuthsDeg[view % AzimuthsDeg.Count],
        TurnsDeg[view / AzimuthsDeg.Count / ElevationsDeg.Count]);

    /// <summary>Whether a camera keeps the heights; a far one always does.</summary>
    public bool KeepsHeights(ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(camera);
        return camera.DistanceMm is null || (camera.Eye.Z >= LowestMm && camera.Eye.Z <= HighestMm);
    }

    /// <summary>The scene with the plate turned.</summary>
    public ViewScene Turned(double turnDeg) => turnDeg == 0 ? Scene : Scene.Turned(turnDeg, Stays);
}

/// <summary>A view: from where, and with the plate turned how far.</summary>
/// <param name="ElevationDeg">Elevation. [deg]</param>
/// <param name="AzimuthDeg">Azimuth. [deg]</param>
/// <param name="TurnDeg">Turn of the plate, counter-clockwise seen from above. [deg]</param>
public readonly record struct ViewPlace(double ElevationDeg, double AzimuthDeg, double TurnDeg)
{
    /// <summary>Angle between the lines of sight of two views over the plate, which takes its turn along. (47) [deg]</summary>
    public double AngleTo(ViewPlace other)
    {
        var (a, b) = (OverPlate, other.OverPlate);
        return Math.Atan2(a.Cross(b).Length, a.Dot(b)) * 180 / Math.PI;
    }

    private Vector OverPlate => Vector.Towards(AzimuthDeg - TurnDeg, ElevationDeg);
}
