namespace StudioCalc.Planning;

/// <summary>One cooked plate: its way to the set and the budgets of its components.</summary>
public sealed record Plate
{
    /// <summary>Its name.</summary>
    public required string Id { get; init; }

    /// <summary>Its stages in their order; after the last it stands ready on the set.</summary>
    public required IReadOnlyList<Stage> Stages { get; init; }

    /// <summary>The budgets of its components.</summary>
    public IReadOnlyList<Budget> Budgets { get; init; } = [];

    /// <summary>Its first stage starts no earlier. [ms]</summary>
    public long NotBeforeMs { get; init; }
}
