namespace StudioCalc.Planning;

/// <summary>Orders a long day part by part: each part by the dynamic programme after the parts before it.</summary>
/// <remarks>Parts end at natural breaks of the greedy order: after a break of the set, before the largest setup, not longer than a part may be.
/// A part's new order is kept where the whole day is better for it.</remarks>
internal sealed class SplitOrder(OrderTimer timer, OrderEffort effort, CancellationToken cancellation)
{
    private const int Shortest = 6;
    private const int Longest = 14;

    private readonly DayShape _day = timer.Day;
    private readonly List<int> _splits = [];

    public int[] Order { get; private set; } = [];

    public IReadOnlyList<int> Splits => _splits;

    public int Kept { get; private set; }

    public bool WasCut { get; private set; }

    public void Run(int[] order, OrderCost cost)
    {
        Order = order;
        var from = 0;
        while (from < order.Length)
        {
            cancellation.ThrowIfCancellationRequested();
            var until = End(Order, from);
            var better = Part(from, until);
            if (timer.Cost(better) is var found && found < cost)
            {
                (Order, cost) = (better, found);
            }

            _splits.Add(from);
            from = until;
        }
    }

    private int[] Part(int from, int until)
    {
        var free = _day.Start.ToArray();
        int? before = null;
        var cost = new OrderCost(0, 0, free[_day.Layout.Finish], 0);
        foreach (var block in Order.AsSpan(0, from))
        {
            (before, cost) = timer.Add(block, free, before, cost);
        }

        // Blocks with fixed places stay where they are.
        var part = Order[from..until];
        if (part.Any(block => _day.Positions[block] is not null))
        {
            return Order;
        }

        var after = free.ToArray();
        var known = timer.Cost(part, after, before, cost);
        var search = new DominanceSearch(new(timer, part, before, free), known, effort.WidthFor(OrderEffort.MostTogether), cancellation);
        search.Run(cost);
        Kept += search.Kept;
        WasCut |= search.WasCut;
        return search.Found is { } found ? [.. Order[..from], .. found, .. Order[until..]] : Order;
    }

    private int End(int[] order, int from)
    {
        if (order.Length - from <= Longest)
        {
            return order.Length;
        }

        var most = Math.Min(order.Length - Shortest, from + Longest);
        var starts = timer.Starts(order.Take(most)).ToDictionary(block => block.Timer.Shape.Index, block => block.Starts.Max());
        var (best, weight) = (most, -1L);
        for (var at = from + Shortest; at <= most && at < order.Length; at++)
        {
            var setup = _day.After(order[at - 1], order[at]).SetupMs;
            var crosses = starts.TryGetValue(order[at - 1], out var one) && starts.TryGetValue(order[at], out var next)
                && _day.Open[_day.Day.Set].Any(open => one < open.FromMs && next >= open.FromMs);
            var here = setup + (crosses ? Windows.Never : 0);
            if (here > weight)
            {
                (best, weight) = (at, here);
            }
        }

        return best;
    }
}
