using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>The order of a day.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> OrderPairs = new()
    {
        [AdvisoryCode.OrderNotProved] = (() => Published("limitedwait-02", 1), () => Published("limitedwait-02", 100)),
        [AdvisoryCode.DayOrderedInParts] = (() => Rows(25, request => request.Effort = 1), () => Rows(24, request => request.Effort = 1)),
        [AdvisoryCode.DetourInChanges] = (() => Rows(3, request => Table(request, 121)), () => Rows(3, request => Table(request, 120))),
        [AdvisoryCode.PlatesWait] = (
            () => Rows(1, request => request.Day.Plates[0].Budgets.Add(new PlateBudget { Component = "gloss", Event = PlateEvent.Landed, Limit = SmallDay.Seconds(900) })),
            () => Rows(1, _ => { })),
        [AdvisoryCode.PlatesNotTimed] = (
            () => Order(_ => { }),
            () => Order(request => request.Day.Plates.RemoveAt(7))),
        [AdvisoryCode.OrderKept] = (
            () => Swapped(SmallDay.Seconds(86400)),
            () => Swapped(SmallDay.Seconds(0))),
        [AdvisoryCode.PlatePastItsLook] = (() => Waiting(seconds: 1200), () => Waiting(seconds: 200)),
    };

    private static SequenceShootResponse Order(Action<SequenceShootRequest> change)
    {
        var request = Examples.Sequence();
        change(request);
        return Calls.ShootPlan.SequenceShoot(request);
    }

    private static SequenceShootResponse Published(string id, uint effort)
    {
        var request = Calls.Parse<SequenceShootRequest>(ReferenceCase.All.First(one => one.Id == id).Request.GetRawText());
        request.Effort = effort;
        return Calls.ShootPlan.SequenceShoot(request);
    }

    // Dishes that take ever longer to shoot and ever shorter to cook, and a set that changes for each.
    private static SequenceShootRequest RowsOf(int dishes)
    {
        var day = new ShootDay
        {
            Crew = new() { Stations = { new KitchenStation { Name = "wok" } } },
            Changes = new() { Attributes = { new AttributeChange { Name = "angle", Time = SmallDay.Seconds(60) }, new AttributeChange { Name = "lens", Time = SmallDay.Seconds(45) } } },
        };
        for (var i = 0; i < dishes; i++)
        {
            day.Plates.Add(new DayPlate
            {
                Name = $"dish {i}",
                Stages = { new PlateStage { Kind = PlateStageKind.Cook, Station = "wok", Time = SmallDay.Takes(100 + 37 * i % 90) } },
            });
            day.Shots.Add(new DayShot
            {
                Name = $"dish {i}",
                Plates = { $"dish {i}" },
                Shooting = SmallDay.Takes(100 + 53 * i % 80),
                Attributes = { new SetAttribute { Name = "angle", Value = $"{i % 3}" }, new SetAttribute { Name = "lens", Value = $"{i * i % 5}" } },
            });
        }

        return new() { Day = day };
    }

    private static SequenceShootResponse Rows(int dishes, Action<SequenceShootRequest> change)
    {
        var request = RowsOf(dishes);
        change(request);
        return Calls.ShootPlan.SequenceShoot(request);
    }

    // From the first to the last in so many seconds, or over the second in 60 and 60.
    private static void Table(SequenceShootRequest request, int straight)
    {
        request.Day.Changes.Attributes.Clear();
        foreach (var shot in request.Day.Shots)
        {
            shot.Attributes.Clear();
        }

        foreach (var row in new[] { new[] { 0, 60, straight }, new[] { 60, 0, 60 }, new[] { 60, 60, 0 } })
        {
            request.Day.Changes.Matrix.Add(new SetChangeRow { To = { row.Select(seconds => SmallDay.Seconds(seconds)) } });
        }
    }

    // A plate that landed after 100 s and looks well for 900 s, at a later time.
    private static ReplanShootResponse Waiting(int seconds)
    {
        var day = RowsOf(1).Day;
        day.Plates[0].Budgets.Add(new PlateBudget { Component = "gloss", Event = PlateEvent.Landed, Limit = SmallDay.Seconds(900) });
        return Calls.ShootPlan.ReplanShoot(new()
        {
            Day = day,
            Order = { "dish 0" },
            Now = SmallDay.Seconds(seconds),
            Events =
            {
                new ReportedEvent { Kind = ReportedEventKind.Fired, Name = "dish 0", At = SmallDay.Seconds(0) },
                new ReportedEvent { Kind = ReportedEventKind.Landed, Name = "dish 0", At = SmallDay.Seconds(100) },
            },
        });
    }

    // An order with the longest cooking first, at the start of the day.
    private static ReplanShootResponse Swapped(Google.Protobuf.WellKnownTypes.Duration leastGain)
    {
        var day = RowsOf(4).Day;
        return Calls.ShootPlan.ReplanShoot(new()
        {
            Day = day,
            Order = { day.Plates.OrderByDescending(plate => plate.Stages[0].Time.Likely.Seconds).Select(plate => plate.Name) },
            Now = SmallDay.Seconds(0),
            LeastGain = leastGain,
        });
    }
}
