namespace StudioCalc.Planning;

/// <summary>A day to be put in order.</summary>
/// <remarks>
/// One order holds on every resource: what a block needs of it is done, or with several units begun, before the next block has it.
/// Times count from the start of the day.
/// </remarks>
public sealed record ShootDay
{
    /// <summary>The resources.</summary>
    public required IReadOnlyList<Resource> Resources { get; init; }

    /// <summary>The index of the set among them, with the photographer; it has one unit.</summary>
    public required int Set { get; init; }

    /// <summary>The blocks.</summary>
    public required IReadOnlyList<Block> Blocks { get; init; }

    /// <summary>Setups of the set.</summary>
    public SetupTimes Setups { get; init; } = new();

    /// <summary>What has happened so far; none: the day has not begun.</summary>
    public Progress? Progress { get; init; }
}
