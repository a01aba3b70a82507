namespace StudioCalc.Maths;

/// <summary>What stands in the way of a flash exposure.</summary>
public enum FlashObstacle
{
    /// <summary>Nothing: it is reached.</summary>
    None,

    /// <summary>The flash would have to give more than full power.</summary>
    FullPower,

    /// <summary>The flash would have to give less than its lowest power.</summary>
    LowestPower,

    /// <summary>The aperture would have to be wider than the lens opens.</summary>
    WidestAperture,

    /// <summary>The aperture would have to be smaller than the lens closes.</summary>
    SmallestAperture,

    /// <summary>The ISO would have to be lower than the camera goes.</summary>
    LowestIso,

    /// <summary>The ISO would have to be higher than the camera goes.</summary>
    HighestIso,

    /// <summary>The other units alone give as much as was asked for, or more.</summary>
    OtherUnits,

    /// <summary>More than <see cref="FlashInput.MostPops"/> pops would be needed.</summary>
    MostPops,

    /// <summary>One pop already gives more than a stop too much.</summary>
    OnePop,
}

/// <summary>A flash exposure as set, and what stood in the way.</summary>
public sealed record FlashOutcome
{
    /// <summary>What stood in the way. Unless it is <see cref="FlashObstacle.None"/>, the rest is the nearest to be had.</summary>
    public required FlashObstacle Obstacle { get; init; }

    /// <summary>How far it stood in the way; 0 when nothing did. [stops]</summary>
    public required double ShortfallStops { get; init; }

    /// <summary>The exact f-number, within the lens's limits.</summary>
    public required double FNumber { get; init; }

    /// <summary>The exact ISO, within the camera's limits.</summary>
    public required double Iso { get; init; }

    /// <summary>Pops of every unit.</summary>
    public required int Pops { get; init; }

    /// <summary>The first units as set; null when they are switched off.</summary>
    public required FlashUnit? First { get; init; }

    /// <summary>The square of the f-number that one pop of the first units asks for at ISO 100; 0 when switched off.</summary>
    public required double FirstFNumberSquared { get; init; }

    /// <summary>The square of the f-number that one pop of the other units asks for at ISO 100.</summary>
    public required double OthersFNumberSquared { get; init; }

    /// <summary>The square of the f-number at ISO 100 that one pop of all units should ask for.</summary>
    public required double NeededFNumberSquared { get; init; }

    /// <summary>Guide number of one pop of all units, seen at the first; null when it is switched off. [m]</summary>
    public required double? GuideNumberM { get; init; }

    /// <summary>Stored energy of one of the first units for one pop; null when not known. [J]</summary>
    public required double? EnergyJ { get; init; }

    /// <summary>Luminous exposure at the subject by all pops. [lx s]</summary>
    public required double ExposureLxS { get; init; }

    /// <summary>What the settings give over what was asked for. [stops]</summary>
    public required double RestStops { get; init; }
}
