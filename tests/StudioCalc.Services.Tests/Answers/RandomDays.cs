using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Random days to be ordered and replanned: a few dishes, breaks, daylight, budgets that hold or not, and what has happened.</summary>
internal static class RandomDays
{
    private static readonly Gen<(int Cook, int Plate, int Shoot, int Budget, int Opens, int Kind)> Dishes = Gen.Select(
        Gen.Int[1, 900], Gen.Int[0, 200], Gen.Int[1, 600], Gen.Int[60, 2000], Gen.Int[0, 4000], Gen.Int[0, 63]);

    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("SequenceShootRequest" or "ReplanShootRequest", "day") => Gen.Select(Dishes.Array[1, 5], Gen.Int[0, 7])
            .Select((dishes, kind) => (object)Day(dishes, kind)),
        ("SequenceShootRequest" or "ReplanShootRequest", "effort") => Gen.UInt[1, 50].Select(count => (object)count),
        ("ReplanShootRequest", "now") => Gen.Int[0, 4000].Select(seconds => (object)S(seconds)),
        _ => null,
    };

    public static void MakeSense(IMessage message)
    {
        if (message is not ReplanShootRequest request)
        {
            return;
        }

        var day = request.Day;
        request.Order.Clear();
        request.Order.Add(day.Shots.Select(shot => shot.Name));
        request.Daylight.Clear();
        while (request.Portions.Count > 1)
        {
            request.Portions.RemoveAt(0);
        }

        foreach (var portions in request.Portions)
        {
            portions.Plate = day.Plates[^1].Name;
            portions.Count %= 3;
        }

        var told = request.Events.Count;
        var (now, shot, plate) = (request.Now.Seconds, day.Shots[0].Name, day.Shots[0].Plates[0]);
        request.Events.Clear();
        request.Events.Add(new[]
        {
            Event(ReportedEventKind.Fired, plate, now / 5),
            Event(ReportedEventKind.Landed, plate, 2 * now / 5),
            Event(ReportedEventKind.Setting, shot, 2 * now / 5),
            Event(ReportedEventKind.Shooting, shot, 3 * now / 5),
            Event(now % 2 == 0 ? ReportedEventKind.Shot : ReportedEventKind.Lost, now % 2 == 0 ? shot : plate, 4 * now / 5),
        }.Take(told));
    }

    private static ShootDay Day((int Cook, int Plate, int Shoot, int Budget, int Opens, int Kind)[] dishes, int kind)
    {
        var day = new ShootDay
        {
            Crew = new()
            {
                Stations = { new KitchenStation { Name = "wok" }, new KitchenStation { Name = "oven", Count = 2 } },
                Runners = (uint)kind % 2,
                SetHours = { Hours(0, 3600), Hours(4500, 40000) },
            },
            Changes = new() { First = S(60), Swap = S(20), SideBySide = kind > 3, Attributes = { new AttributeChange { Name = "angle", Time = S(90) } } },
        };
        if (kind > 5)
        {
            day.Crew.SetHours.Clear();
        }

        for (var i = 0; i < dishes.Length; i++)
        {
            var dish = dishes[i];
            day.Plates.Add(new DayPlate
            {
                Name = $"dish {i}",
                Stages =
                {
                    new PlateStage { Kind = PlateStageKind.Cook, Station = i % 2 == 0 ? "wok" : "oven", Time = Takes(dish.Cook), Lag = S(dish.Kind % 4 * 10) },
                    new PlateStage { Kind = PlateStageKind.PlateUp, Time = Takes(dish.Plate) },
                    new PlateStage { Kind = PlateStageKind.Carry, Time = Takes(30) },
                },
                Budgets =
                {
                    new PlateBudget { Component = "gloss", Event = PlateEvent.OffHeat, Limit = S(dish.Budget) },
                    new PlateBudget { Component = "herbs", Event = PlateEvent.Garnished, Food = new() { OwnWindow = new() { Likely = S(dish.Budget) } }, NeededFor = S(dish.Shoot / 2) },
                },
            });
            var shot = new DayShot
            {
                Name = $"shot {i}",
                Plates = { $"dish {i}" },
                Shooting = Takes(dish.Shoot),
                Approval = Takes(dish.Plate),
                ApprovalHoldsSet = dish.Kind % 2 == 0,
                SetupBeforePlate = dish.Kind % 3 > 0,
                Attributes = { new SetAttribute { Name = "angle", Value = $"{dish.Kind % 3}" } },
            };
            if (dish.Kind > 50)
            {
                shot.Hours.Add(Hours(dish.Opens, dish.Opens + 1200));
            }

            if (dish.Kind < 10 && i > 0)
            {
                shot.Plates.Add($"dish {i - 1}");
            }

            day.Shots.Add(shot);
        }

        return day;
    }

    private static ReportedEvent Event(ReportedEventKind kind, string name, long at) => new() { Kind = kind, Name = name, At = S(at) };

    private static OpenHours Hours(int from, int until) => new() { From = S(from), Until = S(until) };

    private static UncertainTime Takes(int seconds) => new() { Likely = S(seconds) };

    private static Duration S(long seconds) => new() { Seconds = seconds };
}
