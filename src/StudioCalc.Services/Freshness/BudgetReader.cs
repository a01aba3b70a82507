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
    private const double MostOfLogNormal = 100;

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

    private static ShotStep Read(this RequestContext context, V1.BudgetStep step, FieldPath path)
    {
        var likely = step.Likely.ToSeconds();
        var shortest = step.Shortest?.ToSeconds() ?? likely;
        var longest = step.Longest?.ToSeconds() ?? likely;
        var isLogNormal = step.Spread == StepSpread.LogNormal;
        if (shortest > likely && !isLogNormal)
        {
            context.Violations.Add(path[V1.BudgetStep.ShortestFieldNumber].ToString(), RefusalReason.Conflict, "Must not be above the likely time.");
        }

        if (longest < likely)
        {
            context.Violations.Add(path[V1.BudgetStep.LongestFieldNumber].ToString(), RefusalReason.Conflict, "Must not be below the likely time.");
        }
        else if (isLogNormal && longest > MostOfLogNormal * likely)
        {
            context.Violations.Add(path[V1.BudgetStep.LongestFieldNumber].ToString(), RefusalReason.Conflict,
                "In a log-normal spread it must be at most 100 times the likely time.");
        }

        return new(new(shortest, likely, longest, step.Spread.ToMaths()), step.MayBeCut);
    }

    private static ComponentRead? Read(
        this RequestContext context, BudgetComponent component, IReadOnlyList<int> refreshes, CheckBudgetRequest request, FieldPath path, FieldPath root)
    {
        var paths = new HoldingPaths(
            path[BudgetComponent.ItemFieldNumber], path[BudgetComponent.EndsAtFieldNumber], root[CheckBudgetRequest.AirFieldNumber]);
        var holding = context.ReadHolding(component.Item, component.EndsAt, request.Air, paths);
        var starts = context.Read(component.ClockStarts, request.Steps.Count, path[BudgetComponent.ClockStartsFieldNumber]);
        var until = context.Read(component.NeededUntil, request.Steps.Count, path[BudgetComponent.NeededUntilFieldNumber]);
        var from = component.NeededFrom is { } told
            ? context.Read(told, request.Steps.Count, path[BudgetComponent.NeededFromFieldNumber])
            : Math.Max(starts, (int)component.NeededUntil.StepIndex);
        if (Math.Max(starts, Math.Max(from, until)) > request.Steps.Count)
        {
            return null;
        }

        if (until < starts)
        {
            context.Violations.Add(path[BudgetComponent.NeededUntilFieldNumber].ToString(), RefusalReason.Conflict, "Must not be before its clock starts.");
        }
        else if (from < starts)
        {
            context.Violations.Add(path[BudgetComponent.NeededFromFieldNumber].ToString(), RefusalReason.Conflict, "Must not be before its clock starts.");
        }
        else if (from > until)
        {
            context.Violations.Add(path[BudgetComponent.NeededFromFieldNumber].ToString(), RefusalReason.Conflict, "Must not be after it is last needed.");
        }

        return holding is null
            ? null
            : new(holding, paths, new()
            {
                Window = null,
                ClockStart = starts,
                NeededFrom = from,
                NeededUntil = until,
                SettlingS = component.Settling?.ToSeconds() ?? 0,
                Refreshes = refreshes,
            });
    }

    /// <summary>The moment of the steps, counted from 0, the start of the first.</summary>
    public static int MomentOf(StepMoment moment) => (int)moment.StepIndex + (moment.AtEnd ? 1 : 0);

    private static int Read(this RequestContext context, StepMoment moment, int steps, FieldPath path)
    {
        if (moment.StepIndex >= steps)
        {
            RefuseStep(context, path[StepMoment.StepIndexFieldNumber], steps);
        }

        return MomentOf(moment);
    }

    private static void RefuseStep(RequestContext context, FieldPath path, int steps) => context.Violations.Add(
        path.ToString(), RefusalReason.OutOfRange, FormattableString.Invariant($"There are {steps} steps, counted from 0."));

    private static Spread ToMaths(this StepSpread spread) => spread switch
    {
        StepSpread.Triangle => Spread.Triangle,
        StepSpread.LogNormal => Spread.LogNormal,
        _ => Spread.Pert,
    };
}
