namespace StudioCalc.Planning;

/// <summary>Times orders block after block.</summary>
/// <remarks>
/// A block keeps what it can keep alone, at its least times. Where open times leave it no such place after the blocks before it, its budgets
/// are let go and what is beyond is counted; where it still finds none, it is left out.
/// </remarks>
internal sealed class OrderTimer(DayShape day)
{
    private readonly long[] _starts = new long[day.Shapes.Length == 0 ? 0 : day.Shapes.Max(shape => shape.Operations.Length)];

    public DayShape Day => day;

    /// <summary>Times one block in place; the starts are kept until the next call.</summary>
    /// <param name="timer">The block after what is before it.</param>
    /// <param name="free">When each unit is free: before it, then after it.</param>
    /// <param name="starts">Its starts.</param>
    /// <returns>Its excess; none if it cannot keep what it keeps alone.</returns>
    public long? Step(BlockTimer timer, Span<long> free, out Span<long> starts)
    {
        starts = _starts.AsSpan(0, timer.Count);
        timer.Bounds(starts);
        if (!timer.Fits || !timer.Start(free, starts))
        {
            return null;
        }

        timer.Release(starts, free);
        return timer.ExcessMs + (day.HasRunningClocks ? timer.LateMs(starts) : 0);
    }

    /// <summary>As <see cref="Step"/>, without the starts.</summary>
    public long? Release(BlockTimer timer, Span<long> free)
    {
        if (!timer.Linear.IsExact)
        {
            return Step(timer, free, out _);
        }

        timer.Linear.Release(free, day.Layout.Finish);
        return timer.ExcessMs;
    }

    /// <summary>Times one block that cannot keep what it keeps alone.</summary>
    public long? LooseStep(BlockTimer timer, Span<long> free, out Span<long> starts)
    {
        starts = [];
        if (AloneTiming.Loose(timer, day.Layout, free) is not { } found)
        {
            return null;
        }

        starts = found;
        timer.Release(found, free);
        return AloneTiming.Excess(timer, found, new long[timer.LimitMs.Length]);
    }

    /// <summary>What an order costs after what is before it.</summary>
    /// <param name="order">The blocks.</param>
    /// <param name="free">When each unit is free: before, then after.</param>
    /// <param name="before">The block before, or none.</param>
    /// <param name="cost">What was before costs.</param>
    public OrderCost Cost(ReadOnlySpan<int> order, Span<long> free, int? before, OrderCost cost)
    {
        foreach (var block in order)
        {
            (before, cost) = Add(block, free, before, cost);
        }

        return cost;
    }

    /// <summary>What an order costs.</summary>
    public OrderCost Cost(ReadOnlySpan<int> order)
    {
        Span<long> free = stackalloc long[day.Layout.Length];
        day.Start.CopyTo(free);
        return Cost(order, free, null, new(0, 0, free[day.Layout.Finish], 0));
    }

    /// <summary>Adds a block to an order.</summary>
    public (int? Before, OrderCost Cost) Add(int block, Span<long> free, int? before, OrderCost cost)
    {
        var timer = day.After(before, block);
        return (Release(timer, free) ?? LooseStep(timer, free, out _)) is { } excess
            ? (block, new(cost.LeftOut, cost.ExcessMs + excess, free[day.Layout.Finish], cost.SetupMs + timer.SetupMs))
            : (before, cost with { LeftOut = cost.LeftOut + 1 });
    }

    /// <summary>The starts of every block of an order that finds a place.</summary>
    public IReadOnlyList<(BlockTimer Timer, long[] Starts)> Starts(IEnumerable<int> order)
    {
        var free = day.Start.ToArray();
        List<(BlockTimer Timer, long[] Starts)> all = [];
        int? before = null;
        foreach (var block in order)
        {
            var timer = day.After(before, block);
            if (Step(timer, free, out var starts) is not null || LooseStep(timer, free, out starts) is not null)
            {
                all.Add((timer, starts.ToArray()));
                before = block;
            }
        }

        return all;
    }
}
