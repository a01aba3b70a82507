namespace StudioCalc.Planning;

/// <summary>How long the set takes from one shot to the next.</summary>
/// <remarks>
/// <code>
/// s(i, j) = swap + sum of c(a) over the attributes a that differ       one after the other     (1)
/// s(i, j) = swap + max of c(a) over the attributes a that differ       side by side            (2)
/// s(i, j) = swap + M(i, j)                                             with a matrix           (3)
/// </code>
/// <para>swap: only where the plates change. The first shot of the day takes the first setup, or the change from what stands on the set
/// already. (1) and (2) obey the triangle inequality; a matrix may not. Source: common practice.</para>
/// </remarks>
public sealed record SetupTimes
{
    /// <summary>The first setup of the day. [ms]</summary>
    public long FirstMs { get; init; }

    /// <summary>Changing the plates. [ms]</summary>
    public long SwapMs { get; init; }

    /// <summary>Changing each attribute c(a). [ms]</summary>
    public IReadOnlyList<long> ChangeMs { get; init; } = [];

    /// <summary>Whether a crew changes the attributes side by side.</summary>
    public bool SideBySide { get; init; }

    /// <summary>A matrix M of own times, from row to column, in place of the attributes. [ms]</summary>
    public IReadOnlyList<IReadOnlyList<long>>? Matrix { get; init; }

    /// <summary>What stands on the set at the start, as a shot's setup; none: nothing, so the first setup is taken.</summary>
    public IReadOnlyList<int>? Standing { get; init; }

    /// <summary>The time from one setup to another, without the swap. (1) to (3) [ms]</summary>
    public long Change(IReadOnlyList<int> from, IReadOnlyList<int> to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        if (Matrix is { } matrix)
        {
            return matrix[from[0]][to[0]];
        }

        var change = 0L;
        for (var a = 0; a < ChangeMs.Count; a++)
        {
            if (from[a] != to[a])
            {
                change = SideBySide ? Math.Max(change, ChangeMs[a]) : change + ChangeMs[a];
            }
        }

        return change;
    }

    /// <summary>The time until the first shot of the day. [ms]</summary>
    public long First(IReadOnlyList<int> to) => Standing is { } standing ? Change(standing, to) : FirstMs;

    /// <summary>A detour that is shorter than the direct way in the matrix, by the rows from, over and to; none if there is none.</summary>
    public (int From, int Over, int To)? Detour()
    {
        if (Matrix is not { } matrix)
        {
            return null;
        }

        for (var i = 0; i < matrix.Count; i++)
        {
            for (var k = 0; k < matrix.Count; k++)
            {
                for (var j = 0; j < matrix.Count; j++)
                {
                    if (matrix[i][k] + matrix[k][j] < matrix[i][j])
                    {
                        return (i, k, j);
                    }
                }
            }
        }

        return null;
    }
}
