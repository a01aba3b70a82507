namespace StudioCalc.Planning;

/// <summary>How long a component waits, at the printed times.</summary>
/// <param name="Block">The block.</param>
/// <param name="Plate">The plate of the block.</param>
/// <param name="Budget">Its budget.</param>
/// <param name="ElapsedMs">From its event to its last frame. [ms]</param>
public readonly record struct ComponentWait(int Block, int Plate, Budget Budget, long ElapsedMs)
{
    /// <summary>What it waits beyond its budget. [ms]</summary>
    public long ExcessMs => Math.Max(0, ElapsedMs - Budget.LimitMs);
}

/// <summary>A day in a fixed order, timed.</summary>
public sealed record Schedule
{
    /// <summary>The blocks in their order.</summary>
    public required IReadOnlyList<int> Order { get; init; }

    /// <summary>Blocks that find no place in the day, in the order they were asked for.</summary>
    public required IReadOnlyList<int> LeftOut { get; init; }

    /// <summary>All operations at their earliest times, and what binds them.</summary>
    public required DayNetwork Network { get; init; }

    /// <summary>All operations as late as the finish allows, but setups as early as the set is free, in the same order as the earliest: the
    /// times to print.</summary>
    public required IReadOnlyList<TimedOperation> Latest { get; init; }

    /// <summary>The waits of all components at the latest times.</summary>
    public required IReadOnlyList<ComponentWait> Waits { get; init; }

    /// <summary>All setups. [ms]</summary>
    public required long SetupMs { get; init; }

    /// <summary>All operations at their earliest times.</summary>
    public IReadOnlyList<TimedOperation> Earliest => Network.Operations;

    /// <summary>The end of the last work. [ms]</summary>
    public long FinishMs => Network.FinishMs;

    /// <summary>What the components wait beyond their budgets, together. [ms]</summary>
    public long ExcessMs => Waits.Sum(wait => wait.ExcessMs);

    /// <summary>What it costs.</summary>
    public OrderCost Cost => new(LeftOut.Count, ExcessMs, FinishMs, SetupMs);

    /// <summary>Times a day in an order.</summary>
    /// <param name="day">The day.</param>
    /// <param name="order">The blocks, as indices; done ones are passed over.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Schedule Of(ShootDay day, IEnumerable<int> order, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(order);
        return Timed(new OrderTimer(new(day, cancellation)), [.. order]);
    }

    internal static Schedule Timed(OrderTimer timer, IReadOnlyList<int> order)
    {
        var asked = order.Where(block => timer.Day.Left.Contains(block)).ToList();
        var blocks = timer.Starts(asked);
        var placed = blocks.Select(block => block.Timer.Shape.Index).ToList();
        var network = new DayNetwork(timer.Day, blocks);
        var starts = LatestTimes.Of(network);
        var latest = network.Operations.Select((one, i) => one with { StartMs = starts[i], EndMs = starts[i] + one.EndMs - one.StartMs }).ToList();
        List<ComponentWait> waits = [];
        var first = 0;
        foreach (var (block, earliest) in blocks)
        {
            var own = starts.AsSpan(first, earliest.Length);
            for (var b = 0; b < block.Shape.Budgets.Length; b++)
            {
                var budget = block.Shape.Budgets[b];
                waits.Add(new(block.Shape.Index, budget.Plate, budget.Budget, block.Elapsed(b, own)));
            }

            first += earliest.Length;
        }

        return new()
        {
            Order = placed,
            LeftOut = [.. asked.Except(placed)],
            Network = network,
            Latest = latest,
            Waits = waits,
            SetupMs = blocks.Sum(block => block.Timer.SetupMs),
        };
    }
}
