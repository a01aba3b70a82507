namespace StudioCalc.Planning;

/// <summary>One shot: an approved picture.</summary>
public sealed record Shot
{
    /// <summary>Its name.</summary>
    public required string Id { get; init; }

    /// <summary>From its first frame to its last. [ms]</summary>
    public required long ShootMs { get; init; }

    /// <summary>From its last frame to approval. [ms]</summary>
    public long ApproveMs { get; init; }

    /// <summary>Whether the set is kept until approval, with the plates on it; else it goes on.</summary>
    public bool ApprovalHoldsSet { get; init; }

    /// <summary>What stands on the set: a number for each attribute (angle, surface, background, lens, light); with a matrix of setups, its row.</summary>
    public IReadOnlyList<int> Setup { get; init; } = [];

    /// <summary>Whether the set may be made ready before the plates stand on it, with a stand-in; else they wait there.</summary>
    public bool SetupBeforePlate { get; init; } = true;

    /// <summary>When its frames may be taken (daylight, clients present), in rising order and apart from each other; none: always.</summary>
    public IReadOnlyList<OpenTime> Open { get; init; } = [];

    /// <summary>The plates of its block that it needs, as indices; none named: all of them.</summary>
    public IReadOnlyList<int> Plates { get; init; } = [];
}
