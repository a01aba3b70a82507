namespace StudioCalc.Maths;

/// <summary>What a flash calculation solves for.</summary>
public enum FlashUnknown
{
    /// <summary>The aperture.</summary>
    Aperture,

    /// <summary>The ISO.</summary>
    Iso,

    /// <summary>The distance of the first units.</summary>
    Distance,

    /// <summary>The power of the first units.</summary>
    Power,

    /// <summary>The number of pops.</summary>
    Pops,

    /// <summary>The guide number of the first units.</summary>
    GuideNumber,
}

/// <summary>Flash units, the setting, and their limits. The value that is solved for is not read.</summary>
public sealed record FlashInput
{
    /// <summary>The most pops that an exposure is made of.</summary>
    public const int MostPops = 1000;

    /// <summary>What is solved for.</summary>
    public required FlashUnknown Unknown { get; init; }

    /// <summary>The first units; distance, power and guide number are solved for here.</summary>
    public required FlashUnit First { get; init; }

    /// <summary>The units beside them.</summary>
    public IReadOnlyList<FlashUnit> Others { get; init; } = [];

    /// <summary>Set f-number.</summary>
    public double FNumber { get; init; } = 1;

    /// <summary>Arithmetic ISO speed.</summary>
    public double Iso { get; init; } = 100;

    /// <summary>Pops of every unit while the shutter is open.</summary>
    public int Pops { get; init; } = 1;

    /// <summary>Light lost in the lens. [stops]</summary>
    public double LensLossStops { get; init; }

    /// <summary>Exposure wanted over what the setting asks for. [stops]</summary>
    public double CompensationStops { get; init; }

    /// <summary>The scale of the camera's dials.</summary>
    public StopScale Scale { get; init; } = StopScale.Third;

    /// <summary>The powers that the first units have, from full downwards, in stops below full. [stops]</summary>
    public required IReadOnlyList<double> PowersBelowFullStops { get; init; }

    /// <summary>How far camera and lens can be set.</summary>
    public CameraLimits Limits { get; init; } = new();

    /// <summary>Incident-light constant C for the luminous exposure, in lx s.</summary>
    public double IncidentConstant { get; init; } = Receptor.Flat.Default();
}
