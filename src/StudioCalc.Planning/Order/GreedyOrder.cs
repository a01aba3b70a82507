using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>A good order by insertion, bettered by taking blocks out and inserting them again.</summary>
/// <remarks>Sources: Nawaz, Enscore and Ham, Omega 11 (1983) 91-95, and Ruiz and Stützle, European Journal of Operational Research 177 (2007)
/// 2033-2049, both from memory. Draws are by address, so that the order is the same on every machine.</remarks>
internal sealed class GreedyOrder
{
    private const int TakenOut = 4;

    private readonly OrderTimer _timer;
    private readonly CancellationToken _cancellation;
    private readonly int[] _movable;
    private readonly (int Position, int Block)[] _fixed;
    private readonly int? _before;
    private readonly long[] _start;
    private readonly OrderCost _cost;

    public GreedyOrder(OrderTimer timer, IEnumerable<int> blocks, int? before, long[] start, OrderCost cost, CancellationToken cancellation)
    {
        (_timer, _before, _start, _cost, _cancellation) = (timer, before, start, cost, cancellation);
        var all = blocks.ToArray();
        _fixed = [.. all.Where(block => timer.Day.Positions[block] is not null).Select(block => (timer.Day.Positions[block]!.Value, block)).Order()];
        _movable = [.. all.Where(block => timer.Day.Positions[block] is null)];
    }

    public OrderCost Cost(ReadOnlySpan<int> movable)
    {
        Span<long> free = stackalloc long[_start.Length];
        _start.CopyTo(free);
        return _timer.Cost(Merge(movable), free, _before, _cost);
    }

    /// <summary>The order with fixed blocks in their places.</summary>
    public int[] Merge(ReadOnlySpan<int> movable)
    {
        if (_fixed.Length == 0)
        {
            return movable.ToArray();
        }

        var order = new int[movable.Length + _fixed.Length];
        for (int place = 0, next = 0, f = 0; place < order.Length; place++)
        {
            order[place] = f < _fixed.Length && (_fixed[f].Position <= place || next == movable.Length) ? _fixed[f++].Block : movable[next++];
        }

        return order;
    }

    /// <summary>The best order found, no worse than a known one; ties keep the known one.</summary>
    /// <param name="known">An order to start from beside the greedy one, or none.</param>
    /// <param name="rounds">Rounds of taking out and inserting.</param>
    public (int[] Order, OrderCost Cost) Find(IReadOnlyList<int>? known, int rounds)
    {
        List<int> order = [];
        OrderCost cost = default;
        foreach (var block in _movable.OrderByDescending(Work).ThenBy(block => block))
        {
            cost = Insert(order, block);
        }

        cost = order.Count == 0 ? Cost([]) : cost;
        int[] best = [.. order];
        var bestCost = cost;
        if (known?.Where(_movable.Contains).ToArray() is { } kept && kept.Length == _movable.Length && Cost(kept) is var keptCost && keptCost <= bestCost)
        {
            (best, bestCost, order, cost) = (kept, keptCost, [.. kept], keptCost);
        }

        for (var round = 0u; round < rounds && order.Count > 1; round++)
        {
            _cancellation.ThrowIfCancellationRequested();
            var trial = new List<int>(order);
            var taken = new List<int>();
            for (var t = 0u; t < TakenOut && trial.Count > 1; t++)
            {
                var at = (int)(Philox.Words((0, 0), (round, t, 0, 0)).First % (uint)trial.Count);
                taken.Add(trial[at]);
                trial.RemoveAt(at);
            }

            var trialCost = cost;
            foreach (var block in taken)
            {
                trialCost = Insert(trial, block);
            }

            if (trialCost <= cost || MayWorsen(round, trialCost, cost))
            {
                (order, cost) = (trial, trialCost);
            }

            if (cost < bestCost)
            {
                (best, bestCost) = ([.. order], cost);
            }
        }

        return (Merge(best), bestCost);
    }

    // One round in sixteen goes on from an order whose finish is up to a hundredth later.
    private static bool MayWorsen(uint round, OrderCost trial, OrderCost cost) =>
        trial.LeftOut == cost.LeftOut && trial.ExcessMs == cost.ExcessMs && trial.FinishMs <= cost.FinishMs + cost.FinishMs / 100
        && Philox.Words((0, 1), (round, 0, 0, 0)).First % 16 == 0;

    private OrderCost Insert(List<int> order, int block)
    {
        Span<int> trial = stackalloc int[order.Count + 1];
        var (best, at) = (default(OrderCost), -1);
        for (var place = 0; place <= order.Count; place++)
        {
            _cancellation.ThrowIfCancellationRequested();
            for (var i = 0; i < trial.Length; i++)
            {
                trial[i] = i < place ? order[i] : i == place ? block : order[i - 1];
            }

            var cost = Cost(trial);
            if (at < 0 || cost < best)
            {
                (best, at) = (cost, place);
            }
        }

        order.Insert(at, block);
        return best;
    }

    private long Work(int block) => _timer.Day.Shapes[block].Operations.Sum(one => one.IsBegun ? 0 : one.OccupiesMs);
}
