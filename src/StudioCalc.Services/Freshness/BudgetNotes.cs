using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a person should know about a budget.</summary>
internal static class BudgetNotes
{
    private const double GoodChance = 0.9;

    public static void NoteBudget(this RequestContext context, CheckBudgetRequest request, CheckBudgetResponse response, FieldPath root)
    {
        // A plate that waits is on a clock of its own, whatever its components are.
        context.NoteLooks();
        if (response.AllHoldChance < GoodChance)
        {
            context.Advisories.Add(Advise.BudgetBreaks(response.AllHoldChance));
        }

        var components = root[CheckBudgetRequest.ComponentsFieldNumber];
        for (var i = 0; i < response.Components.Count; i++)
        {
            if (response.Components[i].HoldChance == 0)
            {
                context.Advisories.Add(Advise.ComponentNeverHolds(components.ItemAt(i)));
            }
        }

        if (response.Components.Min(component => component.HasSlackS ? component.SlackS : 0) is < 0 and var slack)
        {
            context.Advisories.Add(Advise.NoHurry(slack));
        }

        if (request.Steps.Any(step => step.Refresh is not null))
        {
            context.Advisories.Add(Advise.RefreshKeepsSafetyClock());
        }
    }
}
