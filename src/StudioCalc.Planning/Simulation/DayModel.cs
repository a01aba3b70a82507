using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>A day made ready for many replications: its own times where they are certain, the plan's times where they are called for.</summary>
internal sealed class DayModel
{
    public DayModel(DaySimulationInput input)
    {
        var day = Day = input.Day;
        var uncertainty = input.Uncertainty;
        var planned = input.Planned.ToDictionary(one => one.Operation);
        Order = [.. input.Order];
        Policy = input.Policy;
        SetupFactor = uncertainty.SetupFactor;
        MostPlates = Math.Clamp(uncertainty.MostPlates, 1, 16);
        Resources = [.. day.Resources];
        Open = [.. day.Resources.Select(resource => resource.Open.ToArray())];
        Blocks = [.. day.Blocks.Select((_, b) => new ModelBlock(day, b, uncertainty, planned))];
        PlannedFree = new long[Order.Length + 1];
        for (var k = 0; k < Order.Length; k++)
        {
            PlannedFree[k + 1] = Math.Max(PlannedFree[k], Blocks[Order[k]].PlannedSetEndMs);
        }
    }

    public ShootDay Day { get; }

    public int[] Order { get; }

    public FiringPolicy Policy { get; }

    public ThreePoint? SetupFactor { get; }

    public int MostPlates { get; }

    public Resource[] Resources { get; }

    public OpenTime[][] Open { get; }

    public ModelBlock[] Blocks { get; }

    /// <summary>When the set is free before each place in the order by the plan, and after the last.</summary>
    public long[] PlannedFree { get; }
}

/// <summary>A block with what is not certain of it.</summary>
internal sealed class ModelBlock
{
    // Shots to be taken are bits of a word.
    public const int MostShots = 64;

    public ModelBlock(ShootDay day, int index, DayUncertainty uncertainty, Dictionary<Operation, TimedOperation> planned)
    {
        var block = day.Blocks[index];
        ThreePoint? Time(Operation operation) => uncertainty.Times.TryGetValue(operation, out var time) ? time : null;
        TimedOperation Plan(Operation operation) => planned.GetValueOrDefault(operation);
        var shootMs = Plan(Operation.Shoot(index, 0)).StartMs;
        Plates =
        [
            .. block.Plates.Select((plate, p) =>
            {
                var times = plate.Stages.Select((_, i) => Time(Operation.Stage(index, p, i)));
                var starts = plate.Stages.Select((_, i) => Plan(Operation.Stage(index, p, i)).StartMs);
                return new ModelPlate([.. plate.Stages], [.. times], [.. starts], plate.NotBeforeMs, shootMs);
            }),
        ];
        Shots =
        [
            .. block.Shots.Select((shot, k) => new ModelShot(
                shot,
                shot.Plates.Count > 0 ? [.. shot.Plates] : [.. Enumerable.Range(0, block.Plates.Count)],
                [.. shot.Open],
                Plan(Operation.Shoot(index, k)).StartMs,
                uncertainty.Odds.GetValueOrDefault(Operation.Shoot(index, k)),
                Time(Operation.Shoot(index, k)),
                Time(Operation.Approve(index, k)),
                [.. block.Plates.SelectMany((plate, p) => plate.Budgets.Select(budget => (p, budget))).Where(one => one.budget.LastFrame.Index == k)])),
        ];
        PlannedSetEndMs = block.Shots.Select((shot, k) =>
            Plan(Operation.Shoot(index, k)).EndMs is var end && shot.ApprovalHoldsSet ? end + shot.ApproveMs : end).Max();
    }

    public ModelPlate[] Plates { get; }

    public ModelShot[] Shots { get; }

    public long PlannedSetEndMs { get; }

    public ulong AllShots => ulong.MaxValue >> (MostShots - Shots.Length);
}

/// <summary>A plate: its stages with their times, and by the plan when they start and when the first frames of its block are taken.</summary>
internal sealed record ModelPlate(Stage[] Stages, ThreePoint?[] Times, long[] PlannedMs, long NotBeforeMs, long PlannedShootMs);

/// <summary>A shot: plates, planned start, tries, times and the budgets that end with it, each with its plate.</summary>
internal sealed record ModelShot(
    Shot Shot, int[] Plates, OpenTime[] Open, long PlannedMs, ShotOdds? Odds, ThreePoint? Time, ThreePoint? Approval, (int Plate, Budget Budget)[] Budgets);
