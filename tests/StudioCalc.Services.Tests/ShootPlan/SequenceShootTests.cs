using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SequenceShootTests
{
    [Fact]
    public void SequenceShoot_Example_IsProvedAndKeepsEveryBudget()
    {
        var order = Sequence(_ => { }).Solution;
        Assert.True(order.IsProved);
        Assert.Equal(0, order.GapShare);
        Assert.Equal(order.Finish, order.FinishBound);
        Assert.Equal(Enumerable.Range(1, 7), order.Shots.Select(shot => (int)shot.Place));
        Assert.Equal(["noodles to focus on"], order.UntimedPlates);
        Assert.All(order.Plates.SelectMany(plate => plate.Budgets), budget => Assert.True(budget.SlackS >= 0, budget.Component));
        Assert.Equal(["wok", "oven", "stylist", "runner", "set"], order.Loads.Select(load => load.Name));
        Assert.All(order.Loads, load => Assert.InRange(load.BusyShare, 0.01, 1));
    }

    [Fact]
    public void SequenceShoot_PrintedTimes_FollowOneAnother()
    {
        var request = Examples.Sequence();
        var order = Calls.ShootPlan.SequenceShoot(request).Solution;
        foreach (var shot in order.Shots)
        {
            Assert.True(shot.SetupStart.ToTimeSpan() + shot.SetupTime.ToTimeSpan() <= shot.Start.ToTimeSpan(), shot.Name);
            var asked = request.Day.Shots.Single(one => one.Name == shot.Name);
            Assert.Equal(asked.Shooting.Likely.ToTimeSpan(), shot.End.ToTimeSpan() - shot.Start.ToTimeSpan());
            Assert.All(asked.Plates, plate => Assert.True(order.Plates.Single(one => one.Name == plate).Landed.ToTimeSpan() <= shot.Start.ToTimeSpan()));
        }

        Assert.All(order.Shots.Zip(order.Shots.Skip(1)), pair => Assert.True(pair.First.End.ToTimeSpan() <= pair.Second.SetupStart.ToTimeSpan()));
        Assert.Equal(order.Plates.Select(plate => plate.Fire.ToTimeSpan()).Order(), order.Plates.Select(plate => plate.Fire.ToTimeSpan()));
        foreach (var plate in order.Plates)
        {
            Assert.True(plate.EarliestFire.ToTimeSpan() <= plate.Fire.ToTimeSpan());
            Assert.Equal(plate.Fire, plate.Stages[0].Start);
            Assert.All(plate.Stages.Zip(plate.Stages.Skip(1)), pair => Assert.True(pair.First.End.ToTimeSpan() <= pair.Second.Start.ToTimeSpan()));
        }
    }

    [Fact]
    public void SequenceShoot_DaylightAndBreaks_AreKept()
    {
        var order = Sequence(_ => { }).Solution;
        var steam = order.Shots.Single(shot => shot.Name == "broth with steam");
        Assert.InRange(steam.Start.Seconds, 7800, 12600);
        Assert.InRange(steam.End.Seconds, 7800, 12600);
        Assert.All(order.Shots, shot => Assert.True(shot.End.Seconds <= 4500 || shot.Start.Seconds >= 7200));
    }

    [Fact]
    public void SequenceShoot_SharedPlates_AreShotOneAfterTheOther()
    {
        var shots = Sequence(_ => { }).Solution.Shots.Select(shot => shot.Name).ToList();
        Assert.Equal(shots.IndexOf("hummus swirl") + 1, shots.IndexOf("mezze table"));
    }

    [Fact]
    public void SequenceShoot_FixedPlace_IsKept()
    {
        var order = Sequence(day => day.Shots[5].Position = 1).Solution;
        Assert.Equal("aubergine", order.Shots[0].Name);
    }

    [Fact]
    public void SequenceShoot_ChangedAttributes_AreThoseThatDifferFromTheShotBefore()
    {
        var request = Examples.Sequence();
        var order = Calls.ShootPlan.SequenceShoot(request).Solution;
        Assert.Equal(["angle", "surface", "lens"], order.Shots[0].ChangedAttributes);
        foreach (var (before, shot) in order.Shots.Zip(order.Shots.Skip(1)))
        {
            var (one, other) = (Values(before.Name), Values(shot.Name));
            Assert.Equal(one.Keys.Where(name => one[name] != other[name]), shot.ChangedAttributes);
            var seconds = shot.ChangedAttributes.Sum(name => request.Day.Changes.Attributes.Single(change => change.Name == name).Time.Seconds);
            Assert.Equal(seconds + 45, shot.SetupTime.Seconds);
        }

        Dictionary<string, string> Values(string name) =>
            request.Day.Shots.Single(shot => shot.Name == name).Attributes.ToDictionary(attribute => attribute.Name, attribute => attribute.Value);
    }

    [Fact]
    public void SequenceShoot_ComputedWindow_IsThePessimisticOne()
    {
        var broth = Sequence(_ => { }).Solution.Plates.Single(plate => plate.Name == "broth bowl").Budgets[0];
        var held = Calls.Freshness.EstimateHoldingTime(new()
        {
            Item = new() { Liquid = new() { MassG = 450, SurfaceDiameterMm = 170, StartCelsius = 92 } },
            Air = new() { TemperatureCelsius = 22, RelativeHumidity = 0.45 },
            EndsAt = new() { SurfaceCelsius = 55, SpreadK = 3 },
        });
        Assert.Equal(held.Window.Span.Pessimistic.ToTimeSpan().TotalSeconds, broth.Limit.ToTimeSpan().TotalSeconds, 6e-4);
        Assert.Equal(SourceKind.Computed, broth.SourceKind);
    }

    [Fact]
    public void SequenceShoot_LookThatDoesNotEnd_BindsNothing()
    {
        var warm = Sequence(day => day.Plates[1].Budgets[1].Food = new() { Leaves = new() { SurfaceCelsius = 20 } })
            .Solution.Plates.Single(plate => plate.Name == "broth bowl").Budgets[1];
        Assert.Null(warm.Limit);
        Assert.False(warm.HasSlackS);
        Assert.False(warm.HasSourceKind);
    }

    [Fact]
    public void SequenceShoot_BudgetShorterThanItsWork_NamesPlateComponentAndWhatIsMissing()
    {
        // Carried for 30 s, then needed for 150 s.
        var not = Sequence(day => day.Plates[0].Budgets[1].Limit = DayReaderTests.S(160)).NotReached;
        var never = Assert.Single(not.NeverFits);
        Assert.Equal((NeverFitsReason.Budget, "sesame noodles", "coriander", "noodle lift"), (never.Reason, never.Plate, never.Component, never.Shot));
        Assert.Equal((180, 160, 20), (never.Least.Seconds, never.Limit.Seconds, never.Missing.Seconds));
        Assert.Equal(["Lay it on the set, so that its clock starts there: then it fits.", "Take the frames that need it within 130 s instead of 150 s: then it fits."], never.Remedies);
        Assert.Equal(20, not.ShortfallS);
        Assert.Equal(20, not.Nearest.BudgetExcessS);
        Assert.Equal(-20, not.Nearest.Plates.Single(plate => plate.Name == "sesame noodles").Budgets[1].SlackS);
        Assert.Empty(not.LeftOut);
    }

    [Fact]
    public void SequenceShoot_ShotThatHoursLeaveNoPlace_IsLeftOutOfTheNearest()
    {
        var not = Sequence(day => day.Shots[1].Hours[0].Until = DayReaderTests.S(7900)).NotReached;
        var never = Assert.Single(not.NeverFits);
        Assert.Equal((NeverFitsReason.Hours, "", "broth with steam"), (never.Reason, never.Plate, never.Shot));
        Assert.Null(never.Missing);
        Assert.Equal(["Open hours of the frames of broth with steam for 240 s in one piece."], never.Remedies);
        Assert.Equal(["broth with steam"], not.LeftOut);
        Assert.Equal(6, not.Nearest.Shots.Count);
    }

    [Fact]
    public void SequenceShoot_HoursThatLeaveNothing_HaveNoNearest()
    {
        var not = Sequence(day => day.Crew.SetHours.Clear(), day => day.Crew.SetHours.Add(new OpenHours { From = DayReaderTests.S(0), Until = DayReaderTests.S(10) })).NotReached;
        Assert.Null(not.Nearest);
        Assert.False(not.HasShortfallS);
        Assert.Equal(7, not.LeftOut.Count);
    }

    [Fact]
    public void SequenceShoot_LargerBudget_NeverEndsLater()
    {
        var tight = Sequence(_ => { }).Solution.Finish.ToTimeSpan();
        var loose = Sequence(day =>
        {
            foreach (var budget in day.Plates.SelectMany(plate => plate.Budgets))
            {
                budget.Limit = DayReaderTests.S(604800);
                budget.EndsAt = null;
            }
        }).Solution.Finish.ToTimeSpan();
        Assert.True(loose <= tight);
    }

    [Fact]
    public async Task SequenceShoot_Cancelled_Stops()
    {
        var request = Examples.Sequence();
        using var source = new CancellationTokenSource();
        await source.CancelAsync();
        var error = await Assert.ThrowsAsync<RpcException>(
            async () => await Calls.ShootPlan.SequenceShootAsync(request, cancellationToken: source.Token));
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
    }

    private static SequenceShootResponse Sequence(params Action<ShootDay>[] changes)
    {
        var request = Examples.Sequence();
        foreach (var change in changes)
        {
            change(request.Day);
        }

        return Calls.ShootPlan.SequenceShoot(request);
    }
}
