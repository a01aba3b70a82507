using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads days.</summary>
internal static class DayReader
{
    /// <summary>Reads a day and computes the looks of its food.</summary>
    /// <exception cref="Grpc.Core.RpcException">Any field is bad.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static DayRead ReadDay(this RequestContext context, ShootDay day, FieldPath path, CancellationToken cancellation)
    {
        var draft = context.DraftDay(day, path);
        context.ThrowIfRefused();
        return draft.Complete(context, cancellation);
    }

    /// <summary>Reads a day as far as its fields tell it. Bad fields are noted; the draft is then not to be completed.</summary>
    public static DayDraft DraftDay(this RequestContext context, ShootDay day, FieldPath path)
    {
        var (platesPath, shotsPath) = (path[ShootDay.PlatesFieldNumber], path[ShootDay.ShotsFieldNumber]);
        var crew = context.ReadCrew(day.Crew, path[ShootDay.CrewFieldNumber]);
        var plateOf = context.ReadNames(day.Plates.Select(plate => plate.Name), i => platesPath.At(i)[DayPlate.NameFieldNumber].ToString());
        var shotOf = context.ReadNames(day.Shots.Select(shot => shot.Name), i => shotsPath.At(i)[DayShot.NameFieldNumber].ToString());
        context.CheckPlateNames(day, plateOf, path);
        var airPath = path[ShootDay.AirFieldNumber];
        var plates = day.Plates.Select((plate, i) => context.ReadPlate(plate, crew, day.Air, platesPath.At(i), airPath)).ToList();
        var shots = day.Shots.Select((shot, i) => context.ReadShot(shot, shotsPath.At(i))).ToList();
        var groups = ShotGroups.Of(day.Shots, plateOf);
        for (var i = 0; i < day.Plates.Count; i++)
        {
            context.CheckLastFrames(day, i, groups, shotOf, platesPath.At(i)[DayPlate.BudgetsFieldNumber]);
        }

        return new()
        {
            Asked = day,
            Crew = crew,
            Plates = plates,
            Shots = shots,
            Groups = groups,
            ShotOf = shotOf,
            Positions = context.ReadPositions(day.Shots, groups.GroupOf, groups.Shots.Count, shotsPath),
            Changes = context.ReadChanges(day, path),
        };
    }

    private static void CheckPlateNames(this RequestContext context, ShootDay day, Dictionary<string, int> plateOf, FieldPath path)
    {
        var used = new HashSet<int>();
        for (var i = 0; i < day.Shots.Count; i++)
        {
            var own = new HashSet<string>(StringComparer.Ordinal);
            var names = path[ShootDay.ShotsFieldNumber].At(i)[DayShot.PlatesFieldNumber];
            for (var k = 0; k < day.Shots[i].Plates.Count; k++)
            {
                var name = day.Shots[i].Plates[k];
                if (!plateOf.TryGetValue(name, out var plate))
                {
                    context.Refuse(names.ItemAt(k), "The day has no plate of this name.");
                }
                else if (!own.Add(name))
                {
                    context.Refuse(names.ItemAt(k), "The shot names this plate already.");
                }
                else
                {
                    used.Add(plate);
                }
            }
        }

        for (var i = 0; i < day.Plates.Count; i++)
        {
            if (!used.Contains(i) && day.Plates[i].Use is not (PlateUse.StandIn or PlateUse.Spare))
            {
                context.Refuse(path[ShootDay.PlatesFieldNumber].At(i)[DayPlate.NameFieldNumber].ToString(),
                    "No shot needs this plate: name it in a shot, or say that it is a stand-in or a spare.");
            }
        }
    }

    private static void CheckLastFrames(
        this RequestContext context, ShootDay day, int plate, ShotGroups groups, Dictionary<string, int> shotOf, FieldPath path)
    {
        for (var i = 0; i < day.Plates[plate].Budgets.Count; i++)
        {
            var budget = day.Plates[plate].Budgets[i];
            if (budget.HasLastShot && !(shotOf.TryGetValue(budget.LastShot, out var named) && groups.PlatesOf[named].Contains(plate)))
            {
                context.Refuse(path.At(i)[PlateBudget.LastShotFieldNumber].ToString(), "Must be a shot that needs the plate.");
            }
            else if (budget.NeededFor is { } needed && DayDraft.LastShot(budget, plate, groups, shotOf) is { } last
                && needed.ToMilliseconds() > day.Shots[last].Shooting.Likely.ToMilliseconds())
            {
                context.Refuse(path.At(i)[PlateBudget.NeededForFieldNumber].ToString(), "Must not be longer than the shot.");
            }
        }
    }
}
