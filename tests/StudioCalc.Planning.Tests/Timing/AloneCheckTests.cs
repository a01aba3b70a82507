namespace StudioCalc.Planning.Tests;

/// <summary>What a block can never keep, whatever the order.</summary>
public sealed class AloneCheckTests
{
    [Fact]
    public void Of_TheKnownPlate_IsBeyondByTheKnownTime()
    {
        var one = Case.Of("budget-infeasible-01");
        long Input(string name) => (long)one.Inputs[name]!;
        var never = AloneCheck.Of(Day(Plate(Input("carry"), Input("garnishBudget"), Input("last_frame_offset")))).Single().NeverKept.Single();
        Assert.Equal((long)one.Expected["minimum_possible"]!, never.LeastMs);
        Assert.Equal((long)one.Expected["excess"]!, never.ExcessMs);
        Assert.Equal("garnish", never.Budget.Component);
        Assert.False(never.IsByOpenTimes);
    }

    [Fact]
    public void Of_BudgetThatFitsExactly_IsKept() => Assert.Empty(AloneCheck.Of(Day(Plate(40, 210, 170))).Single().NeverKept);

    [Fact]
    public void Find_BudgetThatNeverFits_CostsItsExcessAndIsProved()
    {
        var found = ShootOrder.Find(Day(Plate(40, 180, 170), Plate(10, 400, 100), Plate(20, 100, 90)));
        Assert.True(found.IsProved);
        Assert.Equal(30 + 10, found.Schedule.ExcessMs);
        Assert.Equal([30, 0, 10], found.Schedule.Waits.OrderBy(wait => wait.Block).Select(wait => wait.ExcessMs));
        Assert.Equal(0, found.GapMs);
    }

    [Fact]
    public void Of_KitchenThatClosesBeforeTheLight_IsForbiddenByOpenTimes()
    {
        var day = Day(Plate(40, 1000, 100));
        var dark = day with
        {
            Resources = [day.Resources[0], day.Resources[1] with { Open = [new(0, 2000)] }],
            Blocks = [day.Blocks[0] with { Shots = [day.Blocks[0].Shots[0] with { Open = [new(5000, 9000)] }] }],
        };
        var never = AloneCheck.Of(dark).Single().NeverKept.Single();
        Assert.True(never.IsByOpenTimes);
        Assert.Equal(140, never.LeastMs);
        Assert.Equal(5000 + 100 - 2000, never.ReachedMs);
    }

    [Fact]
    public void Of_ShotLongerThanItsLight_HasNoPlace()
    {
        var day = Day(Plate(40, 1000, 100), Plate(40, 1000, 100));
        var dark = day with { Blocks = [day.Blocks[0] with { Shots = [day.Blocks[0].Shots[0] with { Open = [new(5000, 5199)] }] }, day.Blocks[1]] };
        Assert.Equal([false, true], AloneCheck.Of(dark).Select(block => block.HasPlace));
        var found = ShootOrder.Find(dark);
        Assert.Equal([0], found.Schedule.LeftOut);
        Assert.Equal([1], found.Schedule.Order);
        Assert.Equal(1, found.Bound.LeftOut);
    }

    private static Plate Plate(long carry, long budget, long lastFrame) => new()
    {
        Id = "fresh",
        Stages = [new() { Resource = 1, DurationMs = 60 }, new() { DurationMs = carry }],
        Budgets = [new("garnish", Moment.End(0), Moment.AfterStart(0, lastFrame), budget)],
    };

    private static ShootDay Day(params Plate[] plates) => new()
    {
        Resources = [new() { Id = "set" }, new() { Id = "stylist" }],
        Set = 0,
        Blocks = [.. plates.Select((plate, i) => new Block { Id = $"b{i}", Plates = [plate], Shots = [new() { Id = "s", ShootMs = 200 }] })],
    };
}
