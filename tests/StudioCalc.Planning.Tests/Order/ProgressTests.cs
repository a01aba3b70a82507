using CsCheck;

namespace StudioCalc.Planning.Tests;

/// <summary>Days that have begun.</summary>
public sealed class ProgressTests
{
    private const Has Features = Has.TwoPlates | Has.TwoShots | Has.Approval | Has.Runner | Has.Waits | Has.NotBefore;

    private static readonly Gen<(ShootDay Day, ShootDay Begun, ShootOrder Plan)> Days =
        from seed in Gen.Int[1, int.MaxValue - 1]
        from blocks in Gen.Int[1, 5]
        from share in Gen.Int[0, 100]
        select Begin(RandomDay.Of(seed, blocks, Features), share);

    [Fact]
    public void Find_DayAsPlanned_ChangesNothingThatIsNoBetter() => Days.Sample(one =>
    {
        if (new DayShape(one.Begun).IsTraded)
        {
            return;
        }

        var found = ShootOrder.Find(one.Begun);
        var left = one.Plan.Schedule.Order.Where(found.Schedule.Order.Contains);
        var kept = Schedule.Of(one.Begun, left);
        Assert.True(found.Schedule.Cost <= kept.Cost);
        Assert.True(kept.FinishMs <= one.Plan.Schedule.FinishMs);
        Assert.True(found.Schedule.Cost < kept.Cost || found.Schedule.Order.SequenceEqual(left));
    }, iter: 1000);

    [Fact]
    public void Find_BegunDay_KeepsWhatHasBegunAndStartsTheRestNow() => Days.Sample(one =>
    {
        var begun = one.Begun.Progress!.Begun.ToDictionary(known => known.Operation);
        foreach (var at in ShootOrder.Find(one.Begun).Schedule is var schedule ? schedule.Earliest.Concat(schedule.Latest) : [])
        {
            if (begun.TryGetValue(at.Operation, out var known))
            {
                Assert.Equal((known.StartMs, known.EndMs), (at.StartMs, at.EndMs));
            }
            else
            {
                Assert.True(at.StartMs >= one.Begun.Progress!.NowMs, $"{at} is in the past");
            }
        }
    }, iter: 1000);

    [Fact]
    public void Find_BegunDay_IsTheBestOfAllOrders()
    {
        var proved = 0;
        Days.Sample(
            one =>
            {
                var found = ShootOrder.Find(one.Begun);
                var best = new Enumeration(one.Begun).Best;
                Assert.True(found.Bound <= best && best <= found.Schedule.Cost, $"{found.Bound} {best} {found.Schedule.Cost}");
                Assert.True(!found.IsProved || best == found.Schedule.Cost);
                Interlocked.Add(ref proved, found.IsProved ? 1 : 0);
            },
            iter: 1000);
        Assert.True(proved > 800, $"{proved} proved");
    }

    [Fact]
    public void Find_LostPlate_IsMadeAgainAndItsBlockStays()
    {
        var day = Dish.Day(Dish.Draw(1000003, 6, 2));
        var plan = ShootOrder.Find(day);
        var first = plan.Schedule.Order[0];
        var now = plan.Schedule.Latest.Single(at => at.Operation == Operation.Shoot(first, 0)).StartMs - 1000;
        var begun = plan.Schedule.Latest.Where(at => at.StartMs <= now && at.Operation != Operation.Setup(first, 0))
            .Select(at => new Begun(at.Operation, at.StartMs, at.EndMs)).ToList();
        var asPlanned = ShootOrder.Find(day with { Progress = new(now, begun, plan.Schedule.Order) });
        var lost = ShootOrder.Find(day with { Progress = new(now, [.. begun.Where(one => one.Operation.Block != first)], plan.Schedule.Order) });
        Assert.Equal(plan.Schedule.Order, asPlanned.Schedule.Order);
        Assert.Equal(6, lost.Schedule.Order.Count);
        Assert.True(lost.Schedule.FinishMs >= asPlanned.Schedule.FinishMs, $"{lost.Schedule.FinishMs} {asPlanned.Schedule.FinishMs}");
        Assert.True(lost.Schedule.Earliest.Single(at => at.Operation == Operation.Stage(first, 0, 0)).StartMs >= now);
    }

    [Fact]
    public void Find_ClockThatRunsOut_IsShotFirst()
    {
        var day = Dish.Day(Dish.Draw(1000003, 4, 1));
        foreach (var landed in Enumerable.Range(0, 4))
        {
            var carried = day.Blocks[landed].Plates[0].Stages[2].DurationMs;
            var found = ShootOrder.Find(day with { Progress = new(4_000_000, [new(Operation.Stage(landed, 0, 2), 4_000_000 - carried, 4_000_000)], [0, 1, 2, 3]) });
            Assert.Equal(landed, found.Schedule.Order[0]);
            Assert.Contains(found.Schedule.Waits, wait => wait.Block == landed && wait.ElapsedMs > 0);
        }
    }

    [Fact]
    public void Find_BlockOnTheSet_ComesFirst()
    {
        var day = Dish.Day(Dish.Draw(1007922, 5, 2));
        foreach (var block in Enumerable.Range(0, 5))
        {
            var found = ShootOrder.Find(day with { Progress = new(100, [new(Operation.Setup(block, 0), 0, 600)], [0, 1, 2, 3, 4]) });
            Assert.Equal(block, found.Schedule.Order[0]);
        }
    }

    [Fact]
    public void Find_AfterAShotThatIsTaken_SwapsPlatesForTheNext()
    {
        var day = Dish.Day(Dish.Draw(1007922, 2, 2));
        var change = day.Setups.Change(day.Blocks[0].Shots[0].Setup, day.Blocks[1].Shots[0].Setup);
        var begun = new Progress(2_000_000, [new(Operation.Shoot(0, 0), 1_000_000, 1_300_000)], [0, 1]);
        Assert.Equal(change + day.Setups.SwapMs, ShootOrder.Find(day with { Progress = begun }).Schedule.SetupMs);
        var told = day with { Progress = begun, Setups = day.Setups with { Standing = day.Blocks[1].Shots[0].Setup } };
        Assert.Equal(0, ShootOrder.Find(told).Schedule.SetupMs);
    }

    private static (ShootDay Day, ShootDay Begun, ShootOrder Plan) Begin(ShootDay day, int share)
    {
        var plan = ShootOrder.Find(day);
        var now = plan.Schedule.FinishMs * share / 100;
        var begun = plan.Schedule.Earliest.Where(at => at.StartMs < now).Select(at => new Begun(at.Operation, at.StartMs, at.EndMs)).ToList();
        return (day, day with { Progress = new(now, begun, plan.Schedule.Order) }, plan);
    }
}
