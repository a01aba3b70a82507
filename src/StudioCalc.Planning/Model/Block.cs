namespace StudioCalc.Planning;

/// <summary>What is ordered as one: shots that share plates, shot in their order without another in between.</summary>
public sealed record Block
{
    /// <summary>Its name.</summary>
    public required string Id { get; init; }

    /// <summary>Its plates. Where two need one resource, the earlier in this list has it first.</summary>
    public required IReadOnlyList<Plate> Plates { get; init; }

    /// <summary>Its shots in their order, at least one.</summary>
    public required IReadOnlyList<Shot> Shots { get; init; }

    /// <summary>Its place in the order of the day, from 0; none: any.</summary>
    public int? Position { get; init; }
}
