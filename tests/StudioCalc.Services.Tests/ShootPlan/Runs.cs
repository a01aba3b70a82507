using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Small days to be simulated.</summary>
internal static class Runs
{
    /// <summary>One dish of certain times: cooked in 300 s, plated in 60 s, shot in 240 s.</summary>
    public static EstimateThroughputRequest OneDish(int budgetS = 900, int untilS = 86400)
    {
        var day = SmallDay.Plan().Day;
        day.Plates[0].Budgets[0].Event = PlateEvent.Landed;
        day.Plates[0].Budgets[0].Limit = S(budgetS);
        day.Crew.SetHours.Add(new OpenHours { From = S(0), Until = S(untilS) });
        return new() { Day = day, Replications = 100 };
    }

    /// <summary>Three dishes from one wok, whose times and tries are not certain.</summary>
    public static EstimateThroughputRequest ThreeDishes()
    {
        var request = new EstimateThroughputRequest
        {
            Day = new()
            {
                Crew = new() { Stations = { new KitchenStation { Name = "wok" } }, Stylists = 1, Runners = 0 },
                Changes = new()
                {
                    First = S(300), Swap = S(45), LongestFactor = 1.5, Attributes = { new AttributeChange { Name = "angle", Time = S(200) } },
                },
            },
            Policy = FiringPolicy.Clock,
            MostPlates = 3,
            Replications = 2000,
            Basis = EstimateBasis.Measured,
        };
        for (var i = 0; i < 3; i++)
        {
            request.Day.Plates.Add(new DayPlate
            {
                Name = $"dish {i}",
                Stages =
                {
                    new PlateStage { Kind = PlateStageKind.Cook, Station = "wok", Time = About(800 + 100 * i) },
                    new PlateStage { Kind = PlateStageKind.PlateUp, Time = About(90) },
                },
                Budgets = { new PlateBudget { Component = "herbs", Event = PlateEvent.Garnished, Limit = S(700) } },
            });
            request.Day.Shots.Add(new DayShot
            {
                Name = $"shot {i}",
                Plates = { $"dish {i}" },
                Shooting = About(300),
                Approval = About(60),
                Attributes = { new SetAttribute { Name = "angle", Value = i == 1 ? "overhead" : "low" } },
                Frames = new() { KeepChance = 0.6, MostTries = 4, TryTime = About(120), FramesPerTry = 5 },
            });
        }

        return request;
    }

    /// <summary>A source that cancels after 20 ms, from a thread of its own.</summary>
    public static CancellationTokenSource CancelledSoon()
    {
        var source = new CancellationTokenSource();
        new Thread(() =>
        {
            Thread.Sleep(20);
            source.Cancel();
        }).Start();
        return source;
    }

    public static UncertainTime About(int seconds) => new() { Likely = S(seconds), Shortest = S(seconds * 3 / 4), Longest = S(seconds * 3 / 2) };

    public static Duration S(long seconds) => new() { Seconds = seconds };
}
