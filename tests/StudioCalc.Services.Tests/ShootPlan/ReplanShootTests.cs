using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class ReplanShootTests
{
    public static TheoryData<string, string, Action<ReplanShootRequest>> Bad => new()
    {
        { "order[0]", "CONFLICT", request => request.Order[0] = "nothing of that name" },
        { "order[1]", "CONFLICT", request => request.Order[1] = request.Order[0] },
        { "order", "CONFLICT", request => request.Order.RemoveAt(6) },
        { "events[0].name", "CONFLICT", request => Only(request, Event(ReportedEventKind.Fired, "noodle lift", 10)) },
        { "events[0].name", "CONFLICT", request => Only(request, Event(ReportedEventKind.Shot, "sesame noodles", 10)) },
        { "events[0].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Fired, "sesame noodles", 100000)) },
        { "events[1].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Fired, "hummus", 10), Event(ReportedEventKind.Fired, "hummus", 20)) },
        { "events[0].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Fired, "hummus", 20), Event(ReportedEventKind.Landed, "hummus", 10)) },
        { "events[1].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Landed, "hummus", 10), Event(ReportedEventKind.Landed, "hummus", 20)) },
        { "events[1].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Lost, "hummus", 10), Event(ReportedEventKind.Lost, "hummus", 20)) },
        { "events[1].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Shot, "hummus swirl", 500), Event(ReportedEventKind.Shot, "hummus swirl", 600)) },
        { "events[0].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Shooting, "hummus swirl", 600), Event(ReportedEventKind.Shot, "hummus swirl", 500)) },
        { "events[1].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Landed, "hummus", 600), Event(ReportedEventKind.Shooting, "hummus swirl", 500)) },
        { "events[1].at", "CONFLICT", request => Only(request, Event(ReportedEventKind.Lost, "hummus", 400), Event(ReportedEventKind.Shot, "hummus swirl", 500)) },
        {
            "events[1].at", "CONFLICT", request => Only(
                request,
                Event(ReportedEventKind.Shooting, "hummus swirl", 100),
                Event(ReportedEventKind.Shooting, "noodle lift", 200),
                Event(ReportedEventKind.Shot, "hummus swirl", 300))
        },
        { "portions[1].plate", "CONFLICT", request => request.Portions.Add([Portions("hummus", 1), Portions("hummus", 2)]) },
        { "portions[0].plate", "CONFLICT", request => request.Portions.Add(Portions("noodle lift", 1)) },
        { "daylight[0].shot", "CONFLICT", request => request.Daylight.Add(Daylight("hummus", 0, 100)) },
        { "daylight[1].shot", "CONFLICT", request => request.Daylight.Add([Daylight("noodle lift", 0, 9000), Daylight("noodle lift", 0, 8000)]) },
        { "daylight[0].hours[0].until", "CONFLICT", request => request.Daylight.Add(Daylight("noodle lift", 10, 10)) },
        { "day.plates[0].stages[0].station", "REQUIRED", request => request.Day.Plates[0].Stages[0].ClearStation() },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void ReplanShoot_WhatContradicts_IsRefusedByPath(string field, string reason, Action<ReplanShootRequest> change)
    {
        var (request, _) = Planned(7000);
        request.Portions.Clear();
        change(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.ShootPlan.ReplanShoot(request)));
    }

    [Fact]
    public void ReplanShoot_Example_IsAnswered()
    {
        var answer = Calls.ShootPlan.ReplanShoot(Examples.Replan());
        Assert.NotEmpty(answer.FireNow.Concat<object>(answer.PlatesOut));
        Assert.NotEmpty(answer.Portions);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(700)]
    [InlineData(1900)]
    [InlineData(3100)]
    [InlineData(5200)]
    [InlineData(6500)]
    [InlineData(11000)]
    public void ReplanShoot_EventsAsPlanned_ChangeNothing(int now)
    {
        var (request, plan) = Planned(now);
        var answer = Calls.ShootPlan.ReplanShoot(request);
        Assert.False(answer.OrderChanged);
        Assert.Equal(0, answer.LaterS);
        Assert.Equal(plan.Finish, answer.Order.Solution.Finish);
        foreach (var shot in answer.Order.Solution.Shots)
        {
            var before = plan.Shots.Single(one => one.Name == shot.Name);
            Assert.Equal((before.Name, before.Start, before.End, before.Approved), (shot.Name, shot.Start, shot.End, shot.Approved));
        }

        foreach (var plate in answer.Order.Solution.Plates)
        {
            Assert.Equal(plan.Plates.Single(one => one.Name == plate.Name).Fire, plate.Fire);
        }

        Assert.All(answer.FireNow, fire => Assert.Equal(0, fire.LaterS));
        Assert.Equal(
            plan.Plates.Where(plate => plate.Fire.Seconds > now && plate.Fire.Seconds <= now + 60).Select(plate => plate.Name),
            answer.FireNow.Select(fire => fire.Plate));
    }

    [Fact]
    public void ReplanShoot_EventsInAnyOrder_GiveTheSame()
    {
        var (request, _) = Planned(6500);
        var answer = Calls.ShootPlan.ReplanShoot(request);
        var events = request.Events.Reverse().ToList();
        request.Events.Clear();
        request.Events.Add(events);
        Assert.Equal(answer, Calls.ShootPlan.ReplanShoot(request));
    }

    [Fact]
    public void ReplanShoot_LostPlate_IsMadeAgainAndItsShotComesStill()
    {
        var (request, plan) = Planned(plan => plan.Shots[0].Start.Seconds - 1);
        var shot = plan.Shots[0];
        var plate = request.Day.Shots.Single(one => one.Name == shot.Name).Plates[0];
        request.Events.Add(Event(ReportedEventKind.Lost, plate, request.Now.Seconds));
        var answer = Calls.ShootPlan.ReplanShoot(request);
        Assert.Contains(answer.Order.Solution.Plates, one => one.Name == plate && one.Fire.Seconds >= request.Now.Seconds);
        Assert.Contains(answer.Order.Solution.Shots, one => one.Name == shot.Name);
        Assert.True(answer.LaterS >= 0);
        Assert.DoesNotContain(answer.PlatesOut, one => one.Plate == plate);
    }

    [Fact]
    public void ReplanShoot_LostPlateWithoutPortions_LosesItsShotsAndNoOther()
    {
        var (request, plan) = Planned(plan => plan.Shots[0].Start.Seconds - 1);
        var shot = plan.Shots[0].Name;
        var plate = request.Day.Shots.Single(one => one.Name == shot).Plates[0];
        request.Events.Add(Event(ReportedEventKind.Lost, plate, request.Now.Seconds));
        request.Portions.Add(Portions(plate, 0));
        var answer = Calls.ShootPlan.ReplanShoot(request);
        Assert.Equal(request.Day.Shots.Where(one => one.Plates.Contains(plate)).Select(one => one.Name), answer.LostShots);
        Assert.Equal(7, answer.LostShots.Count + answer.Order.Solution.Shots.Count);
        Assert.Equal(0u, answer.Portions.Single(portions => portions.Plate == plate).Count);
    }

    [Fact]
    public void ReplanShoot_Portions_CountWhatIsStillCooked()
    {
        var (request, plan) = Planned(0);
        request.Portions.Add([Portions(plan.Plates[^1].Name, 3), Portions("noodles to focus on", 2)]);
        Assert.Equal([2u, 2u], Calls.ShootPlan.ReplanShoot(request).Portions.Select(portions => portions.Count));
    }

    [Fact]
    public void ReplanShoot_GarnishThatOutlivesItsLook_IsToBeLaidAnew()
    {
        // Landed long ago, as far as was told, and shot later than planned.
        var (request, plan) = Planned(plan => plan.Shots.Single(shot => shot.Name == "noodle lift").Start.Seconds - 1);
        var landed = plan.Plates.Single(plate => plate.Name == "sesame noodles").Landed.Seconds;
        request.Now = DayReaderTests.S((int)landed + 230);
        foreach (var one in request.Events.Where(one => one.Name == "noodle lift").ToList())
        {
            request.Events.Remove(one);
        }

        var answer = Calls.ShootPlan.ReplanShoot(request);
        var replaced = Assert.Single(answer.Replace);
        Assert.Equal(("sesame noodles", "coriander"), (replaced.Plate, replaced.Component));
        Assert.True(replaced.Ends.ToTimeSpan() < replaced.NeededUntil.ToTimeSpan());
        var plateOut = answer.PlatesOut.Single(one => one.Plate == "sesame noodles");
        Assert.Equal("noodles", plateOut.Component);
        Assert.True(plateOut.LeftS < plateOut.NeededS);
        Assert.Contains(answer.Advisories, advisory => advisory.Code == AdvisoryCode.NoHurry);
    }

    [Fact]
    public void ReplanShoot_DaylightThatGoesSooner_MovesItsShotAndSaysSo()
    {
        var (request, plan) = Planned(0);
        var steam = plan.Shots.Single(shot => shot.Name == "broth with steam");
        request.Daylight.Add(Daylight("broth with steam", 11000, 12600));
        var answer = Calls.ShootPlan.ReplanShoot(request);
        Assert.True(steam.Start.Seconds < 11000 || answer.LaterS == 0);
        Assert.InRange((answer.Order.Solution ?? answer.Order.NotReached.Nearest).Shots.Single(shot => shot.Name == "broth with steam").Start.Seconds, 11000, 12600);
    }

    [Fact]
    public void ReplanShoot_EverythingApproved_LeavesNothing()
    {
        var (request, plan) = Planned(plan => plan.Finish.Seconds);
        var answer = Calls.ShootPlan.ReplanShoot(request);
        Assert.Empty(answer.Order.Solution.Shots);
        Assert.Empty(answer.PlatesOut);
        Assert.Equal(plan.Finish, answer.Order.Solution.Finish);
    }

    [Fact]
    public void ReplanShoot_ShotBeingTaken_EndsNowAtTheEarliestAndStaysInThePlan()
    {
        var (request, plan) = Planned(plan => plan.Shots[0].End.Seconds - 10);
        request.Now = DayReaderTests.S((int)plan.Shots[0].End.Seconds + 100);
        var answer = Calls.ShootPlan.ReplanShoot(request);
        var shot = (answer.Order.Solution ?? answer.Order.NotReached.Nearest).Shots[0];
        Assert.Equal(plan.Shots[0].Name, shot.Name);
        Assert.Equal(request.Now, shot.End);
    }

    private static (ReplanShootRequest Request, ShootOrder Plan) Planned(int now) => Planned(_ => now);

    /// <summary>The example day at a moment, everything before it as planned.</summary>
    private static (ReplanShootRequest Request, ShootOrder Plan) Planned(Func<ShootOrder, long> now)
    {
        var day = Examples.Sequence().Day;
        var plan = Calls.ShootPlan.SequenceShoot(new() { Day = day }).Solution;
        var at = now(plan);
        var events = plan.Plates.SelectMany(plate => new[] { Of(ReportedEventKind.Fired, plate.Name, plate.Fire), Of(ReportedEventKind.Landed, plate.Name, plate.Landed) })
            .Concat(plan.Shots.SelectMany(shot => new[]
            {
                Of(ReportedEventKind.Setting, shot.Name, shot.SetupStart),
                Of(ReportedEventKind.Shooting, shot.Name, shot.Start),
                Of(ReportedEventKind.Shot, shot.Name, shot.End),
                Of(ReportedEventKind.Approved, shot.Name, shot.Approved),
            }));
        return (new()
        {
            Day = day,
            Order = { plan.Shots.Select(shot => shot.Name) },
            Now = DayReaderTests.S((int)at),
            Events = { events.Where(one => one.At.ToTimeSpan().TotalSeconds <= at) },
        }, plan);

        static ReportedEvent Of(ReportedEventKind kind, string name, Duration at) => new() { Kind = kind, Name = name, At = at };
    }

    private static void Only(ReplanShootRequest request, params ReportedEvent[] events)
    {
        request.Events.Clear();
        request.Events.Add(events);
    }

    private static ReportedEvent Event(ReportedEventKind kind, string name, long at) => new() { Kind = kind, Name = name, At = new() { Seconds = at } };

    private static PortionsLeft Portions(string plate, uint count) => new() { Plate = plate, Count = count };

    private static DaylightChange Daylight(string shot, int from, int until) =>
        new() { Shot = shot, Hours = { new OpenHours { From = DayReaderTests.S(from), Until = DayReaderTests.S(until) } } };
}
