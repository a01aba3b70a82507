using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A budget as read: its steps, and its components as far as the request alone tells them.</summary>
internal sealed record BudgetRead(IReadOnlyList<ShotStep> Steps, IReadOnlyList<ComponentRead> Components, int Draws, uint Seed);

/// <summary>A component as read, whose window is still to be computed.</summary>
internal sealed record ComponentRead(HoldingRead Holding, HoldingPaths Paths, TimedComponent Clock);

/// <summary>Reads budgets.</summary>
internal static class BudgetReader
{
    private const int UsualDraws = 20000;
    private const uint UsualSeed = 1;
    private const long MostTimesDrawn = 5_000_000;

    /// <exception cref="Grpc.Core.RpcException">Any field is bad.</exception>
    public static BudgetRead ReadBudget(this RequestContext context, CheckBudgetRequest request, FieldPath root)
    {
        var stepsPath = root[CheckBudgetRequest.StepsFieldNumber];
        var steps = request.Steps.Select((step, i) => context.Read(step, stepsPath.At(i))).ToList();
        var refreshes = RefreshReader.Read(context, request, stepsPath);
        var componentsPath = root[CheckBudgetRequest.ComponentsFieldNumber];
        var components = request.Components
            .Select((component, i) => context.Read(component, refreshes[i], request, componentsPath.At(i), root)).ToList();
        if (request.Frames is { } frames && frames.StepIndex >= request.Steps.Count)
        {
            RefuseStep(context, root[CheckBudgetRequest.FramesFieldNumber][FrameSeries.StepIndexFieldNumber], request.Steps.Count);
        }

        var draws = request.HasDraws ? (int)request.Draws : UsualDraws;
        var most = MostTimesDrawn / (request.Steps.Count + request.Components.Count);
        if (draws > most)
        {
            context.Violations.Add(root[CheckBudgetRequest.DrawsFieldNumber].ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"With this many steps and components at most {most}."));
        }

        context.ThrowIfRefused();
        return new(steps, [.. components.Select(component => component!)], draws, request.HasSeed ? request.Seed : UsualSeed);
    }

    private static ShotStep Read(this RequestContext context, V1.BudgetStep step, FieldPath path) => new(
        context.ReadTimes(step.Likely, step.Shortest, step.Longest, step.Spread,
            path[V1.BudgetStep.ShortestFieldNumber], path[V1.BudgetStep.LongestFieldNumber]),
        step.MayBeCut);

    private static ComponentRead? Read(
        this RequestContext context, BudgetComponent component, IReadOnlyList<int> refreshes, CheckBudgetRequest request, FieldPath path, FieldPath root)
    {
        var paths = new HoldingPaths(
            path[BudgetComponent.ItemFieldNumber], path[BudgetComponent.EndsAtFieldNumber], root[CheckBudgetRequest.AirFieldNumber]);
        var holding = context.ReadHolding(component.Item, component.EndsAt, request.Air, paths);
        RefuseWait(context, component.Item, paths.Item);
        var steps = request.Steps.Count;
        var starts = context.Read(component.ClockStarts, steps, path[BudgetComponent.ClockStartsFieldNumber]);
        var until = context.Read(component.NeededUntil, steps, path[BudgetComponent.NeededUntilFieldNumber]);
        var told = component.NeededFrom is { } moment ? context.Read(moment, steps, path[BudgetComponent.NeededFromFieldNumber]) : starts;
        if (starts is not { } start || until is not { } end || told is null)
        {
            return null;
        }

        var from = component.NeededFrom is null ? Math.Max(start, (int)component.NeededUntil.StepIndex) : told.Value;
        if (end < start)
        {
            context.Violations.Add(path[BudgetComponent.NeededUntilFieldNumber].ToString(), RefusalReason.Conflict, "Must not be before its clock starts.");
        }
        else if (from < start)
        {
            context.Violations.Add(path[BudgetComponent.NeededFromFieldNumber].ToString(), RefusalReason.Conflict, "Must not be before its clock starts.");
        }
        else if (from > end)
        {
            context.Violations.Add(path[BudgetComponent.NeededFromFieldNumber].ToString(), RefusalReason.Conflict, "Must not be after it is last needed.");
        }

        return holding is null
            ? null
            : new(holding, paths, new()
            {
                Window = null,
                ClockStart = start,
                NeededFrom = from,
                NeededUntil = end,
                SettlingS = component.Settling?.ToSeconds() ?? 0,
                Refreshes = refreshes,
            });
    }

    /// <summary>The moment of the steps, counted from 0, the start of the first.</summary>
    public static int MomentOf(StepMoment moment) => (int)moment.StepIndex + (moment.AtEnd ? 1 : 0);

    private static int? Read(this RequestContext context, StepMoment moment, int steps, FieldPath path)
    {
        if (moment.StepIndex < steps)
        {
            return MomentOf(moment);
        }

        RefuseStep(context, path[StepMoment.StepIndexFieldNumber], steps);
        return null;
    }

    /// <summary>Refuses profiles that are waits: they are no time that a look lasts.</summary>
    public static void RefuseWait(RequestContext context, FoodItem item, FieldPath path)
    {
        var (id, at) = item.KindCase switch
        {
            FoodItem.KindOneofCase.ProfileId => (item.ProfileId, path[FoodItem.ProfileIdFieldNumber]),
            FoodItem.KindOneofCase.Decay => (item.Decay.ProfileId, path[FoodItem.DecayFieldNumber][FirstOrderDecay.ProfileIdFieldNumber]),
            _ => ("", path),
        };
        if (id.Length > 0 && HoldingProfiles.Find(id) is { IsWait: true })
        {
            context.Violations.Add(at.ToString(), RefusalReason.Conflict,
                "This profile is a wait until the component looks right, not a time that its look lasts: give the wait as settling.");
        }
    }

    private static void RefuseStep(RequestContext context, FieldPath path, int steps) => context.Violations.Add(
        path.ToString(), RefusalReason.OutOfRange, FormattableString.Invariant($"There are {steps} steps, counted from 0."));
}
