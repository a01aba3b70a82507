using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>A day with what of it is not certain.</summary>
/// <param name="Day">The day.</param>
/// <param name="Uncertainty">What of it is not certain.</param>
public sealed record UncertainDay(ShootDay Day, DayUncertainty Uncertainty)
{
    /// <summary>With one more of a resource.</summary>
    /// <param name="resource">Its index.</param>
    public UncertainDay WithOneMore(int resource) => this with
    {
        Day = Day with { Resources = [.. Day.Resources.Select((one, i) => i == resource ? one with { Capacity = one.Capacity + 1 } : one)] },
    };

    /// <summary>With cooking that takes a share of its time.</summary>
    /// <param name="factor">The share, not negative.</param>
    public UncertainDay WithCooking(double factor)
    {
        bool IsCooking(Operation one) => one.Kind == OperationKind.Stage && Day.Blocks[one.Block].Plates[one.Plate].Stages[one.Index].Kind == StageKind.Cook;
        return new(
            WithPlates(plate => plate with
            {
                Stages = [.. plate.Stages.Select(stage => stage.Kind == StageKind.Cook ? stage with { DurationMs = Scaled(stage.DurationMs, factor) } : stage)],
            }),
            Uncertainty with
            {
                Times = Uncertainty.Times.ToDictionary(one => one.Key, one => IsCooking(one.Key) ? Scaled(one.Value, factor) : one.Value),
            });
    }

    /// <summary>With an attribute of the set that all shots share.</summary>
    /// <param name="attribute">Its index.</param>
    public UncertainDay WithShared(int attribute) => this with
    {
        Day = Day with { Setups = Day.Setups with { ChangeMs = [.. Day.Setups.ChangeMs.Select((ms, i) => i == attribute ? 0 : ms)] } },
    };

    /// <summary>With budgets that last a multiple.</summary>
    /// <param name="factor">The multiple, not negative.</param>
    public UncertainDay WithBudgets(double factor) => this with
    {
        Day = WithPlates(plate => plate with { Budgets = [.. plate.Budgets.Select(budget => budget with { LimitMs = Scaled(budget.LimitMs, factor) })] }),
    };

    /// <summary>With setups, the first one and swaps of plates included, that take a share of their time.</summary>
    /// <param name="factor">The share, not negative.</param>
    public UncertainDay WithSetups(double factor) => this with
    {
        Day = Day with
        {
            Setups = Day.Setups with
            {
                FirstMs = Scaled(Day.Setups.FirstMs, factor),
                SwapMs = Scaled(Day.Setups.SwapMs, factor),
                ChangeMs = [.. Day.Setups.ChangeMs.Select(ms => Scaled(ms, factor))],
                Matrix = Day.Setups.Matrix?.Select(row => (IReadOnlyList<long>)[.. row.Select(ms => Scaled(ms, factor))]).ToArray(),
            },
        },
    };

    /// <summary>With another chance that a try gives a keeper, for all shots that have tries.</summary>
    /// <param name="chance">The chance, above 0 and not above 1.</param>
    public UncertainDay WithKeeperChance(double chance) => this with
    {
        Uncertainty = Uncertainty with { Odds = Uncertainty.Odds.ToDictionary(one => one.Key, one => one.Value with { KeeperChance = chance }) },
    };

    private static long Scaled(long ms, double factor) => (long)Math.Floor(ms * factor + 0.5);

    private static ThreePoint Scaled(ThreePoint time, double factor) =>
        time with { Shortest = time.Shortest * factor, Likely = time.Likely * factor, Longest = time.Longest * factor };

    private ShootDay WithPlates(Func<Plate, Plate> change) => Day with
    {
        Blocks = [.. Day.Blocks.Select(block => block with { Plates = [.. block.Plates.Select(change)] })],
    };
}
