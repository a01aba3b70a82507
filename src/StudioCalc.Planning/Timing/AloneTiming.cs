namespace StudioCalc.Planning;

/// <summary>What one block can keep at best when nothing else is in its way.</summary>
/// <remarks>
/// The least of a budget is the longest chain of work from its event to its last frame. All budgets of one plate can have it at once. Two
/// plates that need each other's resources may not, and open times may ask for more: then openings are tried as starts of operations, all
/// else as early, and what comes before the shots, or before the last shot, as late as that allows. The least found that way is seldom
/// more than the least there is, but it may be.
/// </remarks>
internal sealed class AloneTiming
{
    private readonly BlockTimer _timer;
    private readonly int[] _used;

    public AloneTiming(BlockTimer timer, ReleaseLayout layout)
    {
        _timer = timer;
        var shape = timer.Shape;
        _used = new int[layout.Capacity.Length];
        foreach (var one in shape.Operations.Where(one => one is { IsBegun: false, Resource: >= 0 }))
        {
            _used[one.Resource]++;
        }

        Layout = layout;
        LeastMs = [.. shape.Budgets.Select(Least)];
        LimitMs = [.. shape.Budgets.Select((budget, b) => Math.Max(budget.Budget.LimitMs, LeastMs[b]))];
        timer.LimitMs = LimitMs;
        var free = new long[layout.Length];
        var x = new long[timer.Count];
        timer.Bounds(x);
        Fits = timer.Start(free, x);
        if (!Fits)
        {
            (Fits, timer.IsTraded) = (TryOpenings(free), true);
            timer.LimitMs = LimitMs;
        }
    }

    public ReleaseLayout Layout { get; }

    /// <summary>The least time of each budget by work alone, whatever is open.</summary>
    public long[] LeastMs { get; }

    /// <summary>The limits that can be kept.</summary>
    public long[] LimitMs { get; private set; }

    /// <summary>Whether it can be done at all.</summary>
    public bool Fits { get; }

    /// <summary>Moves what comes before the shots, or before the last of them, as late as they allow.</summary>
    public static void Compact(BlockTimer timer, ReleaseLayout layout, int[] used, Span<long> x, bool shotsToo)
    {
        var operations = timer.Shape.Operations;
        var latest = new long[x.Length];
        Array.Fill(latest, Windows.Never);
        for (var i = operations.Length - 1; i >= 0; i--)
        {
            var one = operations[i];
            foreach (var arc in timer.Shape.Arcs.Where(arc => arc.From == i && operations[arc.To] is { IsBegun: false, Id.Kind: not OperationKind.Approve }))
            {
                latest[i] = Math.Min(latest[i], x[arc.To] - timer.Weight(arc));
            }

            var isShot = one.Id.Kind == OperationKind.Shoot && (!shotsToo || one.Id.Index == timer.Shape.Block.Shots.Count - 1);
            var held = one.Resource >= 0 && used[one.Resource] > layout.Capacity[one.Resource] && layout.Capacity[one.Resource] > 1;
            if (!one.IsBegun && !isShot && !held && one.Id.Kind != OperationKind.Approve && latest[i] < Windows.Never)
            {
                x[i] = Math.Max(x[i], one.FitBack(latest[i], timer.Duration(i), timer.Occupies(i)));
                if (one.Id.Kind == OperationKind.Shoot)
                {
                    x[i + 1] = x[i] + timer.Duration(i);
                }
            }
        }
    }

    /// <summary>What each budget takes, and the sum of what is beyond.</summary>
    public static long Excess(BlockTimer timer, ReadOnlySpan<long> x, long[] elapsed)
    {
        var excess = 0L;
        for (var b = 0; b < elapsed.Length; b++)
        {
            elapsed[b] = timer.Elapsed(b, x);
            excess += Math.Max(0, elapsed[b] - timer.Shape.Budgets[b].Budget.LimitMs);
        }

        return excess;
    }

    /// <summary>The starts with the least excess that was found after the releases, budgets let go; none if nothing fits.</summary>
    public static long[]? Loose(BlockTimer timer, ReleaseLayout layout, ReadOnlySpan<long> free, Action<Span<long>>? bound = null)
    {
        var used = new int[layout.Capacity.Length];
        foreach (var one in timer.Shape.Operations.Where(one => one is { IsBegun: false, Resource: >= 0 }))
        {
            used[one.Resource]++;
        }

        long[]? best = null;
        var least = long.MaxValue;
        var elapsed = new long[timer.LimitMs.Length];
        foreach (var shotsToo in new[] { false, true })
        {
            var x = new long[timer.Count];
            timer.Bounds(x);
            bound?.Invoke(x);
            if (!timer.Start(free, x, budgets: false))
            {
                return null;
            }

            Compact(timer, layout, used, x, shotsToo);
            var excess = Excess(timer, x, elapsed);
            if (excess < least)
            {
                (best, least) = (x, excess);
            }
        }

        return best;
    }

    // Openings are added to those that helped already, the best first, until none helps any more.
    private bool TryOpenings(long[] free)
    {
        var (least, elapsed) = (long.MaxValue, new long[LimitMs.Length]);
        var bounds = new long[_timer.Count];
        for (long[]? better = bounds; better is not null;)
        {
            (bounds, better) = (better, null);
            foreach (var (operation, from) in Openings())
            {
                if (Loose(_timer, Layout, free, x => Raise(x, bounds, operation, from)) is { } found
                    && Excess(_timer, found, elapsed) is var excess && excess < least)
                {
                    (least, better) = (excess, [.. bounds]);
                    better[operation] = Math.Max(better[operation], from);
                    LimitMs = [.. elapsed.Select((ms, b) => Math.Max(ms, _timer.Shape.Budgets[b].Budget.LimitMs))];
                }
            }
        }

        return least < long.MaxValue;
    }

    private IEnumerable<(int Operation, long FromMs)> Openings() => _timer.Shape.Operations
        .SelectMany((one, i) => one.IsBegun ? [] : one.Open.Concat(one.Frames).Select(open => open.FromMs).Append(0).Select(from => (i, from)));

    private static void Raise(Span<long> x, long[] bounds, int operation, long fromMs)
    {
        for (var i = 0; i < x.Length; i++)
        {
            x[i] = Math.Max(x[i], i == operation ? Math.Max(bounds[i], fromMs) : bounds[i]);
        }
    }

    private long Least(ShapeBudget budget)
    {
        var longest = new long[_timer.Count];
        Array.Fill(longest, -Windows.Never);
        longest[budget.Event] = 0;
        foreach (var arc in _timer.Shape.Arcs.OrderBy(arc => arc.To).ThenBy(arc => arc.From))
        {
            if (longest[arc.From] > -Windows.Never)
            {
                longest[arc.To] = Math.Max(longest[arc.To], longest[arc.From] + _timer.Weight(arc));
            }
        }

        return longest[budget.Last] > -Windows.Never ? longest[budget.Last] + budget.LastMs - budget.EventMs : long.MinValue;
    }
}
