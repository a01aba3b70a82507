using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Random plans: a small day of up to three dishes, and one part of a setup or a shot.</summary>
internal static class RandomPlans
{
    private const int Parts = 5;

    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("PlanShootRequest", "day") => Gen.Select(Gen.Int[1, 900], Gen.Int[1, 600], Gen.Int[200, 3000]).Array[1, 3].Select(dishes => (object)Day(dishes)),
        ("PlanShootRequest", "start") => Gen.OneOf<object>("2026-11-26T09:00", "2026-03-29T01:30", "2100-12-31T23:59")
            .Select(local => (object)new DayStart { LocalTime = (string)local, TimeZone = "Europe/Vienna" }),
        ("PlanShootRequest", "replications") => Gen.UInt[100, 130].Select(count => (object)count),
        ("PlanShootRequest", "effort") => Gen.UInt[1, 50].Select(count => (object)count),
        _ => null,
    };

    /// <summary>Keeps one part, and mends it.</summary>
    /// <param name="message">The request.</param>
    /// <param name="mend">Mends the request of a part.</param>
    public static void MakeSense(IMessage message, Action<IMessage> mend)
    {
        switch (message)
        {
            case PlanShootRequest plan:
                Mend(plan, mend);
                break;
            case StreamPlanRequest streamed:
                Mend(streamed.Plan, mend);
                break;
            case RenderCallSheetRequest sheet:
                Mend(sheet.Plan, mend);
                if (sheet.Floor is { } floor)
                {
                    mend(floor);
                }

                break;
        }
    }

    private static void Mend(PlanShootRequest plan, Action<IMessage> mend)
    {
        plan.Replications = plan.HasReplications ? plan.Replications : 110;
        var kept = (int)(plan.Seed % Parts);
        Cut(plan.Setups);
        Cut(plan.Shots);
        foreach (var setup in plan.Setups)
        {
            setup.Fill = kept == 0 ? setup.Fill : null;
            setup.Exposure = kept == 1 ? setup.Exposure : null;
            Mend(setup.Fill, mend);
            Mend(setup.Exposure, mend);
        }

        foreach (var shot in plan.Shots)
        {
            shot.Shot = "shot 0";
            shot.ClearSetup();
            shot.View = kept == 2 ? shot.View : null;
            shot.Focus = kept == 3 ? shot.Focus : null;
            shot.Budget = kept == 4 ? shot.Budget : null;
            if (shot.Focus is null)
            {
                shot.ClearFocusErrorMm();
            }

            Mend(shot.View, mend);
            Mend(shot.Focus, mend);
            Mend(shot.Budget, mend);
        }
    }

    private static void Mend(IMessage? part, Action<IMessage> mend)
    {
        if (part is not null)
        {
            mend(part);
        }
    }

    private static void Cut<T>(Google.Protobuf.Collections.RepeatedField<T> list)
    {
        while (list.Count > 1)
        {
            list.RemoveAt(list.Count - 1);
        }
    }

    private static ShootDay Day((int Cook, int Shoot, int Budget)[] dishes)
    {
        var day = new ShootDay { Crew = new() { Stations = { new KitchenStation { Name = "wok" } } } };
        for (var i = 0; i < dishes.Length; i++)
        {
            var one = SmallDay.Plan().Day;
            var (plate, shot) = (one.Plates[0], one.Shots[0]);
            (plate.Name, shot.Name, shot.Plates[0]) = ($"dish {i}", $"shot {i}", $"dish {i}");
            plate.Stages[0].Time.Likely = SmallDay.Seconds(dishes[i].Cook);
            plate.Budgets[0].Limit = SmallDay.Seconds(dishes[i].Budget);
            shot.Shooting.Likely = SmallDay.Seconds(dishes[i].Shoot);
            day.Plates.Add(plate);
            day.Shots.Add(shot);
        }

        return day;
    }
}
