using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class ChangeValueTests
{
    private const int Replications = 400;

    private static readonly ShootDay Day = Days.Of([.. Days.Twenty().Blocks.Take(8).Select(block => (
        (int)(block.Plates[0].Stages[0].DurationMs / 1000), (int)(block.Plates[0].Stages[1].DurationMs / 1000), (int)(block.Shots[0].ShootMs / 1000)))]);

    [Fact]
    public void Change_OfCertainTimes_SavesWhatTheOrderSaves()
    {
        var quicker = Quicker(0.9);
        var (before, after) = (ShootOrder.Find(Day), ShootOrder.Find(quicker));
        var run = Run(Day, new());
        var value = ChangeValue.AfterReordering(run, quicker, FiringPolicy.Clock, new(), default, 2, default);
        Assert.Equal(before.Schedule.FinishMs - after.Schedule.FinishMs, value.MeanSavedMs);
        Assert.Equal(0, value.ErrorMs);
        Assert.True(value.MeanSavedMs > 0);
    }

    [Fact]
    public void Change_ThatChangesNothing_BuysNothing()
    {
        var run = Run(Day, Days.Loose(Day));
        var value = ChangeValue.AfterReordering(run, Day, FiringPolicy.Call, Days.Loose(Day), default, 2, default);
        Assert.Equal((0, 0), (value.MeanSavedMs, value.ErrorMs));
        Assert.Equal(new QuantileValue(0, 0, 0), value.SavedMs.P50);
    }

    [Fact]
    public void Change_OnTheSameDraws_IsKnownBetterThanOnOthers()
    {
        var quicker = Quicker(0.9);
        var run = Run(Day, Days.Loose(Day));
        var same = ChangeValue.AfterReordering(run, quicker, FiringPolicy.Call, Days.Loose(quicker), default, 2, default);
        var (low, high) = same.Interval;
        Assert.True(low < same.MeanSavedMs && same.MeanSavedMs < high && low > 0);
        var input = DaySimulationInput.Ordered(quicker, FiringPolicy.Call, Days.Loose(quicker), default, default);
        var other = ChangeValue.Of(run, DaySimulation.Run(input, Replications, 99, 2, default));
        Assert.True(same.ErrorMs < 0.7 * other.ErrorMs, $"{same.ErrorMs} {other.ErrorMs}");
    }

    [Fact]
    public void Compare_OfUnlikeRuns_IsRefused()
    {
        var input = Days.Input(Day);
        Assert.Throws<ArgumentException>(() => ChangeValue.Of(DaySimulation.Run(input, 10, 1, 1, default), DaySimulation.Run(input, 11, 1, 1, default)));
    }

    private static DaySimulation Run(ShootDay day, DayUncertainty uncertainty) => DaySimulation.Run(
        DaySimulationInput.Ordered(day, uncertainty.Odds.Count > 0 ? FiringPolicy.Call : FiringPolicy.Clock, uncertainty, default, default),
        Replications, 5, 2, default);

    private static ShootDay Quicker(double factor) => Day with
    {
        Blocks =
        [
            .. Day.Blocks.Select(block => block with
            {
                Plates =
                [
                    block.Plates[0] with
                    {
                        Stages = [block.Plates[0].Stages[0] with { DurationMs = (long)(block.Plates[0].Stages[0].DurationMs * factor) }, block.Plates[0].Stages[1]],
                    },
                ],
            }),
        ],
    };
}
