namespace StudioCalc.Planning;

/// <summary>What a stage is, for those who read a schedule; all kinds are timed alike.</summary>
public enum StageKind
{
    /// <summary>Anything else.</summary>
    Other,

    /// <summary>Cooking at a station.</summary>
    Cook,

    /// <summary>Resting before plating.</summary>
    Rest,

    /// <summary>Plating.</summary>
    PlateUp,

    /// <summary>Garnishing.</summary>
    Garnish,

    /// <summary>Carrying to the set.</summary>
    Carry,

    /// <summary>Settling on the set.</summary>
    Settle,
}

/// <summary>One stage of a plate's way to the set.</summary>
public sealed record Stage
{
    /// <summary>What it is.</summary>
    public StageKind Kind { get; init; }

    /// <summary>The index of the resource that it occupies; none: it waits for nobody.</summary>
    public int? Resource { get; init; }

    /// <summary>How long it takes, not negative. [ms]</summary>
    public required long DurationMs { get; init; }

    /// <summary>The least time from its end to the start of what follows, not negative. [ms]</summary>
    public long LagMs { get; init; }
}
