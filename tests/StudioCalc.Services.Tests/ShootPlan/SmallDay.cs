using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Small days to plan.</summary>
internal static class SmallDay
{
    /// <summary>One dish that is cooked and shot, with a budget that holds.</summary>
    public static PlanShootRequest Plan() => new()
    {
        Start = new() { LocalTime = "2026-11-26T09:00", TimeZone = "Europe/Vienna" },
        Replications = 100,
        Day = new()
        {
            Crew = new() { Stations = { new KitchenStation { Name = "wok" } } },
            Plates =
            {
                new DayPlate
                {
                    Name = "noodles",
                    Stages =
                    {
                        new PlateStage { Kind = PlateStageKind.Cook, Station = "wok", Time = Takes(300) },
                        new PlateStage { Kind = PlateStageKind.PlateUp, Time = Takes(60) },
                    },
                    Budgets = { new PlateBudget { Component = "gloss", Event = PlateEvent.Plated, Limit = Seconds(900) } },
                },
            },
            Shots = { new DayShot { Name = "noodles", Plates = { "noodles" }, Shooting = Takes(240) } },
        },
    };

    public static UncertainTime Takes(int seconds) => new() { Likely = Seconds(seconds) };

    public static Duration Seconds(int seconds) => new() { Seconds = seconds };
}
