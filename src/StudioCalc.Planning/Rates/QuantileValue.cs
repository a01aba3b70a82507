namespace StudioCalc.Planning;

/// <summary>A quantile of simulated values with its interval.</summary>
/// <param name="Value">The quantile.</param>
/// <param name="Lower">Lower end of its 95 % interval; null where there are too few values.</param>
/// <param name="Upper">Upper end of it.</param>
public readonly record struct QuantileValue(long Value, long? Lower, long? Upper)
{
    /// <summary>A quantile of sorted values. (64)</summary>
    /// <param name="sorted">Values from low to high, at least one.</param>
    /// <param name="quantile">The quantile, above 0 and below 1.</param>
    public static QuantileValue Of(ReadOnlySpan<long> sorted, double quantile)
    {
        var ranks = QuantileRanks.Of(sorted.Length, quantile);
        return new(
            QuantileRanks.Value(sorted, quantile),
            ranks is null ? null : sorted[ranks.Lower - 1],
            ranks is null ? null : sorted[ranks.Upper - 1]);
    }
}

/// <summary>The tenth, fiftieth and ninetieth percentile of simulated values.</summary>
/// <param name="P10">Tenth.</param>
/// <param name="P50">Fiftieth.</param>
/// <param name="P90">Ninetieth.</param>
public sealed record Percentiles(QuantileValue P10, QuantileValue P50, QuantileValue P90)
{
    /// <summary>Percentiles of values in any order.</summary>
    /// <param name="values">The values, at least one; they are left as they are.</param>
    public static Percentiles Of(ReadOnlySpan<long> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        return new(QuantileValue.Of(sorted, 0.1), QuantileValue.Of(sorted, 0.5), QuantileValue.Of(sorted, 0.9));
    }
}
