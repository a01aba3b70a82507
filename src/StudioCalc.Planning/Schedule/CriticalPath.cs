namespace StudioCalc.Planning;

/// <summary>An operation on the way that fixes the finish, and what keeps it from starting earlier.</summary>
/// <param name="Operation">Which, with its times.</param>
/// <param name="Why">What binds its start.</param>
/// <param name="Resource">The resource that binds it, where it is one.</param>
public readonly record struct CriticalStep(TimedOperation Operation, Binding Why, int? Resource);

/// <summary>The chain of operations that fixes the finish, at the earliest times.</summary>
public static class CriticalPath
{
    /// <summary>The chain, from its start to the finish.</summary>
    /// <remarks>From the last end backwards, over arcs without slack: the way of the plate or shot goes before a resource, a resource before a
    /// budget. A budget leads to a last frame that lies later.</remarks>
    /// <param name="network">The day.</param>
    public static IReadOnlyList<CriticalStep> Of(DayNetwork network)
    {
        ArgumentNullException.ThrowIfNull(network);
        var operations = network.Operations;
        var into = network.Arcs.ToLookup(arc => arc.To);
        List<CriticalStep> path = [];
        var seen = new HashSet<int>();
        var at = Enumerable.Range(0, operations.Count).Where(i => operations[i].EndMs == network.FinishMs).DefaultIfEmpty(-1).First();
        while (at >= 0 && seen.Add(at))
        {
            var one = operations[at];
            var tight = into[at]
                .Where(arc => operations[arc.From].StartMs + arc.WeightMs == one.StartMs && !seen.Contains(arc.From))
                .OrderBy(arc => arc.Why).ThenBy(arc => arc.From)
                .Select(arc => (NetworkArc?)arc).FirstOrDefault();
            var shape = network.Shapes[at];
            var opens = !shape.IsBegun && shape.Open.Concat(shape.Frames).Any(open => open.FromMs == one.StartMs);
            path.Add(tight is { } arc
                ? new(one, arc.Why, arc.Resource)
                : new(one, opens ? Binding.Opening : Binding.NotBefore, null));
            at = tight?.From ?? -1;
        }

        path.Reverse();
        return path;
    }

    /// <summary>How long each resource works on the chain, by its index. [ms]</summary>
    /// <param name="path">The chain.</param>
    /// <param name="resources">The number of resources.</param>
    public static long[] ByResource(IEnumerable<CriticalStep> path, int resources)
    {
        ArgumentNullException.ThrowIfNull(path);
        var sum = new long[resources];
        foreach (var step in path)
        {
            if (step.Operation.Resource is { } resource)
            {
                sum[resource] += step.Operation.EndMs - step.Operation.StartMs;
            }
        }

        return sum;
    }
}
