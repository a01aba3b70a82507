using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class UncertainDayTests
{
    private static readonly UncertainDay Day = Make();

    [Fact]
    public void OneMore_IsOneMoreOfThatResourceAlone()
    {
        var resources = Day.WithOneMore(1).Day.Resources;
        Assert.Equal(Day.Day.Resources.Select((one, i) => one.Capacity + (i == 1 ? 1 : 0)), resources.Select(one => one.Capacity));
    }

    [Fact]
    public void Cooking_ScalesPlannedAndDrawnTimes_AndNothingElse()
    {
        var half = Day.WithCooking(0.5);
        Assert.Equal([(500L, 60L), (1501L, 60L)], half.Day.Blocks.Select(block => (block.Plates[0].Stages[0].DurationMs, block.Plates[0].Stages[1].DurationMs)));
        Assert.Equal(new ThreePoint(0.25, 0.5, 1, Spread.Pert), half.Uncertainty.Times[Operation.Stage(0, 0, 0)]);
        Assert.Equal(Day.Uncertainty.Times[Operation.Stage(0, 0, 1)], half.Uncertainty.Times[Operation.Stage(0, 0, 1)]);
        Assert.Equal(Day.Uncertainty.Times[Operation.Shoot(0, 0)], half.Uncertainty.Times[Operation.Shoot(0, 0)]);
    }

    [Fact]
    public void Shared_TakesNoTime() => Assert.Equal([100L, 0L], Day.WithShared(1).Day.Setups.ChangeMs);

    [Fact]
    public void Setups_AreScaledWithFirstAndSwapAndMatrix()
    {
        var setups = (Day with { Day = Day.Day with { Setups = Day.Day.Setups with { Matrix = [[0, 7], [8, 0]] } } }).WithSetups(2).Day.Setups;
        Assert.Equal((600L, 20L), (setups.FirstMs, setups.SwapMs));
        Assert.Equal([200L, 400L], setups.ChangeMs);
        Assert.Equal([0L, 14L, 16L, 0L], setups.Matrix!.SelectMany(row => row));
        Assert.Null(Day.WithSetups(2).Day.Setups.Matrix);
    }

    [Fact]
    public void Budgets_LastTheMultiple() =>
        Assert.All(Day.WithBudgets(1.5).Day.Blocks, block => Assert.Equal(6000, block.Plates[0].Budgets[0].LimitMs));

    [Fact]
    public void KeeperChance_IsThatOfAllTries()
    {
        var odds = Day.WithKeeperChance(0.25).Uncertainty.Odds;
        Assert.Equal((0.25, 4), (odds[Operation.Shoot(0, 0)].KeeperChance, odds[Operation.Shoot(0, 0)].MostTries));
        Assert.Single(odds);
    }

    // Wok 1 and 3 s, so 4 s; stylist 0.12 s; set 0.3 s of setups, 3 s, and (1 - 0.5^4) / 0.5 tries of 2 s.
    [Fact]
    public void Rates_AreThoseOfTheBusiestResource()
    {
        var none = default(NoTrail);
        var rates = DayRates.Evaluate(Day, 300, ref none);
        var set = 0.3 + 1.875 * 2 + 3;
        Assert.Equal((1.875 + 1) / 2, rates.MeanTries, 1e-12);
        Assert.Equal((2, 3600 * 2 / set), (rates.Busiest, rates.ShotsPerHour));
        var trail = StepTrail.Start();
        Assert.Equal(rates, DayRates.Evaluate(Day, 300, ref trail));
        Trails.Redo(trail.Steps);
    }

    [Fact]
    public void Rates_CountApprovalsThatHoldTheSet()
    {
        var none = default(NoTrail);
        var held = Day with
        {
            Day = Day.Day with
            {
                Blocks = [.. Day.Day.Blocks.Select(block => block with { Shots = [block.Shots[0] with { ApproveMs = 10_000, ApprovalHoldsSet = true }] })],
            },
        };
        var set = 1.875 * 2 + 3 + 10 * (1 - Math.Pow(0.5, 4)) + 10;
        Assert.Equal(3600 * 2 / set, DayRates.Evaluate(held, 0, ref none).ShotsPerHour, 1e-9);
    }

    private static UncertainDay Make()
    {
        Block Dish(long cook, long shoot) => new()
        {
            Id = $"{cook}",
            Plates =
            [
                new()
                {
                    Id = $"{cook}",
                    Stages =
                    [
                        new() { Kind = StageKind.Cook, Resource = 0, DurationMs = cook }, new() { Kind = StageKind.PlateUp, Resource = 1, DurationMs = 60 },
                    ],
                    Budgets = [new("herbs", Moment.End(1), Moment.End(0), 4000)],
                },
            ],
            Shots = [new() { Id = $"{cook}", ShootMs = shoot, Setup = [0, 0], Plates = [0] }],
        };
        var day = new ShootDay
        {
            Resources = [new() { Id = "wok" }, new() { Id = "stylist" }, new() { Id = "set" }],
            Set = 2,
            Blocks = [Dish(1000, 2000), Dish(3001, 3000)],
            Setups = new() { FirstMs = 300, SwapMs = 10, ChangeMs = [100, 200] },
        };
        return new(day, new()
        {
            Times = new Dictionary<Operation, ThreePoint>
            {
                [Operation.Stage(0, 0, 0)] = new(0.5, 1, 2, Spread.Pert),
                [Operation.Stage(0, 0, 1)] = new(0.06, 0.06, 0.06, Spread.Pert),
                [Operation.Shoot(0, 0)] = new(1, 2, 3, Spread.Pert),
            },
            Odds = new Dictionary<Operation, ShotOdds> { [Operation.Shoot(0, 0)] = new() { KeeperChance = 0.5, MostTries = 4 } },
        });
    }
}
