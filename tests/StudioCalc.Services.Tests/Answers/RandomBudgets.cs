using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Mends random budgets: a few steps whose times are in order, and components whose moments are.</summary>
internal static class RandomBudgets
{
    private const int MostSteps = 6;
    private const int MostComponents = 4;

    public static void MakeSense(IMessage message)
    {
        switch (message)
        {
            case RenderBudgetRequest picture:
                Mend(picture.Budget);
                break;
            case CheckBudgetRequest budget:
                Mend(budget);
                break;
        }
    }

    private static void Mend(CheckBudgetRequest budget)
    {
        Cut(budget.Steps, MostSteps);
        Cut(budget.Components, MostComponents);
        budget.Draws = 1000;
        foreach (var step in budget.Steps)
        {
            Mend(step, budget.Components.Count);
        }

        var last = (uint)budget.Steps.Count - 1;
        foreach (var component in budget.Components)
        {
            component.ClockStarts = new() { StepIndex = 0 };
            component.NeededUntil = new() { StepIndex = last, AtEnd = true };
            component.NeededFrom = component.NeededFrom is null ? null : new() { StepIndex = component.NeededFrom.StepIndex % (last + 1) };
            component.MostRefreshes = MostSteps;

            Mend(component);
        }

        if (budget.Frames is { } frames)
        {
            frames.StepIndex = last;
        }
    }

    private static void Mend(BudgetStep step, int components)
    {
        (step.Shortest, step.Longest) = (Least(step.Shortest, step.Likely), step.Longest is null ? null : Twice(step.Likely));
        if (step.Refresh is { } refresh)
        {
            var index = refresh.ComponentIndices[0] % (uint)components;
            refresh.ComponentIndices.Clear();
            refresh.ComponentIndices.Add(index);
        }
    }

    // Temperatures that are followed have random requests of their own, in the calls that follow them.
    private static void Mend(BudgetComponent component)
    {
        component.EndsAt = null;
        switch (component.Item.KindCase)
        {
            case FoodItem.KindOneofCase.OwnWindow:
                component.Item.OwnWindow.Pessimistic = Least(component.Item.OwnWindow.Pessimistic, component.Item.OwnWindow.Likely);
                component.Item.OwnWindow.Optimistic = null;
                break;
            case FoodItem.KindOneofCase.Leaves:
                component.Item.Leaves.SurfaceCelsius = 50;
                break;
            case FoodItem.KindOneofCase.Liquid or FoodItem.KindOneofCase.Film or FoodItem.KindOneofCase.Piece or FoodItem.KindOneofCase.IceCream:
                component.Item.ProfileId = "noodles";
                break;
        }
    }

    private static Duration? Least(Duration? one, Duration other) => one is null || one.Seconds < other.Seconds ? one : other.Clone();

    private static Duration Twice(Duration time) => new() { Seconds = Math.Min(86400, 2 * time.Seconds + 2) };

    private static void Cut<T>(Google.Protobuf.Collections.RepeatedField<T> list, int most)
    {
        while (list.Count > most)
        {
            list.RemoveAt(list.Count - 1);
        }
    }
}
