using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Random days to be simulated: a few plates from two stations, with budgets, tries and changes of the set.</summary>
internal static class RandomRuns
{
    private static readonly Gen<(int Cook, int Plate, int Shoot, int Budget, double Chance, int Angle)> Dishes = Gen.Select(
        Gen.Int[1, 900], Gen.Int[0, 200], Gen.Int[1, 600], Gen.Int[200, 3000], Gen.Double[0.3, 1], Gen.Int[0, 2]);

    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("EstimateThroughputRequest", "day") => Gen.Select(Dishes.Array[1, 4], Gen.Bool, Gen.Double[1, 3])
            .Select((dishes, shared, factor) => (object)Day(dishes, shared, factor)),
        ("EstimateThroughputRequest", "replications") => Gen.UInt[100, 130].Select(count => (object)count),
        ("EstimateThroughputRequest", "effort") => Gen.UInt[1, 50].Select(count => (object)count),
        _ => null,
    };

    public static void MakeSense(IMessage message)
    {
        if (message is not EstimateThroughputRequest request)
        {
            return;
        }

        request.Replications = request.HasReplications ? request.Replications : 110;
        while (request.Changes.Count > 2)
        {
            request.Changes.RemoveAt(0);
        }

        foreach (var change in request.Changes)
        {
            change.ClearName();
            change.ClearValue();
            switch (change.Kind)
            {
                case DayChangeKind.StationMore:
                    change.Name = "wok";
                    break;
                case DayChangeKind.AttributeShared:
                    change.Name = "angle";
                    break;
                case not DayChangeKind.StylistMore:
                    change.Value = 0.5;
                    break;
            }
        }
    }

    private static ShootDay Day((int Cook, int Plate, int Shoot, int Budget, double Chance, int Angle)[] dishes, bool isShared, double factor)
    {
        var day = new ShootDay
        {
            Crew = new() { Stations = { new KitchenStation { Name = "wok" }, new KitchenStation { Name = "oven", Count = 2 } }, Runners = 1 },
            Changes = new() { First = S(60), Swap = S(20), LongestFactor = factor, Attributes = { new AttributeChange { Name = "angle", Time = S(90) } } },
        };
        for (var i = 0; i < dishes.Length; i++)
        {
            var dish = dishes[i];
            day.Plates.Add(new DayPlate
            {
                Name = $"dish {i}",
                Stages =
                {
                    new PlateStage { Kind = PlateStageKind.Cook, Station = i % 2 == 0 ? "wok" : "oven", Time = About(dish.Cook) },
                    new PlateStage { Kind = PlateStageKind.PlateUp, Time = About(dish.Plate) },
                    new PlateStage { Kind = PlateStageKind.Carry, Time = About(30) },
                },
                Budgets = { new PlateBudget { Component = "gloss", Event = PlateEvent.Landed, Limit = S(dish.Budget) } },
            });
            var shot = new DayShot
            {
                Name = $"shot {i}",
                Plates = { $"dish {i}" },
                Shooting = About(dish.Shoot),
                Frames = new() { KeepChance = dish.Chance, MostTries = 3 },
            };
            shot.Attributes.Add(new SetAttribute { Name = "angle", Value = $"angle {dish.Angle}" });
            if (isShared && i > 0)
            {
                shot.Plates.Add("dish 0");
            }

            day.Shots.Add(shot);
        }

        return day;
    }

    private static UncertainTime About(int seconds) => new() { Likely = S(seconds), Shortest = S(seconds / 2), Longest = S(2 * seconds) };

    private static Duration S(long seconds) => new() { Seconds = seconds };
}
