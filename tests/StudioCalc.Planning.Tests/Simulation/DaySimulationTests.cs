using CsCheck;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class DaySimulationTests
{
    private static readonly Gen<ShootDay> AnyDay =
        Gen.Select(Gen.Int[60, 1200], Gen.Int[30, 300], Gen.Int[60, 600]).Array[1, 8].Select(dishes => Days.Of(dishes));

    [Fact]
    public void Run_OfACertainDay_FinishesAsPlanned() =>
        AnyDay.Sample(
            day =>
            {
                var result = Run(Days.Input(day), 3);
                var schedule = Schedule.Of(day, Enumerable.Range(0, day.Blocks.Count));
                Assert.Equal(schedule.FinishMs, result.FinishMs.P10.Value);
                Assert.Equal(schedule.FinishMs, result.FinishMs.P90.Value);
                Assert.Equal(day.Blocks.Count, result.MeanFinished);
                Assert.All(result.Blocks, block => Assert.Equal(0, block.Broken + block.MadeAgain + block.GivenUp));
            },
            iter: 200);

    [Fact]
    public void Run_OnOneCoreOrSeveral_GivesTheSameAnswer()
    {
        var day = Days.Twenty();
        foreach (var policy in Enum.GetValues<FiringPolicy>())
        {
            var input = Days.Input(day, policy, Days.Loose(day));
            var one = DaySimulation.Run(input, 700, 3, 1, default);
            foreach (var cores in new[] { 2, 3, 8 })
            {
                var several = DaySimulation.Run(input, 700, 3, cores, default);
                Assert.Equal(one.FinishesMs, several.FinishesMs);
                Assert.Equal(one.Blocks, several.Blocks);
                Assert.Equal(one.Resources, several.Resources);
                Assert.Equal((one.FinishedPerHour, one.FramesPerHour, one.MeanIdleMs), (several.FinishedPerHour, several.FramesPerHour, several.MeanIdleMs));
            }
        }
    }

    [Fact]
    public void Run_WithAnotherSeed_DrawsOtherDays()
    {
        var input = Days.Input(Days.Twenty(), FiringPolicy.Call, Days.Loose(Days.Twenty()));
        Assert.NotEqual(DaySimulation.Run(input, 50, 1, 1, default).FinishesMs, DaySimulation.Run(input, 50, 2, 1, default).FinishesMs);
    }

    [Fact]
    public void Run_OfMoreReplications_KeepsTheFirstOnes()
    {
        var input = Days.Input(Days.Twenty(), FiringPolicy.Call, Days.Loose(Days.Twenty()));
        var few = DaySimulation.Run(input, 100, 1, 2, default).FinishesMs;
        Assert.Equal(few, DaySimulation.Run(input, 300, 1, 2, default).FinishesMs.Take(100));
    }

    // One plate, no budget in the way: tries, give-ups and keepers are those of the closed form.
    [Fact]
    public void Run_OfOneShot_TriesAsTheClosedFormTells()
    {
        var day = WithoutBudgets(Days.Of((300, 60, 200)));
        var odds = new ShotOdds { KeeperChance = 0.35, MostTries = 6, FramesPerTry = 4, Try = new(20, 20, 20, Spread.Pert) };
        var input = Days.Input(day, uncertainty: new() { Odds = new Dictionary<Operation, ShotOdds> { [Operation.Shoot(0, 0)] = odds }, MostPlates = 1 });
        var result = Run(input, 40_000);
        var none = new NoTrail();
        var expected = RetakeOdds.Evaluate(new() { KeeperChance = 0.35, MostTries = 6, FramesPerTry = 4 }, ref none);
        Assert.Equal(expected.ExpectedFinished, result.MeanFinished, 0.006);
        Assert.Equal(expected.GiveUpChance, result.Chance(result.Blocks[0].GivenUp).Chance, 0.006);
        Assert.Equal(expected.ExpectedFrames / expected.ExpectedFinished, result.FramesPerHour / result.FinishedPerHour, 0.1);
        Assert.Equal(expected.ExpectedKeepers, result.KeepersPerHour / result.FinishedPerHour * result.MeanFinished, 0.006);
    }

    // The set is ready at a certain time and the kitchen takes a triangular time: the plate waits too long when the kitchen is early.
    [Fact]
    public void Run_ByTheClock_BreaksABudgetAsOftenAsTheKitchenIsEarly()
    {
        var day = Days.Of((600, 60, 100)) with { Setups = new() { FirstMs = 3_600_000 } };
        var plate = day.Blocks[0].Plates[0] with { Budgets = [new("foam", Moment.End(1), Moment.AfterStart(0), 120_000)] };
        day = day with { Blocks = [day.Blocks[0] with { Plates = [plate] }] };
        var cook = new ThreePoint(400, 600, 1000, Spread.Triangle);
        var input = Days.Input(day, uncertainty: new() { Times = new Dictionary<Operation, ThreePoint> { [Operation.Stage(0, 0, 0)] = cook }, MostPlates = 1 });
        var result = Run(input, 40_000);

        // Planned to land as the set is ready; it may wait 90 s there after 30 s of carrying. Plating starts at its planned time at the earliest.
        var (chance, error) = result.Chance(result.Blocks[0].Broken);
        Assert.Equal(0, chance);
        Assert.True(error > 0);

        // Without a planned start of plating the kitchen goes on at once, and breaks it when cooking takes less than 600 - 90 s.
        var free = input with { Planned = [.. input.Planned.Select(one => one.Operation == Operation.Stage(0, 0, 1) ? one with { StartMs = 0 } : one)] };
        result = Run(free, 40_000);
        Assert.Equal(110.0 * 110 / (600 * 200), result.Chance(result.Blocks[0].Broken).Chance, 0.006);
    }

    [Fact]
    public void Run_OfIdenticalDishes_FinishesAsTheFlowLine()
    {
        var day = WithoutBudgets(Days.Of([.. Enumerable.Repeat((480, 300, 540), 12)])) with { Setups = new() };
        day = day with { Blocks = [.. day.Blocks.Select(block => block with { Plates = [block.Plates[0] with { Stages = [.. block.Plates[0].Stages.Select(stage => stage with { LagMs = 0 })] }] })] };
        Assert.Equal(1000 * ShotRate.IdenticalDishesFinishS(12, [480, 300, 540]), Run(Days.Input(day), 1).FinishMs.P50.Value);
    }

    [Fact]
    public void Run_OfALongDayBoundByTheSet_HasTheRateOfTheRenewalRule()
    {
        var day = WithoutBudgets(Days.Of([.. Enumerable.Repeat((30, 20, 310), 100)])) with { Setups = new() { SwapMs = 45_000, FirstMs = 45_000 } };
        var shoot = new ThreePoint(200, 300, 430, Spread.Triangle);
        var times = Enumerable.Range(0, 100).ToDictionary(i => Operation.Shoot(i, 0), _ => shoot);
        var none = new NoTrail();
        var early = Days.Input(day, uncertainty: new() { Times = times }) with { Planned = Schedule.Of(day, Enumerable.Range(0, 100)).Earliest };
        var result = Run(early, 1000);
        Assert.Equal(ShotRate.LongRun(0, 0, 45, shoot.Mean, ref none), result.FinishedPerHour, 0.03);
        Assert.Equal(Days.Set, result.Bottleneck);
    }

    [Fact]
    public void Bottleneck_OfADayBoundByTheKitchen_IsTheStation()
    {
        var day = Days.Of([.. Enumerable.Repeat((900, 60, 120), 10)]);
        var result = Run(Days.Input(day, uncertainty: Days.Loose(day)), 500);
        Assert.Equal(Days.Station, result.Bottleneck);
        Assert.True(result.Resources[Days.Station].BindingShare > 0.99);
        Assert.True(result.Resources[Days.Station].UtilisationShare > result.Resources[Days.Set].UtilisationShare);
        Assert.Equal(1, result.Resources.Sum(one => one.PathShare) + result.PathShareOfNobody, 1e-9);
    }

    [Fact]
    public void Run_WithFewerKeepers_FinishesLaterAndMakesPlatesAgain()
    {
        var day = Days.Twenty();
        var (sure, poor) = (Run(Days.Input(day, FiringPolicy.Call, Days.Loose(day, 1)), 300), Run(Days.Input(day, FiringPolicy.Call, Days.Loose(day, 0.2, 3)), 300));
        Assert.True(poor.FinishMs.P50.Value > sure.FinishMs.P90.Value);
        Assert.True(poor.Blocks.Sum(block => block.MadeAgain) > sure.Blocks.Sum(block => block.MadeAgain));
        Assert.True(poor.MeanFinished < 20);
        Assert.True(poor.FramesPerHour > poor.KeepersPerHour && poor.KeepersPerHour >= poor.FinishedPerHour);
    }

    // Setups take longer than planned: by the clock plates come on time and wait for a set that falls behind, on call they come later, too.
    [Fact]
    public void Policies_OfASetThatFallsBehind_DifferInWaitingPlates()
    {
        var day = ToTheFirstFrame(Days.Of([.. Enumerable.Repeat((240, 60, 400), 12)]), 150_000);
        var uncertainty = new DayUncertainty
        {
            SetupFactor = new(1.2, 1.6, 2, Spread.Pert),
            Times = Enumerable.Range(0, 12).ToDictionary(i => Operation.Stage(i, 0, 0), _ => Days.Around(240_000)),
        };
        var (clock, call) = (Run(Days.Input(day, FiringPolicy.Clock, uncertainty), 500), Run(Days.Input(day, FiringPolicy.Call, uncertainty), 500));
        Assert.True(clock.Blocks.Sum(block => block.Broken) > 2 * call.Blocks.Sum(block => block.Broken));
        Assert.True(clock.Blocks.Sum(block => block.MeanWaitMs) > call.Blocks.Sum(block => block.MeanWaitMs));
        Assert.True(clock.MeanFinished < call.MeanFinished);
    }

    [Fact]
    public void Run_WhoseStationCloses_CountsOverHoursAndMissedShots()
    {
        var day = Days.Of((600, 60, 100), (600, 60, 100));
        day = day with { Resources = [day.Resources[0] with { Open = [new(0, 1_300_000)] }, .. day.Resources.Skip(1)] };
        var input = Days.Input(day, FiringPolicy.Clock);
        Assert.Equal(0, Run(input, 20).OverHours);
        var slow = new DayUncertainty { Times = new Dictionary<Operation, ThreePoint> { [Operation.Stage(1, 0, 0)] = new(800, 800, 800, Spread.Pert) } };
        Assert.Equal(20, Run(input with { Uncertainty = slow }, 20).OverHours);

        var dark = day with { Blocks = [day.Blocks[0], day.Blocks[1] with { Shots = [day.Blocks[1].Shots[0] with { Open = [new(0, 2_000_000)] }] }] };
        var late = Days.Input(dark) with { Uncertainty = slow };
        Assert.Equal(0, Run(late with { Uncertainty = new() }, 5).MeanMissed);
        Assert.Equal(1, Run(late, 5).MeanMissed);
    }

    [Fact]
    public void Run_ThatIsStopped_Throws()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => DaySimulation.Run(Days.Input(Days.Twenty()), 10_000, 1, 2, stop.Token));
    }

    [Fact]
    public void Run_OfADayThatHasBegun_IsRefused()
    {
        var input = Days.Input(Days.Twenty());
        var begun = input with { Day = input.Day with { Progress = new(0, [], []) } };
        Assert.Throws<ArgumentException>(() => DaySimulation.Run(begun, 10, 1, 1, default));
    }

    private static DaySimulation Run(DaySimulationInput input, int replications) => DaySimulation.Run(input, replications, 7, 2, default);

    private static ShootDay ToTheFirstFrame(ShootDay day, long limitMs) => day with
    {
        Blocks =
        [
            .. day.Blocks.Select(block => block with
            {
                Plates = [block.Plates[0] with { Budgets = [new("herbs", Moment.End(1), Moment.AfterStart(0), limitMs)] }],
            }),
        ],
    };

    private static ShootDay WithoutBudgets(ShootDay day) =>
        day with { Blocks = [.. day.Blocks.Select(block => block with { Plates = [.. block.Plates.Select(plate => plate with { Budgets = [] })] })] };
}
