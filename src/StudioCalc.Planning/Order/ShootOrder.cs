namespace StudioCalc.Planning;

/// <summary>The best order of a day that was found, timed, and what is known about better ones.</summary>
public sealed record ShootOrder
{
    /// <summary>The day in its order.</summary>
    public required Schedule Schedule { get; init; }

    /// <summary>What no order can keep.</summary>
    public required IReadOnlyList<AloneCheck> Alone { get; init; }

    /// <summary>Whether no order is better.</summary>
    public required bool IsProved { get; init; }

    /// <summary>No order costs less than this; the same as its cost where that is proved.</summary>
    public required OrderCost Bound { get; init; }

    /// <summary>States that were kept in the search.</summary>
    public required int StatesKept { get; init; }

    /// <summary>Whether a layer of the search was cut to its width.</summary>
    public required bool WidthWasCut { get; init; }

    /// <summary>Where the day was split to be ordered part by part: places of the order at which a part begins; none if it was ordered as one.</summary>
    public required IReadOnlyList<int> Splits { get; init; }

    /// <summary>A detour in the matrix of setups that is shorter than the direct way: rows from, over and to.</summary>
    public required (int From, int Over, int To)? SetupDetour { get; init; }

    /// <summary>How much earlier the finish could be at most; none where the bound differs in its excess. [ms]</summary>
    public long? GapMs => Bound.LeftOut == Schedule.LeftOut.Count && Bound.ExcessMs == Schedule.ExcessMs ? Schedule.FinishMs - Bound.FinishMs : null;

    /// <summary>Orders a day: least excess over the budgets, then the earliest finish, then the least setups.</summary>
    /// <param name="day">The day. With progress, what has begun stays and the order so far is kept where no other is better.</param>
    /// <param name="effort">How hard to search.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <exception cref="ArgumentException">The day contradicts itself.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ShootOrder Find(ShootDay day, OrderEffort effort = default, CancellationToken cancellation = default)
    {
        cancellation.ThrowIfCancellationRequested();
        var shape = new DayShape(day, cancellation);
        var timer = new OrderTimer(shape);
        var known = Preference(shape);
        int[] blocks = [.. known.Where(shape.CanBePlaced)];
        var search = new OrderSearch(timer, blocks, day.Progress is null ? null : blocks, effort, cancellation);
        search.Run();
        var schedule = Schedule.Timed(timer, [.. search.Order, .. known.Except(search.Order)]);
        var never = known.Length - blocks.Length;
        return new()
        {
            Schedule = schedule,
            Alone = AloneCheck.Of(shape, cancellation),
            IsProved = search.IsProved,
            Bound = search.IsProved ? schedule.Cost : search.Bound with { LeftOut = search.Bound.LeftOut + never },
            StatesKept = search.Kept,
            WidthWasCut = search.WasCut,
            Splits = search.Splits,
            SetupDetour = day.Setups.Detour(),
        };
    }

    private static int[] Preference(DayShape shape)
    {
        var order = (shape.Day.Progress?.Order ?? []).Where(shape.Left.Contains).Distinct().ToList();
        return [.. order, .. shape.Left.Except(order)];
    }
}
