using System.Text.Json.Nodes;

namespace StudioCalc.Planning.Tests;

/// <summary>Published and recomputed values of classic and food orders.</summary>
public sealed class PublishedOrderTests
{
    private const long First = 600_000;

    public static TheoryData<string> Johnson => Case.Ids("johnson2");

    public static TheoryData<string> FlowShops => Case.Ids("permutation_flow_shop_makespan", one => FlowShop.Jobs(one).Length < 20);

    public static TheoryData<string> LargeFlowShops => Case.Ids("permutation_flow_shop_makespan", one => FlowShop.Jobs(one).Length >= 20);

    public static TheoryData<string> NoWait => Case.Ids("no_wait_flow_shop_makespan");

    public static TheoryData<string> FoodDays => Case.Ids("shoot_day_order", one => Dish.Of(one).Count <= 16);

    public static TheoryData<string> LargeFoodDays => Case.Ids("shoot_day_order", one => Dish.Of(one).Count > 16);

    [Theory]
    [MemberData(nameof(Johnson))]
    public void Find_TwoMachines_IsJohnsons(string id)
    {
        var found = ShootOrder.Find(FlowShop.Day(FlowShop.Jobs(Case.Of(id))));
        Assert.True(found.IsProved);
        Assert.Equal((long)Case.Of(id).Expected["makespan"]!, found.Schedule.FinishMs);
    }

    [Fact]
    public void Find_TwoMachinesWithCarry_IsMittens()
    {
        var one = Case.Of("johnson-lag-01");
        var day = FlowShop.Day(FlowShop.Jobs(one), lags: FlowShop.Numbers(one.Inputs["lag"]!));
        var found = ShootOrder.Find(day);
        Assert.True(found.IsProved);
        Assert.Equal((long)one.Expected["makespan"]!, found.Schedule.FinishMs);
        var published = FlowShop.Numbers(one.Expected["sequence_0based"]!).Select(job => (int)job);
        Assert.Equal(found.Schedule.FinishMs, Schedule.Of(day, published).FinishMs);
    }

    [Theory]
    [MemberData(nameof(FlowShops))]
    public void Find_FlowShop_IsProvedAtThePublishedOptimum(string id)
    {
        var found = ShootOrder.Find(FlowShop.Day(FlowShop.Jobs(Case.Of(id))));
        Assert.True(found.IsProved);
        Assert.Equal((long)Case.Of(id).Expected["optimum"]!, found.Schedule.FinishMs);
        Assert.Equal(found.Schedule.Cost, found.Bound);
    }

    [Theory]
    [MemberData(nameof(LargeFlowShops))]
    public void Find_LargeFlowShop_BoundsThePublishedOptimum(string id)
    {
        var optimum = (long)Case.Of(id).Expected["optimum"]!;
        var day = FlowShop.Day(FlowShop.Jobs(Case.Of(id)));
        var published = FlowShop.Numbers(Case.Of(id).Expected["one_optimal_sequence_1based"]!).Select(job => (int)job - 1);
        Assert.Equal(optimum, Schedule.Of(day, published).FinishMs);
        var found = ShootOrder.Find(day, new(Width: 500));
        Assert.InRange(found.Schedule.FinishMs, optimum, optimum * 105 / 100);
        Assert.True(found.Bound.FinishMs <= optimum);
        Assert.True(!found.IsProved || found.Schedule.FinishMs == optimum);
    }

    [Theory]
    [MemberData(nameof(NoWait))]
    public void Find_NoWait_IsThePublishedOptimumOrBoundsIt(string id)
    {
        var optimum = (long)Case.Of(id).Expected["optimum"]!;
        var jobs = FlowShop.Jobs(Case.Of(id));
        var found = ShootOrder.Find(FlowShop.Day(jobs, noWait: true), new(Width: jobs.Length > 16 ? 500 : null));
        Assert.Equal(jobs.Length <= 16, found.IsProved);
        Assert.InRange(found.Schedule.FinishMs, optimum, found.IsProved ? optimum : optimum * 105 / 100);
        Assert.True(found.Bound.FinishMs <= optimum);
        Assert.Equal(0, found.Schedule.ExcessMs);
    }

