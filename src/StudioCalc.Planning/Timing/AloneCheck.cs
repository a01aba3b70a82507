namespace StudioCalc.Planning;

/// <summary>A budget that no order can keep.</summary>
/// <param name="Plate">The plate of the block.</param>
/// <param name="Budget">The budget.</param>
/// <param name="LeastMs">The least time from its event to its last frame: the work after the event, one after the other. [ms]</param>
/// <param name="ReachedMs">The least that was found with all that the block needs, within open times; mostly the same. [ms]</param>
/// <param name="IsByOpenTimes">Whether only open times forbid it.</param>
public readonly record struct NeverKept(int Plate, Budget Budget, long LeastMs, long ReachedMs, bool IsByOpenTimes)
{
    /// <summary>What is beyond the budget at best. [ms]</summary>
    public long ExcessMs => ReachedMs - Budget.LimitMs;
}

/// <summary>A block alone: what can never fit, whatever the order.</summary>
/// <param name="Block">The block.</param>
/// <param name="HasPlace">Whether it can be done at all within open times.</param>
/// <param name="NeverKept">Budgets that no order can keep.</param>
public sealed record AloneCheck(int Block, bool HasPlace, IReadOnlyList<NeverKept> NeverKept)
{
    /// <summary>Checks every block that is not done, each after the block that suits it best.</summary>
    /// <remarks>Without open times a budget can be kept in every order or in none: a block can always be pushed until nothing of it waits.
    /// So what is beyond its budget alone stays so in every order.</remarks>
    /// <param name="day">The day.</param>
    /// <param name="cancellation">Stops the checks.</param>
    /// <exception cref="OperationCanceledException">They were stopped.</exception>
    public static IReadOnlyList<AloneCheck> Of(ShootDay day, CancellationToken cancellation = default) => Of(new DayShape(day, cancellation), cancellation);

    internal static IReadOnlyList<AloneCheck> Of(DayShape day, CancellationToken cancellation) => [.. day.Left.Select(block =>
    {
        cancellation.ThrowIfCancellationRequested();
        return Of(day, block);
    })];

    private static AloneCheck Of(DayShape day, int block)
    {
        var timer = day.Left.Where(before => before != block).Select(before => day.After(before, block)).Append(day.After(null, block))
            .OrderBy(one => !one.Fits).ThenBy(one => one.ExcessMs).ThenBy(one => one.SetupMs).First();
        var alone = new AloneTiming(timer, day.Layout);
        List<NeverKept> never = [];
        for (var b = 0; b < timer.LimitMs.Length; b++)
        {
            var (budget, plate, from, _, _, _) = timer.Shape.Budgets[b];
            if (!timer.Shape.Operations[from].IsBegun && timer.LimitMs[b] > budget.LimitMs)
            {
                never.Add(new(plate, budget, alone.LeastMs[b], timer.LimitMs[b], timer.Shape.HasOpenTimes && alone.LeastMs[b] <= budget.LimitMs));
            }
        }

        return new(block, alone.Fits, never);
    }
}
