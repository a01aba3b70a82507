namespace StudioCalc.Planning;

/// <summary>What a stage or a shot occupies: a kitchen station, a stylist, a runner, the set.</summary>
public sealed record Resource
{
    /// <summary>Its name.</summary>
    public required string Id { get; init; }

    /// <summary>How many alike units there are, at least 1. The set has one.</summary>
    public int Capacity { get; init; } = 1;

    /// <summary>When it works, in rising order and apart from each other; none: always. Work never runs over a break.</summary>
    public IReadOnlyList<OpenTime> Open { get; init; } = [];
}
