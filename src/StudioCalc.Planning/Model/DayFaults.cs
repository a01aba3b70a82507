namespace StudioCalc.Planning;

/// <summary>What a day must be for its sums to mean anything; services check more, and say it better.</summary>
internal static class DayFaults
{
    public static void Check(ShootDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        Need(day.Set >= 0 && day.Set < day.Resources.Count && day.Resources[day.Set].Capacity == 1, "The set is one resource with one unit.");
        Need(day.Resources.All(resource => resource.Capacity >= 1 && Rising(resource.Open)), "A resource has units and rising open times.");
        Need(day.Setups.SwapMs >= 0 && day.Setups.FirstMs >= 0 && day.Setups.ChangeMs.All(ms => ms >= 0), "Setups are not negative.");
        Need(day.Setups.Matrix is not { } matrix || matrix.All(row => row.Count == matrix.Count && row.All(ms => ms >= 0)),
            "A matrix of setups is square and not negative.");
        Need(day.Setups.Standing is not { } standing || Known(day.Setups, standing), "What stands on the set has every attribute.");
        foreach (var block in day.Blocks)
        {
            Need(block.Shots.Count > 0, "A block has a shot.");
            Need(block.Shots.All(shot => Good(day.Setups, block, shot)), "A shot's times, setup or plates are wrong.");
            Need(block.Plates.All(plate => Good(day, block, plate)), "A plate's stages or budgets are wrong.");
        }

        var positions = day.Blocks.Where(block => block.Position is not null).Select(block => block.Position!.Value).ToList();
        Need(positions.TrueForAll(position => position >= 0 && position < day.Blocks.Count) && positions.Distinct().Count() == positions.Count,
            "Positions are different places of the order.");

        void Need(bool holds, string what)
        {
            if (!holds)
            {
                throw new ArgumentException(what, nameof(day));
            }
        }
    }

    private static bool Good(SetupTimes setups, Block block, Shot shot) =>
        shot.ShootMs >= 0 && shot.ApproveMs >= 0 && Rising(shot.Open) && Known(setups, shot.Setup)
        && shot.Plates.All(plate => plate >= 0 && plate < block.Plates.Count);

    private static bool Good(ShootDay day, Block block, Plate plate) =>
        plate.Stages.All(stage => stage.DurationMs >= 0 && stage.LagMs >= 0 && (stage.Resource ?? 0) >= 0 && (stage.Resource ?? 0) < day.Resources.Count)
        && plate.Budgets.All(budget => budget.LimitMs >= 0
            && budget.Event.Index >= 0 && budget.Event.Index < plate.Stages.Count
            && budget.LastFrame.Index >= 0 && budget.LastFrame.Index < block.Shots.Count);

    private static bool Known(SetupTimes setups, IReadOnlyList<int> setup) => setups.Matrix is { } matrix
        ? setup.Count > 0 && setup[0] >= 0 && setup[0] < matrix.Count
        : setup.Count >= setups.ChangeMs.Count;

    private static bool Rising(IReadOnlyList<OpenTime> open) =>
        open.All(one => one.FromMs < one.UntilMs) && open.Zip(open.Skip(1)).All(pair => pair.First.UntilMs <= pair.Second.FromMs);
}
