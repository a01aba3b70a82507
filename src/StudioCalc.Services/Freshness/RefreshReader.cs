using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads which steps refresh which components.</summary>
internal static class RefreshReader
{
    /// <summary>The steps that refresh each component, in order.</summary>
    public static IReadOnlyList<int>[] Read(RequestContext context, CheckBudgetRequest request, FieldPath stepsPath)
    {
        var refreshes = request.Components.Select(_ => new List<int>()).ToArray();
        for (var step = 0; step < request.Steps.Count; step++)
        {
            if (request.Steps[step].Refresh is not { } refresh)
            {
                continue;
            }

            var path = stepsPath.At(step)[V1.BudgetStep.RefreshFieldNumber][Refresh.ComponentIndicesFieldNumber];
            for (var i = 0; i < refresh.ComponentIndices.Count; i++)
            {
                var index = (int)refresh.ComponentIndices[i];
                if (index >= refreshes.Length)
                {
                    Refuse(i, RefusalReason.OutOfRange, FormattableString.Invariant($"There are {refreshes.Length} components, counted from 0."));
                    continue;
                }

                var component = request.Components[index];
                var told = refreshes[index];
                if (told.Count > 0 && told[^1] == step)
                {
                    Refuse(i, RefusalReason.Conflict, "Names a component twice.");
                }
                else if (step < BudgetReader.MomentOf(component.ClockStarts) || step + 1 > BudgetReader.MomentOf(component.NeededUntil))
                {
                    Refuse(i, RefusalReason.Conflict, "This step does not lie between the start of the component's clock and its last need.");
                }
                else
                {
                    told.Add(step);
                    if (told.Count > component.MostRefreshes)
                    {
                        Refuse(i, RefusalReason.Conflict, "The component does not stand so many refreshes: it must be made anew, or most_refreshes must tell that it does.");
                    }
                }
            }

            void Refuse(int i, RefusalReason reason, string text) => context.Violations.Add(path.ItemAt(i), reason, text);
        }

        return refreshes;
    }
}
