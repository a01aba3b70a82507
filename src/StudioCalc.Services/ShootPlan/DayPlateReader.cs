using Google.Protobuf.Collections;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A plate as read, its computed looks still to come.</summary>
internal sealed record DayPlateRead(IReadOnlyList<Stage> Stages, IReadOnlyList<ThreePoint> Times, IReadOnlyList<PlateBudgetRead> Budgets);

/// <summary>A budget as read: when its clock starts, and what its time is computed from, unless that is given.</summary>
internal sealed record PlateBudgetRead(PlateBudget Asked, Moment Event, HoldingRead? Food, HoldingPaths? FoodPaths);

/// <summary>Reads plates.</summary>
internal static class DayPlateReader
{
    public static DayPlateRead ReadPlate(this RequestContext context, DayPlate plate, CrewRead crew, RoomAir? air, FieldPath path, FieldPath airPath)
    {
        var stagesPath = path[DayPlate.StagesFieldNumber];
        List<Stage> stages = [];
        List<ThreePoint> times = [];
        for (var i = 0; i < plate.Stages.Count; i++)
        {
            var stage = plate.Stages[i];
            var time = context.ReadTime(stage.Time, stagesPath.At(i)[PlateStage.TimeFieldNumber]);
            times.Add(time);
            stages.Add(new()
            {
                Kind = ToPlanning(stage.Kind),
                Resource = context.ReadResource(stage, crew, stagesPath.At(i)[PlateStage.StationFieldNumber].ToString()),
                DurationMs = stage.Time.Likely.ToMilliseconds(),
                LagMs = stage.Lag?.ToMilliseconds() ?? 0,
            });
        }

        var budgetsPath = path[DayPlate.BudgetsFieldNumber];
        if (plate.Use is PlateUse.StandIn or PlateUse.Spare && plate.Budgets.Count > 0)
        {
            context.Refuse(budgetsPath.ToString(), "A stand-in and a spare have no budgets.");
        }

        return new(stages, times, [.. plate.Budgets.Select((budget, i) => context.ReadBudget(budget, plate, air, budgetsPath.At(i), airPath))]);
    }

    private static int? ReadResource(this RequestContext context, PlateStage stage, CrewRead crew, string path)
    {
        if (stage.Kind != PlateStageKind.Cook)
        {
            if (stage.HasStation)
            {
                context.Refuse(path, "Belongs to cooking: nothing else is done at a station.");
            }

            return stage.Kind switch
            {
                PlateStageKind.PlateUp or PlateStageKind.Garnish => crew.Stylist,
                PlateStageKind.Carry => crew.Runner,
                _ => null,
            };
        }

        if (!stage.HasStation)
        {
            context.Violations.Add(path, RefusalReason.Required, "Cooking needs the station at which it is done.");
            return null;
        }

        if (crew.Stations.TryGetValue(stage.Station, out var station))
        {
            return station;
        }

        context.Refuse(path, "The crew has no station of this name.");
        return null;
    }

    private static PlateBudgetRead ReadBudget(
        this RequestContext context, PlateBudget budget, DayPlate plate, RoomAir? air, FieldPath path, FieldPath airPath)
    {
        var moment = EventOf(budget, plate.Stages);
        if (moment is null)
        {
            context.Refuse(path[PlateBudget.EventFieldNumber].ToString(), "Its plate has no stage with this event.");
        }

        if (budget.WindowCase != PlateBudget.WindowOneofCase.Food)
        {
            if (budget.EndsAt is not null)
            {
                context.Refuse(path[PlateBudget.EndsAtFieldNumber].ToString(), "Belongs to food whose look is computed; this time is given.");
            }

            return new(budget, moment ?? default, null, null);
        }

        var paths = new HoldingPaths(path[PlateBudget.FoodFieldNumber], path[PlateBudget.EndsAtFieldNumber], airPath);
        var food = context.ReadHolding(budget.Food, budget.EndsAt, air, paths);
        BudgetReader.RefuseWait(context, budget.Food, paths.Item);
        return new(budget, moment ?? default, food, paths);
    }

    private static Moment? EventOf(PlateBudget budget, RepeatedField<PlateStage> stages)
    {
        var after = budget.After?.ToMilliseconds() ?? 0;
        return budget.Event switch
        {
            PlateEvent.OffHeat => Last(PlateStageKind.Cook),
            PlateEvent.Plated => First(PlateStageKind.PlateUp),
            PlateEvent.Garnished => Last(PlateStageKind.PlateUp, PlateStageKind.Garnish),
            _ => new(stages.Count - 1, true, after),
        };

        Moment? First(PlateStageKind kind) => Enumerable.Range(0, stages.Count).Where(i => stages[i].Kind == kind)
            .Select(i => (Moment?)new Moment(i, false, after)).FirstOrDefault();
        Moment? Last(params PlateStageKind[] kinds) => Enumerable.Range(0, stages.Count).Where(i => kinds.Contains(stages[i].Kind))
            .Select(i => (Moment?)new Moment(i, true, after)).LastOrDefault();
    }

    private static StageKind ToPlanning(PlateStageKind kind) => kind switch
    {
        PlateStageKind.Cook => StageKind.Cook,
        PlateStageKind.Rest => StageKind.Rest,
        PlateStageKind.PlateUp => StageKind.PlateUp,
        PlateStageKind.Garnish => StageKind.Garnish,
        PlateStageKind.Carry => StageKind.Carry,
        _ => StageKind.Settle,
    };
}
