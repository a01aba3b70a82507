namespace StudioCalc.Planning;

/// <summary>The latest starts that keep the finish, the order and what the budgets have.</summary>
/// <remarks>
/// <code>
/// y_u = fit back(min(finish - d_u, y_v - w))     over all arcs u to v      (7)
/// </code>
/// <para>Repeated until nothing moves: the greatest starts under the finish. What has begun stays. Setups alone are told as early as the set
/// is free for them: nothing cooked waits for the one or the other, and a crew that begins late has no time to lose.</para>
/// </remarks>
internal static class LatestTimes
{
    public static long[] Of(DayNetwork network)
    {
        var shapes = network.Shapes;
        var latest = new long[shapes.Count];
        for (var i = 0; i < latest.Length; i++)
        {
            latest[i] = shapes[i].IsBegun ? network.Operations[i].StartMs : network.FinishMs - shapes[i].DurationMs;
        }

        var from = network.Arcs.ToLookup(arc => arc.From);
        for (var moved = true; moved;)
        {
            moved = false;
            for (var i = latest.Length - 1; i >= 0; i--)
            {
                if (shapes[i].IsBegun)
                {
                    continue;
                }

                var start = latest[i];
                foreach (var arc in from[i])
                {
                    if (!shapes[arc.To].IsBegun || arc.Why == Binding.Budget)
                    {
                        start = Math.Min(start, latest[arc.To] - arc.WeightMs);
                    }
                }

                start = shapes[i].FitBack(start, shapes[i].DurationMs, shapes[i].OccupiesMs);
                if (start < latest[i])
                {
                    (latest[i], moved) = (start, true);
                }
            }
        }

        // Approval follows the last frame at once.
        for (var i = 1; i < latest.Length; i++)
        {
            if (shapes[i].Id.Kind == OperationKind.Approve && !shapes[i].IsBegun)
            {
                latest[i] = latest[i - 1] + shapes[i - 1].DurationMs;
            }
        }

        var into = network.Arcs.ToLookup(arc => arc.To);
        for (var i = 0; i < latest.Length; i++)
        {
            if (shapes[i] is { IsBegun: false, Id.Kind: OperationKind.Setup })
            {
                var free = into[i].Select(arc => latest[arc.From] + arc.WeightMs).Append(network.Operations[i].StartMs).Max();
                latest[i] = Math.Min(latest[i], shapes[i].Fit(free, shapes[i].DurationMs, shapes[i].OccupiesMs));
            }
        }

        return latest;
    }
}