    [Theory]
    [MemberData(nameof(FoodDays))]
    public void Find_FoodDay_IsProvedAtTheKnownOptimum(string id)
    {
        var one = Case.Of(id);
        var day = Dish.Day(Dish.Of(one));
        var found = ShootOrder.Find(day);
        Assert.True(found.IsProved);
        Assert.Equal((1000 * (long)one.Expected["finish"]!, 1000 * (long)one.Expected["setup_seconds"]!), Times(found.Schedule));
        Assert.Equal(0, found.Schedule.ExcessMs);
        Assert.Equal(0, found.GapMs);
        if (one.Expected["one_optimal_order_0based"] is { } order)
        {
            Assert.Equal(found.Schedule.Cost, Schedule.Of(day, FlowShop.Numbers(order).Select(block => (int)block)).Cost);
        }
    }

    [Theory]
    [MemberData(nameof(LargeFoodDays))]
    public void Find_LargeFoodDay_BoundsTheKnownOptimum(string id)
    {
        var optimum = 1000 * (long)Case.Of(id).Expected["finish"]!;
        var found = ShootOrder.Find(Dish.Day(Dish.Of(Case.Of(id))), new(Width: 1000));
        Assert.InRange(found.Schedule.FinishMs, optimum, optimum * 102 / 100);
        Assert.InRange(found.Bound.FinishMs, 0, optimum);
        Assert.Equal(0, found.Schedule.ExcessMs);
    }

    [Fact]
    public void Find_AfterOneChange_BuysWhatIsKnown()
    {
        var one = Case.Of("whatif-01");
        var dishes = Dish.Of(one);
        Check("base", dishes);
        Check("cook_minus_10pct", [.. dishes.Select(dish => dish with { Cook = Cut(dish.Cook) })]);
        Check("plate_minus_10pct", [.. dishes.Select(dish => dish with { Plate = Cut(dish.Plate) })]);
        Check("shoot_minus_10pct", [.. dishes.Select(dish => dish with { Shoot = Cut(dish.Shoot) })]);
        Check("one_background", [.. dishes.Select(dish => dish with { Background = 0 })]);
        Check("budgets_plus_60s", [.. dishes.Select(dish => dish with { GarnishBudget = dish.GarnishBudget + 60, PassBudget = dish.PassBudget + 60 })]);
        Check("second_station_dishes_1_3_5_moved", [.. dishes.Select((dish, i) => dish with { Station = i % 2 })]);

        void Check(string change, IReadOnlyList<Dish> changed)
        {
            var expected = FlowShop.Numbers(one.Expected[change]!);
            Assert.Equal((1000 * expected[0], 1000 * expected[1]), Times(ShootOrder.Find(Dish.Day(changed)).Schedule));
        }
    }

    [Fact]
    public void Of_FixedOrder_HasTheKnownEarliestTimes()
    {
        var one = Case.Of("timing-fixed-01");
        var schedule = Schedule.Of(Dish.Day(Dish.Of(one)), FlowShop.Numbers(one.Inputs["order"]!).Select(block => (int)block));
        Assert.Equal(1000 * (long)one.Expected["finish"]!, schedule.FinishMs);
        foreach (var (block, starts) in one.Expected["start_cook_plate_shoot"]!.AsObject())
        {
            var index = int.Parse(block, System.Globalization.CultureInfo.InvariantCulture);
            Operation[] asked = [Operation.Stage(index, 0, 0), Operation.Stage(index, 0, 1), Operation.Shoot(index, 0)];
            Assert.Equal(FlowShop.Numbers((JsonNode)starts!).Select(s => 1000 * s), asked.Select(which => schedule.Earliest.Single(at => at.Operation == which).StartMs));
        }
    }

    private static (long Finish, long Setup) Times(Schedule schedule) => (schedule.FinishMs, schedule.SetupMs - First);

    private static int Cut(int seconds) => (int)Math.Round(seconds * 0.9, MidpointRounding.ToEven);
}
