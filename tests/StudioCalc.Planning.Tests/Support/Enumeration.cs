namespace StudioCalc.Planning.Tests;

/// <summary>The best order by trying them all, each timed block by block without the short cuts of the search.</summary>
internal sealed class Enumeration
{
    private readonly OrderTimer _timer;
    private readonly int[] _order;
    private readonly bool[] _used;

    public Enumeration(ShootDay day)
    {
        _timer = new(new(day));
        _order = new int[_timer.Day.Left.Length];
        _used = new bool[day.Blocks.Count];
        var free = _timer.Day.Start;
        Try(0, free, null, new(0, 0, free[^1], 0));
    }

    public OrderCost Best { get; private set; } = new(int.MaxValue, 0, 0, 0);

    public int[] Order { get; private set; } = [];

    private void Try(int place, long[] free, int? before, OrderCost cost)
    {
        if (place == _order.Length)
        {
            if (cost < Best)
            {
                (Best, Order) = (cost, [.. _order]);
            }

            return;
        }

        foreach (var block in _timer.Day.Left)
        {
            if (_used[block] || !MayStand(block, place))
            {
                continue;
            }

            var after = free.ToArray();
            var timer = _timer.Day.After(before, block);
            var excess = _timer.Step(timer, after, out _) ?? _timer.LooseStep(timer, after, out _);
            (_used[block], _order[place]) = (true, block);
            Try(place + 1, after, excess is null ? before : block, excess is null
                ? cost with { LeftOut = cost.LeftOut + 1 }
                : new(cost.LeftOut, cost.ExcessMs + excess.Value, after[^1], cost.SetupMs + timer.SetupMs));
            _used[block] = false;
        }
    }

    private bool MayStand(int block, int place) => _timer.Day.Positions[block] is { } position
        ? position == place : _timer.Day.Left.All(other => _timer.Day.Positions[other] != place);
}
