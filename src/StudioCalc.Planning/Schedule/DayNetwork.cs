namespace StudioCalc.Planning;

/// <summary>What keeps an operation from starting earlier.</summary>
public enum Binding
{
    /// <summary>The start of the day, now, or a plate's own earliest time.</summary>
    NotBefore,

    /// <summary>The opening of a resource or of the light.</summary>
    Opening,

    /// <summary>The way of its own plate or shot.</summary>
    Route,

    /// <summary>The resource: what had it before.</summary>
    Resource,

    /// <summary>A budget: its last frame comes so late.</summary>
    Budget,
}

/// <summary>One operation starts no earlier than so long after the start of another.</summary>
/// <param name="From">The earlier, as an index of operations.</param>
/// <param name="To">The later.</param>
/// <param name="WeightMs">From start to start; below 0 for budgets. [ms]</param>
/// <param name="Why">What it stands for.</param>
/// <param name="Resource">The resource, where it is one.</param>
public readonly record struct NetworkArc(int From, int To, long WeightMs, Binding Why, int? Resource);

/// <summary>The operations of a day in a fixed order, and all that binds their starts.</summary>
/// <remarks>
/// <code>
/// x_v - x_u >= w     over all arcs u to v      (6)
/// </code>
/// <para>A budget is an arc from its last frame back to its event with a negative weight. Source: difference constraints, Dechter, Meiri
/// and Pearl, Artificial Intelligence 49 (1991), from memory.</para>
/// </remarks>
public sealed class DayNetwork
{
    private readonly List<NetworkArc> _arcs = [];
    private readonly List<TimedOperation> _operations = [];
    private readonly List<ShapeOperation> _shapes = [];

    internal DayNetwork(DayShape day, IReadOnlyList<(BlockTimer Timer, long[] Starts)> blocks)
    {
        var last = day.Layout.Capacity.Select(capacity => new (long Free, int Operation)[capacity]).ToArray();
        foreach (var units in last)
        {
            Array.Fill(units, (long.MinValue, -1));
        }

        foreach (var (timer, starts) in blocks)
        {
            Add(day, timer, starts, last);
        }

        FinishMs = _operations.Select(one => one.EndMs).Append(day.Start[day.Layout.Finish]).Max();
    }

    /// <summary>The operations at their earliest times, block by block in their order.</summary>
    public IReadOnlyList<TimedOperation> Operations => _operations;

    /// <summary>What binds them.</summary>
    public IReadOnlyList<NetworkArc> Arcs => _arcs;

    /// <summary>The end of the last. [ms]</summary>
    public long FinishMs { get; }

    internal IReadOnlyList<ShapeOperation> Shapes => _shapes;

    private void Add(DayShape day, BlockTimer timer, long[] starts, (long Free, int Operation)[][] last)
    {
        var first = _operations.Count;
        var shape = timer.Shape;
        for (var i = 0; i < starts.Length; i++)
        {
            var one = shape.Operations[i];
            var (at, unit) = (_operations.Count, 0);
            if (one is { IsBegun: false, Resource: >= 0 })
            {
                var units = last[one.Resource];
                unit = Array.IndexOf(units, units.MinBy(free => free.Free));
                if (units[unit].Operation is >= 0 and var before)
                {
                    _arcs.Add(new(before, at, units[unit].Free - _operations[before].StartMs, Binding.Resource, one.Resource));
                }

                var previous = units.Length > 1 ? units.Max(free => free.Operation) : -1;
                if (previous >= 0)
                {
                    _arcs.Add(new(previous, at, 0, Binding.Resource, one.Resource));
                }

                units[unit] = (starts[i] + timer.Occupies(i), at);
            }

            _shapes.Add(one with { DurationMs = timer.Duration(i), OccupiesMs = timer.Occupies(i) });
            _operations.Add(new(one.Id, one.Resource < 0 ? null : one.Resource, unit, starts[i], starts[i] + timer.Duration(i)));
        }

        foreach (var arc in shape.Arcs.Where(arc => !arc.FromFree))
        {
            _arcs.Add(new(first + arc.From, first + arc.To, timer.Weight(arc), Binding.Route, null));
        }

        for (var b = 0; b < shape.Budgets.Length; b++)
        {
            var budget = shape.Budgets[b];
            var limit = Math.Max(budget.Budget.LimitMs, timer.Elapsed(b, starts));
            _arcs.Add(new(first + budget.Last, first + budget.Event, budget.LastMs - budget.EventMs - limit, Binding.Budget, null));
        }
    }
}
