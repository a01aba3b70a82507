namespace StudioCalc.Planning;

/// <summary>What has begun of a block, with what must have been done before it.</summary>
/// <remarks>What was not told is taken to have ended as late as what followed it allows.</remarks>
internal static class BegunWork
{
    public static Dictionary<Operation, Begun> Of(ShootDay day, int index)
    {
        var block = day.Blocks[index];
        var begun = new Dictionary<Operation, Begun>();
        foreach (var one in day.Progress?.Begun ?? [])
        {
            if (one.Operation.Block == index)
            {
                begun[one.Operation] = one;
            }
        }

        if (begun.Count == 0)
        {
            return begun;
        }

        var ready = new long?[block.Plates.Count];
        for (var k = block.Shots.Count - 1; k >= 0; k--)
        {
            AddShot(block, index, k, begun, ready);
        }

        for (var p = 0; p < ready.Length; p++)
        {
            AddStages(block.Plates[p], index, p, begun, ready[p]);
        }

        return begun;
    }

    private static void AddShot(Block block, int index, int k, Dictionary<Operation, Begun> begun, long?[] ready)
    {
        var (setup, shoot, approve) = (Operation.Setup(index, k), Operation.Shoot(index, k), Operation.Approve(index, k));
        var shot = block.Shots[k];
        if (!begun.ContainsKey(shoot) && begun.TryGetValue(approve, out var approval))
        {
            Add(shoot, approval.StartMs, shot.ShootMs);
        }

        if (!begun.ContainsKey(shoot) && k + 1 < block.Shots.Count
            && (begun.TryGetValue(Operation.Setup(index, k + 1), out var after) || begun.TryGetValue(Operation.Shoot(index, k + 1), out after)))
        {
            Add(shoot, after.StartMs, shot.ShootMs);
        }

        if (!begun.TryGetValue(shoot, out var taken))
        {
            return;
        }

        begun.TryAdd(setup, new(setup, taken.StartMs, taken.StartMs));
        begun.TryAdd(approve, new(approve, taken.EndMs, taken.EndMs + shot.ApproveMs));
        foreach (var p in shot.Plates.Count > 0 ? shot.Plates : Enumerable.Range(0, ready.Length))
        {
            ready[p] = Math.Min(ready[p] ?? taken.StartMs, taken.StartMs);
        }

        void Add(Operation operation, long end, long length) => begun[operation] = new(operation, end - length, end);
    }

    private static void AddStages(Plate plate, int index, int p, Dictionary<Operation, Begun> begun, long? end)
    {
        for (var i = plate.Stages.Count - 1; i >= 0; i--)
        {
            var stage = plate.Stages[i];
            var operation = Operation.Stage(index, p, i);
            if (begun.TryGetValue(operation, out var told))
            {
                end = told.StartMs;
            }
            else if (end is { } until)
            {
                end = until - stage.LagMs - stage.DurationMs;
                begun[operation] = new(operation, end.Value, end.Value + stage.DurationMs);
            }
        }
    }
}
