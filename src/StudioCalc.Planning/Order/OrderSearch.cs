namespace StudioCalc.Planning;

/// <summary>Greedy start, then the dynamic programme, in one piece or, for long days, in parts.</summary>
internal sealed class OrderSearch(OrderTimer timer, int[] blocks, int[]? known, OrderEffort effort, CancellationToken cancellation)
{
    private readonly DayShape _day = timer.Day;

    public int[] Order { get; private set; } = [];

    public bool IsProved { get; private set; }

    public OrderCost Bound { get; private set; }

    public int Kept { get; private set; }

    public bool WasCut { get; private set; }

    public IReadOnlyList<int> Splits { get; private set; } = [];

    public void Run()
    {
        var start = _day.Start;
        var before = new OrderCost(0, 0, start[_day.Layout.Finish], 0);
        var (order, cost) = new GreedyOrder(timer, blocks, null, start, before, cancellation).Find(known, effort.RoundsFor(blocks.Length));
        Order = order;
        if (blocks.Length > OrderEffort.MostTogether)
        {
            var parts = new SplitOrder(timer, effort, cancellation);
            parts.Run(order, cost);
            (Order, Splits, Kept, WasCut) = (parts.Order, parts.Splits, parts.Kept, parts.WasCut);
            Bound = DayBound.Of(_day, blocks);
            IsProved = timer.Cost(Order) == Bound;
            return;
        }

        var search = new DominanceSearch(new(timer, blocks, null, start), cost, effort.WidthFor(blocks.Length), cancellation);
        search.Run(before);
        Order = search.Found ?? order;
        (Kept, WasCut) = (search.Kept, search.WasCut);
        var least = DayBound.Of(_day, blocks);
        var best = search.Best;

        // The programme keeps what a block keeps alone. Only where nothing is lost by that is its order proved.
        var isExact = best.LeftOut == 0 && !_day.IsTraded
            && (best.ExcessMs == least.ExcessMs || !_day.HasOpenTimes && !_day.HasRunningClocks);
        IsProved = isExact && (!WasCut || search.CutBound >= best);
        Bound = IsProved ? best : !isExact ? least
            : search.CutBound is { } cut && cut < best ? new(0, cut.ExcessMs, cut.FinishMs, cut.SetupMs) : best;
    }
}
