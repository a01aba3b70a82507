namespace StudioCalc.Maths;

/// <summary>The shape of a plate, bowl or glass.</summary>
public sealed record VesselShape
{
    /// <summary>Whether it is rectangular rather than round or oval.</summary>
    public bool IsRectangle { get; init; }

    /// <summary>Inner width of the rim, positive. [mm]</summary>
    public required double RimWidthMm { get; init; }

    /// <summary>Inner depth of the rim, positive. [mm]</summary>
    public required double RimDepthMm { get; init; }

    /// <summary>Width of the floor over that of the rim, above 0, up to 1.</summary>
    public double FloorShare { get; init; } = 1;

    /// <summary>Height of the rim over the base, above the floor's. [mm]</summary>
    public required double RimHeightMm { get; init; }

    /// <summary>Height of the floor over the base, not negative. [mm]</summary>
    public double FloorHeightMm { get; init; }

    /// <summary>Height of the content's surface over the base, from the floor to the rim. [mm]</summary>
    public double ContentHeightMm { get; init; }

    /// <summary>Whether one looks through its walls.</summary>
    public bool HasClearWalls { get; init; }
}
