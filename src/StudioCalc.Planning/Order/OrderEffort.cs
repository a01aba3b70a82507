namespace StudioCalc.Planning;

/// <summary>How hard an order is searched for: counts, never time.</summary>
/// <param name="Width">States kept in a layer; none: 200,000 up to 16 blocks, 5,000 for more.</param>
/// <param name="Rounds">Rounds of the greedy start; none: by the number of blocks.</param>
public readonly record struct OrderEffort(int? Width = null, int? Rounds = null)
{
    /// <summary>The most blocks that are ordered as one; longer days are split.</summary>
    public const int MostTogether = 24;

    internal int WidthFor(int blocks) => Width ?? (blocks <= 16 ? 200_000 : 5_000);

    internal int RoundsFor(int blocks) => Rounds ?? (blocks <= 6 ? 0 : blocks <= 12 ? 100 : blocks <= MostTogether ? 400 : 1_000_000 / (blocks * blocks * blocks) + 10);
}
