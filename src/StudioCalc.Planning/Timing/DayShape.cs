namespace StudioCalc.Planning;

/// <summary>A day made ready for timing: its blocks as operations, setups between them, what is free when it starts.</summary>
internal sealed class DayShape
{
    private readonly Dictionary<(int Block, long SetupMs), BlockTimer> _timers = [];
    private readonly BlockTimer[,] _after;
    private readonly long _horizon;

    public DayShape(ShootDay day, CancellationToken cancellation = default)
    {
        DayFaults.Check(day);
        Day = day;
        Layout = new(day.Resources);
        Shapes = [.. Enumerable.Range(0, day.Blocks.Count).Select(i => new BlockShape(day, i))];
        Open = [.. day.Resources.Select(resource => resource.Open.ToArray())];
        _horizon = Horizon();
        Left = [.. Enumerable.Range(0, Shapes.Length).Where(i => !Shapes[i].IsDone)];
        Start = Begin();
        Positions = [.. day.Blocks.Select(Position)];
        var standing = Standing();
        _after = new BlockTimer[Shapes.Length + 1, Shapes.Length];
        foreach (var j in Left)
        {
            var first = day.Blocks[j].Shots[0].Setup;
            _after[Shapes.Length, j] = Timer(j, standing is { } stands ? day.Setups.SwapMs + day.Setups.Change(stands, first) : day.Setups.First(first));
            foreach (var i in Left)
            {
                cancellation.ThrowIfCancellationRequested();
                _after[i, j] = Timer(j, day.Setups.SwapMs + day.Setups.Change(day.Blocks[i].Shots[^1].Setup, first));
            }
        }

        HasOpenTimes = Left.Any(j => Shapes[j].HasOpenTimes);
        IsTraded = _timers.Values.Any(timer => timer.IsTraded);
        HasRunningClocks = Left.Any(j => Shapes[j].Budgets.Any(budget => Shapes[j].Operations[budget.Event].IsBegun));
    }

    public ShootDay Day { get; }

    public ReleaseLayout Layout { get; }

    public BlockShape[] Shapes { get; }

    public OpenTime[][] Open { get; }

    /// <summary>The blocks that are not done.</summary>
    public int[] Left { get; }

    /// <summary>When each unit is free at the start, and the finish of what has begun.</summary>
    public long[] Start { get; }

    /// <summary>Fixed places in the order of what is left.</summary>
    public int?[] Positions { get; }

    public bool HasOpenTimes { get; }

    public bool HasRunningClocks { get; }

    /// <summary>Whether some block cannot have the least of all its budgets at once.</summary>
    public bool IsTraded { get; }

    /// <summary>The least excess of a block after another or none, whatever else is before it.</summary>
    public long LeastExcess(BlockTimer timer)
    {
        var x = new long[timer.Count];
        timer.Bounds(x);
        return timer.ExcessMs + (HasRunningClocks && timer.Fits && timer.Start(Start, x) ? timer.LateMs(x) : 0);
    }

    /// <summary>The timer of a block after another, or none.</summary>
    public BlockTimer After(int? before, int block) => _after[before ?? Shapes.Length, block];

    /// <summary>Whether a block has a place in the day at all.</summary>
    public bool CanBePlaced(int block) => After(null, block).Fits || Left.Any(before => before != block && After(before, block).Fits);

    private BlockTimer Timer(int block, long setupMs)
    {
        setupMs = Shapes[block].FirstSetup < 0 ? 0 : setupMs;
        if (!_timers.TryGetValue((block, setupMs), out var timer))
        {
            timer = new BlockTimer(Shapes[block], setupMs, Layout, _horizon);
            timer.Fits = new AloneTiming(timer, Layout).Fits;
            _timers.Add((block, setupMs), timer);
        }

        return timer;
    }

    private int? Position(Block block, int index)
    {
        var isOn = Left.Any(i => Shapes[i].IsOnSet);
        return Shapes[index].IsOnSet ? 0
            : block.Position is { } position ? Math.Max(position - (Shapes.Length - Left.Length), isOn ? 1 : 0) : null;
    }

    // What was told to stand goes before what has begun.
    private IReadOnlyList<int>? Standing() => Day.Setups.Standing is not null ? null
        : Day.Progress?.Begun.Where(one => one.Operation.Kind is OperationKind.Shoot or OperationKind.Setup)
            .OrderBy(one => one.StartMs).Select(one => Day.Blocks[one.Operation.Block].Shots[one.Operation.Index].Setup).LastOrDefault();

    private long[] Begin()
    {
        var free = new long[Layout.Length];
        foreach (var (shape, i, start) in Shapes
            .SelectMany(shape => shape.Operations.Select((one, i) => (Shape: shape, i, Start: one.NotBeforeMs)).Where(one => one.Shape.Operations[one.i].IsBegun))
            .OrderBy(one => one.Start))
        {
            var one = shape.Operations[i];
            var end = start + one.OccupiesMs;
            free[Layout.Finish] = Math.Max(free[Layout.Finish], end);
            if (one.Resource >= 0 && Layout.Capacity[one.Resource] > 1)
            {
                Layout.Take(free, one.Resource, start, end);
            }
            else if (one.Resource >= 0)
            {
                free[Layout.At[one.Resource]] = Math.Max(free[Layout.At[one.Resource]], end);
            }
        }

        return free;
    }

    // No least time lies beyond all that is fixed and all work one after the other.
    private long Horizon()
    {
        var last = Day.Resources.SelectMany(resource => resource.Open)
            .Concat(Day.Blocks.SelectMany(block => block.Shots).SelectMany(shot => shot.Open)).Select(open => open.UntilMs)
            .Append(Day.Progress?.NowMs ?? 0).Concat(Shapes.SelectMany(shape => shape.Operations).Select(one => one.NotBeforeMs + one.OccupiesMs))
            .Max();
        var change = Math.Max(Day.Setups.FirstMs, Day.Setups.Matrix is { } matrix
            ? matrix.SelectMany(row => row).DefaultIfEmpty().Max() : Day.Setups.ChangeMs.Sum());
        return last + Shapes.Sum(shape => Day.Setups.SwapMs + change + shape.Operations.Sum(one => one.OccupiesMs + one.DurationMs)
            + shape.Arcs.Sum(arc => arc.LagMs)
            + shape.Budgets.Sum(budget => Math.Abs(budget.LastMs) + Math.Abs(budget.EventMs)));
    }
}
