namespace StudioCalc.Planning;

/// <summary>One operation of a block.</summary>
/// <remarks>Set time is what a shot keeps the set for, with approval where that holds it.</remarks>
internal sealed record ShapeOperation(Operation Id, int Resource, long DurationMs, long OccupiesMs)
{
    public bool IsBegun { get; init; }

    public long NotBeforeMs { get; init; }

    public OpenTime[] Open { get; init; } = [];

    public OpenTime[] Frames { get; init; } = [];

    public bool IsStage => Id.Kind == OperationKind.Stage;

    public long Fit(long start, long durationMs, long occupiesMs)
    {
        while (true)
        {
            var fit = Windows.Fit(Frames, Windows.Fit(Open, start, occupiesMs), durationMs);
            if (fit == start || fit >= Windows.Never)
            {
                return fit;
            }

            start = fit;
        }
    }

    public long FitBack(long start, long durationMs, long occupiesMs)
    {
        while (true)
        {
            var fit = Windows.FitBack(Frames, Windows.FitBack(Open, start, occupiesMs), durationMs);
            if (fit == start || fit <= -Windows.Never)
            {
                return fit;
            }

            start = fit;
        }
    }
}

/// <summary>Start of one operation against that of another: not before its start, or its end, and a lag.</summary>
internal readonly record struct ShapeArc(int From, int To, bool FromEnd, bool FromFree, long LagMs);

/// <summary>A budget between operations of a block: last frame at x[Last] + LastMs, event at x[Event] + EventMs.</summary>
internal readonly record struct ShapeBudget(Budget Budget, int Plate, int Event, long EventMs, int Last, long LastMs);

/// <summary>A block as operations in an order in which each follows from earlier ones.</summary>
internal sealed class BlockShape
{
    private readonly List<ShapeOperation> _operations = [];
    private readonly List<ShapeArc> _arcs = [];

    public BlockShape(ShootDay day, int index)
    {
        Index = index;
        Block = day.Blocks[index];
        var begun = BegunWork.Of(day, index);
        var now = day.Progress?.NowMs ?? 0;
        var stageStart = AddPlates(day, begun, now);
        var shoot = AddShots(day, begun, now, stageStart);
        OrderOnResources(day.Resources.Count);
        Operations = [.. _operations];
        Arcs = [.. _arcs];
        Budgets = [.. Block.Plates.SelectMany((plate, p) => plate.Budgets.Select(budget => new ShapeBudget(
            budget, p,
            stageStart[p] + budget.Event.Index, Offset(stageStart[p] + budget.Event.Index, budget.Event),
            shoot[budget.LastFrame.Index], Offset(shoot[budget.LastFrame.Index], budget.LastFrame))))];
        HasOpenTimes = Operations.Any(one => !one.IsBegun && (one.Open.Length > 0 || one.Frames.Length > 0));
        IsDone = shoot.All(i => Operations[i].IsBegun);
        IsOnSet = !IsDone && Operations.Any(one => one.IsBegun && !one.IsStage);
    }

    public int Index { get; }

    public Block Block { get; }

    public ShapeOperation[] Operations { get; }

    public ShapeArc[] Arcs { get; }

    public ShapeBudget[] Budgets { get; }

    /// <summary>Which operation is the setup that depends on the block before, if it is not done.</summary>
    public int FirstSetup { get; private set; }

    public bool HasOpenTimes { get; }

    public bool IsDone { get; }

    /// <summary>Whether the set is made ready for it or it is being shot: nothing comes before it.</summary>
    public bool IsOnSet { get; }

    private long Offset(int operation, Moment moment) =>
        moment.OffsetMs + (moment.FromEnd ? Operations[operation].DurationMs : 0);

