using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes checked budgets.</summary>
internal static class BudgetWriter
{
    /// <summary>The spread of a window; null where the look does not end.</summary>
    /// <remarks>Beta-PERT, because pessimistic and optimistic are told as the ends that are to be reckoned with. A hopeful end that never
    /// comes counts as far from the likely time as the pessimistic one.</remarks>
    public static ThreePoint? WindowOf(Holding holding)
    {
        if (holding.Window?.Span is not { } span)
        {
            return null;
        }

        var likely = span.Likely.ToSeconds();
        var pessimistic = Math.Min(span.Pessimistic.ToSeconds(), likely);
        return new(pessimistic, likely, Math.Max(span.Optimistic?.ToSeconds() ?? 2 * likely - pessimistic, likely), Spread.Pert);
    }

    public static CheckBudgetResponse Write(
        CheckBudgetRequest request,
        IReadOnlyList<Holding> holdings,
        LikelyBudget likely,
        BudgetChances chances,
        (int Frames, int? Stacks)? frames)
    {
        var response = new CheckBudgetResponse
        {
            AllHoldChance = chances.Chance(chances.AllHeld),
            AllHoldChanceError = chances.Error(chances.AllHeld),
            AllHoldLikely = likely.AllHold,
            Draws = (uint)chances.Draws,
            TightestComponent = likely.Tightest is { } tightest ? request.Components[tightest].Name : "",
            ModelRevision = ModelRevision.Current,
        };
        if (frames is var (count, stacks))
        {
            response.FramesThatFit = (uint)count;
            if (stacks is { } whole)
            {
                response.StacksThatFit = (uint)whole;
            }
        }

        response.Components.Add(request.Components.Select((component, i) =>
            Write(component.Name, holdings[i], likely.Components[i], chances.Chance(chances.Held[i]))));
        response.Steps.Add(request.Steps.Select((step, i) => new StepBudget
        {
            Name = step.Name,
            Start = likely.MomentsS[i].ToDuration(),
            End = likely.MomentsS[i + 1].ToDuration(),
            EndP90 = chances.EndsP90S[i].ToDuration(),
        }));
        response.Cuts.Add(chances.Cuts.OrderByDescending(cut => cut.AllHeld).Select(cut => new BudgetCut
        {
            StepIndex = (uint)cut.Step,
            Name = request.Steps[cut.Step].Name,
            AllHoldChance = chances.Chance(cut.AllHeld),
        }));
        return response;
    }

    private static ComponentBudget Write(string name, Holding holding, ComponentTimes times, double chance)
    {
        var answer = new ComponentBudget
        {
            Name = name,
            HoldChance = chance,
            LatestStartS = times.LatestStartS,
            ClockStarts = times.ClockStartS.ToDuration(),
            ClockRestarts = times.ClockRestartS?.ToDuration(),
            NeededUntil = times.NeededUntilS.ToDuration(),
        };
        if (holding.Window is { } window)
        {
            answer.Window = window;
        }
        else
        {
            answer.HoldsOn = holding.HoldsOn;
        }

        if (times.SlackS is { } slack)
        {
            answer.SlackS = slack;
        }

        if (times.EarliestStartS is { } earliest)
        {
            answer.EarliestStartS = earliest;
        }

        return answer;
    }
}
