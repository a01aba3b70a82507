namespace StudioCalc.Planning;

/// <summary>A block as sums and maxima: how its times follow from when each resource is free, open times left aside.</summary>
/// <remarks>
/// <code>
/// end_k = max over m of (E_km + r_m),   start_k = max over m of (S_km + r_m),   finish = max over m of (F_m + r_m)     (8)
/// </code>
/// <para>m runs over the resources that it uses and the origin of time (the last column). Exact for a block without open times, begun work
/// and resources of several units; else no later than the true times. Source: equations (4) and (5) are linear in these operations.</para>
/// </remarks>
internal sealed class LinearTimes
{
    public const long None = -Windows.Never;

    private const int MostColumns = 9;

    public LinearTimes(BlockTimer timer, ReleaseLayout layout)
    {
        var operations = timer.Shape.Operations;
        var own = operations.Select((one, i) => (One: one, At: i)).Where(one => one.One is { IsBegun: false, Resource: >= 0 }).ToArray();
        Used = [.. own.Select(one => one.One.Resource).Distinct().Order()];
        var first = Used.Select(resource => own.First(one => one.One.Resource == resource).At).ToArray();
        var last = Used.Select(resource => own.Last(one => one.One.Resource == resource).At).ToArray();
        var columns = Used.Length + 1;
        (Start, End, Finish) = (new long[Used.Length * columns], new long[Used.Length * columns], new long[columns]);
        Work = [.. Used.Select(resource => own.Where(one => one.One.Resource == resource).Sum(one => timer.Occupies(one.At)))];
        Tail = [.. last.Select(at => TailAfter(timer, at))];
        IsExact = timer.Fits && !timer.Shape.HasOpenTimes && operations.All(one => !one.IsBegun)
            && Used.All(resource => layout.Capacity[resource] == 1) && columns <= MostColumns;
        At = [.. Used.Select(resource => layout.At[resource])];
        Column = [.. Enumerable.Range(0, layout.Capacity.Length).Select(resource => Array.IndexOf(Used, resource)), Used.Length];
        for (var c = 0; c < columns; c++)
        {
            Fill(timer, layout, c, first, last);
        }
    }

    public int[] Used { get; }

    public int[] At { get; }

    /// <summary>The column of each resource, below 0 where it is not used, and of the origin.</summary>
    public int[] Column { get; }

    public long[] Start { get; }

    public long[] End { get; }

    public long[] Finish { get; }

    /// <summary>What the block works on each resource that it uses, in their order.</summary>
    public long[] Work { get; }

    /// <summary>The least time from its end on each resource to its finish.</summary>
    public long[] Tail { get; }

    public bool IsExact { get; }

    /// <summary>When each resource is free after the block, and the finish so far.</summary>
    public void Release(Span<long> free, int finish)
    {
        var columns = At.Length + 1;
        Span<long> r = stackalloc long[columns];
        for (var c = 0; c < At.Length; c++)
        {
            r[c] = free[At[c]];
        }

        r[^1] = 0;
        var latest = free[finish];
        for (var c = 0; c < columns; c++)
        {
            latest = Math.Max(latest, Finish[c] + r[c]);
        }

        free[finish] = latest;
        for (var u = 0; u < At.Length; u++)
        {
            var row = End.AsSpan(u * columns, columns);
            var end = None;
            for (var c = 0; c < row.Length; c++)
            {
                end = Math.Max(end, row[c] + r[c]);
            }

            free[At[u]] = end;
        }
    }

    private void Fill(BlockTimer timer, ReleaseLayout layout, int column, int[] first, int[] last)
    {
        var columns = Used.Length + 1;
        var free = new long[layout.Length];
        var x = new long[timer.Count];
        Array.Fill(free, None);
        Array.Fill(x, None);
        if (column == Used.Length)
        {
            timer.Bounds(x);
        }
        else
        {
            free.AsSpan(layout.At[Used[column]], layout.Capacity[Used[column]]).Clear();
        }

        timer.Start(free, x, budgets: true, openTimes: false);
        for (var u = 0; u < Used.Length; u++)
        {
            Start[u * columns + column] = Known(x[first[u]]);
            End[u * columns + column] = Known(x[last[u]]) is var start && start > None ? start + timer.Occupies(last[u]) : None;
        }

        Finish[column] = Enumerable.Range(0, x.Length)
            .Max(i => timer.Shape.Operations[i].IsBegun || Known(x[i]) == None ? None : x[i] + timer.Occupies(i));
    }

    private static long Known(long start) => start < None / 2 ? None : start;

    private static long TailAfter(BlockTimer timer, int operation)
    {
        var longest = new long[timer.Count];
        Array.Fill(longest, None);
        longest[operation] = 0;
        foreach (var arc in timer.Shape.Arcs.OrderBy(arc => arc.To))
        {
            if (longest[arc.From] > None)
            {
                longest[arc.To] = Math.Max(longest[arc.To], longest[arc.From] + timer.Weight(arc));
            }
        }

        return Enumerable.Range(0, longest.Length).Max(i => longest[i] > None ? longest[i] + timer.Occupies(i) : None) - timer.Occupies(operation);
    }
}
