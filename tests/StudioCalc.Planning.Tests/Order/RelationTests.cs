using CsCheck;

namespace StudioCalc.Planning.Tests;

/// <summary>What a change of the day can and cannot do to its best order.</summary>
public sealed class RelationTests
{
    private const Has Features = Has.TwoPlates | Has.TwoShots | Has.Approval | Has.Runner | Has.Waits | Has.Units;

    private static readonly Gen<ShootDay> Days =
        from seed in Gen.Int[1, int.MaxValue - 1]
        from blocks in Gen.Int[2, 6]
        let day = RandomDay.Of(seed, blocks, Features)
        where !new DayShape(day).IsTraded
        select day;

    [Fact]
    public void Find_LessWaiting_NeverFinishesEarlier() => Gen.Int[1, 30].Array[3].Array[2, 6].Select(Gen.Int[0, 40]).Sample(
        (times, wait) =>
        {
            var jobs = times.Select(job => job.Select(ms => (long)ms).ToArray()).ToArray();
            var noWait = ShootOrder.Find(FlowShop.Day(jobs, noWait: true)).Schedule.FinishMs;
            var limited = ShootOrder.Find(Budgets(FlowShop.Day(jobs, noWait: true), budget => budget with { LimitMs = budget.LimitMs + wait })).Schedule.FinishMs;
            var unlimited = ShootOrder.Find(FlowShop.Day(jobs)).Schedule.FinishMs;
            Assert.True(unlimited <= limited && limited <= noWait);
        },
        iter: 500);

    [Fact]
    public void Find_LargerBudget_NeverHurts() => Days.Select(Gen.Int[1, 20]).Sample(
        (day, more) =>
        {
            var (before, after) = (ShootOrder.Find(day), ShootOrder.Find(Budgets(day, budget => budget with { LimitMs = budget.LimitMs + more })));
            Assert.True(before.IsProved && after.IsProved);
            Assert.True(after.Schedule.ExcessMs <= before.Schedule.ExcessMs);
            Assert.True(after.Schedule.ExcessMs < before.Schedule.ExcessMs || after.Schedule.FinishMs <= before.Schedule.FinishMs);
        },
        iter: 500);

    [Fact]
    public void Find_LongerSetup_NeverHelps() => Days.Select(Gen.Int[1, 20]).Sample(
        (day, more) =>
        {
            var after = ShootOrder.Find(day with { Setups = day.Setups with { ChangeMs = [.. day.Setups.ChangeMs.Select(ms => ms + more)] } });
            var before = ShootOrder.Find(day);
            Assert.True(before.Schedule.FinishMs <= after.Schedule.FinishMs);
        },
        iter: 500);

    [Fact]
    public void Find_SideBySide_NeverFinishesLater() => Days.Sample(
        day => Assert.True(ShootOrder.Find(day with { Setups = day.Setups with { SideBySide = true } }).Schedule.FinishMs <= ShootOrder.Find(day).Schedule.FinishMs),
        iter: 300);

    [Fact]
    public void Find_Twice_IsTheSame() => Days.Sample(
        day =>
        {
            var (one, other) = (ShootOrder.Find(day), ShootOrder.Find(day));
            Assert.Equal(one.Schedule.Order, other.Schedule.Order);
            Assert.Equal(one.Schedule.Latest, other.Schedule.Latest);
            Assert.Equal((one.Bound, one.StatesKept), (other.Bound, other.StatesKept));
        },
        iter: 200);

    [Fact]
    public void Find_LargeDayTwice_IsTheSame()
    {
        var day = Dish.Day(Dish.Draw(1000003, 30, 3));
        var (one, other) = (ShootOrder.Find(day, new(300, 10)), ShootOrder.Find(day, new(300, 10)));
        Assert.Equal(one.Schedule.Order, other.Schedule.Order);
        Assert.Equal(Enumerable.Range(0, 30), one.Schedule.Order.Order());
        Assert.True(one.Splits.Count > 1);
        Assert.True(one.Bound <= one.Schedule.Cost);
        Assert.False(one.IsProved);
        Assert.Equal(0, one.Schedule.ExcessMs);
    }

    [Fact]
    public void Find_NarrowMatrix_TellsItsDetour()
    {
        var day = RandomDay.Of(7, 3, Has.Nothing) with { Setups = new() { Matrix = [[0, 9, 2], [1, 0, 1], [1, 3, 0]] } };
        Assert.Equal((0, 2, 1), ShootOrder.Find(day).SetupDetour);
        Assert.Null(ShootOrder.Find(day with { Setups = new() { Matrix = [[0, 5, 2], [1, 0, 1], [1, 3, 0]] } }).SetupDetour);
    }

    private static ShootDay Budgets(ShootDay day, Func<Budget, Budget> change) => day with
    {
        Blocks = [.. day.Blocks.Select(block => block with
        {
            Plates = [.. block.Plates.Select(plate => plate with { Budgets = [.. plate.Budgets.Select(change)] })],
        })],
    };
}