    private int[] AddPlates(ShootDay day, Dictionary<Operation, Begun> begun, long now)
    {
        var first = new int[Block.Plates.Count];
        for (var p = 0; p < first.Length; p++)
        {
            first[p] = _operations.Count;
            var plate = Block.Plates[p];
            for (var i = 0; i < plate.Stages.Count; i++)
            {
                var stage = plate.Stages[i];
                OpenTime[] open = stage.Resource is { } resource ? [.. day.Resources[resource].Open] : [];
                Add(begun, new(Operation.Stage(Index, p, i), stage.Resource ?? -1, stage.DurationMs, stage.DurationMs)
                {
                    NotBeforeMs = i == 0 ? Math.Max(now, plate.NotBeforeMs) : now,
                    Open = open,
                });
                if (i > 0)
                {
                    _arcs.Add(new(first[p] + i - 1, first[p] + i, FromEnd: true, FromFree: false, plate.Stages[i - 1].LagMs));
                }
            }
        }

        return first;
    }

    private int[] AddShots(ShootDay day, Dictionary<Operation, Begun> begun, long now, int[] stageStart)
    {
        var shoot = new int[Block.Shots.Count];
        OpenTime[] open = [.. day.Resources[day.Set].Open];
        for (var k = 0; k < shoot.Length; k++)
        {
            var shot = Block.Shots[k];
            var change = k == 0 ? 0 : day.Setups.Change(Block.Shots[k - 1].Setup, shot.Setup)
                + (SamePlates(Block.Shots[k - 1], shot) ? 0 : day.Setups.SwapMs);
            var setup = _operations.Count;
            shoot[k] = setup + 1;
            Add(begun, new(Operation.Setup(Index, k), day.Set, change, change) { NotBeforeMs = now, Open = open });
            var kept = shot.ShootMs + (shot.ApprovalHoldsSet ? shot.ApproveMs : 0);
            Add(begun, new(Operation.Shoot(Index, k), day.Set, shot.ShootMs, kept) { NotBeforeMs = now, Open = open, Frames = [.. shot.Open] });
            Add(begun, new(Operation.Approve(Index, k), -1, shot.ApproveMs, shot.ApproveMs));
            _arcs.Add(new(setup, setup + 1, FromEnd: true, FromFree: false, 0));
            _arcs.Add(new(setup + 1, setup + 2, FromEnd: true, FromFree: false, 0));
            foreach (var p in shot.Plates.Count > 0 ? shot.Plates : Enumerable.Range(0, Block.Plates.Count))
            {
                if (Block.Plates[p].Stages is [.., var last])
                {
                    var ready = stageStart[p] + Block.Plates[p].Stages.Count - 1;
                    _arcs.Add(new(ready, shot.SetupBeforePlate ? setup + 1 : setup, FromEnd: true, FromFree: false, last.LagMs));
                }
            }
        }

        FirstSetup = _operations[shoot[0] - 1].IsBegun ? -1 : shoot[0] - 1;
        return shoot;
    }

    private bool SamePlates(Shot one, Shot other) =>
        new HashSet<int>(one.Plates.Count > 0 ? one.Plates : Enumerable.Range(0, Block.Plates.Count))
            .SetEquals(other.Plates.Count > 0 ? other.Plates : Enumerable.Range(0, Block.Plates.Count));

    private void Add(Dictionary<Operation, Begun> begun, ShapeOperation operation) =>
        _operations.Add(begun.TryGetValue(operation.Id, out var known)
            ? operation with
            {
                IsBegun = true,
                NotBeforeMs = known.StartMs,
                DurationMs = known.EndMs - known.StartMs,
                OccupiesMs = known.EndMs - known.StartMs + (operation.OccupiesMs - operation.DurationMs),
            }
            : operation);

    private void OrderOnResources(int resources)
    {
        for (var resource = 0; resource < resources; resource++)
        {
            var last = -1;
            for (var i = 0; i < _operations.Count; i++)
            {
                if (_operations[i].Resource != resource || _operations[i].IsBegun)
                {
                    continue;
                }

                if (last >= 0)
                {
                    _arcs.Add(new(last, i, FromEnd: false, FromFree: true, 0));
                }

                last = i;
            }
        }
    }
}
