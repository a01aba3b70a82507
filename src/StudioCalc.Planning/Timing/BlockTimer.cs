namespace StudioCalc.Planning;

/// <summary>Times one block after what was before it, with one setup.</summary>
/// <remarks>
/// <code>
/// x_v = fit(max(r, x_u + w))           over all arcs u to v, and what the resources leave      (4)
/// x_e = max(x_e, x_l + l - e - B)      over all budgets from event e to last frame l          (5)
/// </code>
/// <para>Repeated until nothing moves: the least times that keep (4) and (5). They rise with the releases r, which is what dominance
/// stands on.</para>
/// </remarks>
internal sealed class BlockTimer
{
    private readonly ReleaseLayout _layout;
    private readonly long[] _duration;
    private readonly long[] _occupies;
    private readonly int[] _from;
    private readonly long[] _weight;
    private readonly int[] _arcsUntil;
    private readonly bool[] _isFirst;
    private readonly long _horizon;

    public BlockTimer(BlockShape shape, long setupMs, ReleaseLayout layout, long horizonMs)
    {
        (Shape, SetupMs, _layout, _horizon) = (shape, setupMs, layout, horizonMs);
        var operations = shape.Operations;
        _duration = [.. operations.Select((one, i) => i == shape.FirstSetup ? setupMs : one.DurationMs)];
        _occupies = [.. operations.Select((one, i) => i == shape.FirstSetup ? setupMs : one.OccupiesMs)];
        var arcs = shape.Arcs.OrderBy(arc => arc.To).ThenBy(arc => arc.From).ToArray();
        _from = [.. arcs.Select(arc => arc.From)];
        _weight = [.. arcs.Select(Weight)];
        _arcsUntil = new int[operations.Length];
        for (int i = 0, a = 0; i < operations.Length; i++)
        {
            while (a < arcs.Length && arcs[a].To == i)
            {
                a++;
            }

            _arcsUntil[i] = a;
        }

        _isFirst = new bool[operations.Length];
        var seen = new HashSet<int>();
        for (var i = 0; i < operations.Length; i++)
        {
            _isFirst[i] = operations[i] is { IsBegun: false, Resource: >= 0 } && seen.Add(operations[i].Resource);
        }

        LimitMs = [.. shape.Budgets.Select(budget => budget.Budget.LimitMs)];
    }

    public BlockShape Shape { get; }

    public long SetupMs { get; }

    public int Count => _duration.Length;

    /// <summary>Whether it can be done at all.</summary>
    public bool Fits { get; set; } = true;

    /// <summary>Whether it cannot have all its budgets, or the least of each, at once: one component waits for another, or for open times.</summary>
    public bool IsTraded { get; set; }

    /// <summary>The same as sums and maxima.</summary>
    public LinearTimes Linear => field ??= new(this, _layout);

    /// <summary>The limits that are kept: the budgets, or the least that can be had.</summary>
    public long[] LimitMs { get; set; }

    /// <summary>What the kept limits are beyond the budgets.</summary>
    public long ExcessMs => Shape.Budgets.Select((budget, b) => Operation(budget).IsBegun ? 0 : Math.Max(0, LimitMs[b] - budget.Budget.LimitMs)).Sum();

    public long Duration(int operation) => _duration[operation];

    public long Occupies(int operation) => _occupies[operation];

    /// <summary>The lag of an arc from start to start.</summary>
    public long Weight(ShapeArc arc) => arc.LagMs + (arc.FromEnd ? _duration[arc.From]
        : arc.FromFree && _layout.Capacity[Shape.Operations[arc.From].Resource] == 1 ? _occupies[arc.From] : 0);

    /// <summary>The least starts after the releases; false if there are none.</summary>
    /// <param name="free">When each unit is free.</param>
    /// <param name="x">The starts: lower bounds in, starts out.</param>
    /// <param name="budgets">Whether the budgets are kept.</param>
    /// <param name="openTimes">Whether open times are kept.</param>
    public bool Start(ReadOnlySpan<long> free, Span<long> x, bool budgets = true, bool openTimes = true)
    {
        var operations = Shape.Operations;
        Span<long> units = stackalloc long[_layout.HasUnits ? _layout.Length : 0];
        openTimes &= Shape.HasOpenTimes;
        while (true)
        {
            if (_layout.HasUnits)
            {
                free.CopyTo(units);
            }

            for (int i = 0, a = 0; i < x.Length; i++)
            {
                var one = operations[i];
                if (one.IsBegun)
                {
                    a = _arcsUntil[i];
                    continue;
                }

                var start = x[i];
                for (; a < _arcsUntil[i]; a++)
                {
                    start = Math.Max(start, x[_from[a]] + _weight[a]);
                }

                var multiple = one.Resource >= 0 && _layout.Capacity[one.Resource] > 1;
                if (multiple)
                {
                    start = Math.Max(start, units[_layout.At[one.Resource]]);
                }
                else if (_isFirst[i])
                {
                    start = Math.Max(start, free[_layout.At[one.Resource]]);
                }

                if (openTimes)
                {
                    start = one.Fit(start, _duration[i], _occupies[i]);
                }

                if (start > _horizon)
                {
                    return false;
                }

                x[i] = start;
                if (multiple)
                {
                    _layout.Take(units, one.Resource, start, start + _occupies[i]);
                }
            }

            if (!budgets || !KeepBudgets(x))
            {
                return true;
            }
        }
    }

    /// <summary>The lower bounds of the starts before anything else is known.</summary>
    public void Bounds(Span<long> x)
    {
        for (var i = 0; i < x.Length; i++)
        {
            x[i] = Shape.Operations[i].NotBeforeMs;
        }
    }

    /// <summary>When each unit is free after the block, and the finish so far.</summary>
    public void Release(ReadOnlySpan<long> x, Span<long> free)
    {
        var operations = Shape.Operations;
        for (var i = 0; i < x.Length; i++)
        {
            if (operations[i].IsBegun)
            {
                continue;
            }

            var end = x[i] + _occupies[i];
            free[_layout.Finish] = Math.Max(free[_layout.Finish], end);
            var resource = operations[i].Resource;
            if (resource >= 0 && _layout.Capacity[resource] > 1)
            {
                _layout.Take(free, resource, x[i], end);
            }
            else if (resource >= 0)
            {
                free[_layout.At[resource]] = Math.Max(free[_layout.At[resource]], end);
            }
        }
    }

    /// <summary>From the event of a budget to its last frame.</summary>
    public long Elapsed(int budget, ReadOnlySpan<long> x)
    {
        var (_, _, from, fromMs, last, lastMs) = Shape.Budgets[budget];
        return x[last] + lastMs - x[from] - fromMs;
    }

    /// <summary>What the clocks that run already are beyond their budgets.</summary>
    public long LateMs(ReadOnlySpan<long> x)
    {
        var late = 0L;
        for (var b = 0; b < LimitMs.Length; b++)
        {
            late += Operation(Shape.Budgets[b]).IsBegun ? Math.Max(0, Elapsed(b, x) - Shape.Budgets[b].Budget.LimitMs) : 0;
        }

        return late;
    }

    private ShapeOperation Operation(ShapeBudget budget) => Shape.Operations[budget.Event];

    private bool KeepBudgets(Span<long> x)
    {
        var moved = false;
        for (var b = 0; b < LimitMs.Length; b++)
        {
            var from = Shape.Budgets[b].Event;
            var excess = Elapsed(b, x) - LimitMs[b];
            if (excess > 0 && !Shape.Operations[from].IsBegun)
            {
                x[from] += excess;
                moved = true;
            }
        }

        return moved;
    }
}
