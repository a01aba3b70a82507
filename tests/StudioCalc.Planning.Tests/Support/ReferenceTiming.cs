namespace StudioCalc.Planning.Tests;

/// <summary>Starts of a day in a fixed order as the least solution of all its constraints at once, from the records alone.</summary>
/// <remarks>Written without the shapes and timers of the project: a list of constraints, swept until nothing moves.</remarks>
internal sealed class ReferenceTiming
{
    private const long Late = 100_000;

    private readonly ShootDay _day;
    private readonly int[] _order;
    private readonly Dictionary<Operation, long> _x = [];
    private readonly List<(Operation From, Operation To, Func<long> LagMs)> _after = [];

    public ReferenceTiming(ShootDay day, int[] order)
    {
        (_day, _order) = (day, order);
        for (var place = 0; place < order.Length; place++)
        {
            Add(place);
        }
    }

    public Dictionary<Operation, long> Starts => _x;

    public long Finish => _x.Max(one => one.Value + Duration(one.Key));

    /// <summary>The limits of the budgets of a block and plate.</summary>
    public Func<int, int, Budget, long> Limit { get; init; } = (_, _, budget) => budget.LimitMs;

    /// <summary>Starts that are not to be undercut.</summary>
    public Dictionary<Operation, long> Least { get; init; } = [];

    public long Duration(Operation one)
    {
        var block = _day.Blocks[one.Block];
        return one.Kind switch
        {
            OperationKind.Stage => block.Plates[one.Plate].Stages[one.Index].DurationMs,
            OperationKind.Setup => Setup(one),
            OperationKind.Shoot => block.Shots[one.Index].ShootMs,
            _ => block.Shots[one.Index].ApproveMs,
        };
    }

    public long Elapsed(int block, int plate, Budget budget) =>
        At(Operation.Shoot(block, budget.LastFrame.Index), budget.LastFrame) - At(Operation.Stage(block, plate, budget.Event.Index), budget.Event);

    /// <summary>Solves; false if nothing solves it.</summary>
    public bool Solve()
    {
        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var (from, to, lag) in _after)
            {
                moved |= Push(to, _x[from] + lag());
            }

            foreach (var one in _x.Keys.ToList())
            {
                moved |= Push(one, Open(one, Math.Max(_x[one], Least.GetValueOrDefault(one))));
            }

            moved |= Units() | Budgets();
            if (_x.Values.Any(start => start > Late))
            {
                return false;
            }
        }

        return true;
    }

    private void Add(int place)
    {
        var b = _order[place];
        var block = _day.Blocks[b];
        for (var p = 0; p < block.Plates.Count; p++)
        {
            for (var i = 0; i < block.Plates[p].Stages.Count; i++)
            {
                var stage = block.Plates[p].Stages[i];
                var one = Operation.Stage(b, p, i);
                _x[one] = i == 0 ? block.Plates[p].NotBeforeMs : 0;
                if (i > 0)
                {
                    After(Operation.Stage(b, p, i - 1), one, block.Plates[p].Stages[i - 1].LagMs);
                }
            }
        }

        for (var k = 0; k < block.Shots.Count; k++)
        {
            var (setup, shoot, approve) = (Operation.Setup(b, k), Operation.Shoot(b, k), Operation.Approve(b, k));
            (_x[setup], _x[shoot], _x[approve]) = (0, 0, 0);
            After(setup, shoot, 0);
            After(shoot, approve, 0);
            foreach (var p in Plates(block, k))
            {
                After(Operation.Stage(b, p, block.Plates[p].Stages.Count - 1), block.Shots[k].SetupBeforePlate ? shoot : setup, block.Plates[p].Stages[^1].LagMs);
            }
        }

        void After(Operation from, Operation to, long lag) => _after.Add((from, to, () => Duration(from) + lag));
    }

    private static IEnumerable<int> Plates(Block block, int shot) =>
        block.Shots[shot].Plates.Count > 0 ? block.Shots[shot].Plates : Enumerable.Range(0, block.Plates.Count);

    private long Setup(Operation one)
    {
        var shots = _day.Blocks[one.Block].Shots;
        if (one.Index > 0)
        {
            var same = Plates(_day.Blocks[one.Block], one.Index - 1).Order().SequenceEqual(Plates(_day.Blocks[one.Block], one.Index).Order());
            return Change(shots[one.Index - 1], shots[one.Index]) + (same ? 0 : _day.Setups.SwapMs);
        }

        var place = Array.IndexOf(_order, one.Block);
        return place == 0 ? _day.Setups.FirstMs : Change(_day.Blocks[_order[place - 1]].Shots[^1], shots[0]) + _day.Setups.SwapMs;
    }

    private long Change(Shot from, Shot to)
    {
        if (_day.Setups.Matrix is { } matrix)
        {
            return matrix[from.Setup[0]][to.Setup[0]];
        }

        var changes = _day.Setups.ChangeMs.Where((_, a) => from.Setup[a] != to.Setup[a]).DefaultIfEmpty().ToList();
        return _day.Setups.SideBySide ? changes.Max() : changes.Sum();
    }

    private long Occupies(Operation one) => one.Kind == OperationKind.Shoot && _day.Blocks[one.Block].Shots[one.Index] is { ApprovalHoldsSet: true } shot
        ? shot.ShootMs + shot.ApproveMs : Duration(one);

    private int? Resource(Operation one) => one.Kind switch
    {
        OperationKind.Stage => _day.Blocks[one.Block].Plates[one.Plate].Stages[one.Index].Resource,
        OperationKind.Approve => null,
        _ => _day.Set,
    };

    private long Open(Operation one, long start)
    {
        var own = Resource(one) is { } resource ? _day.Resources[resource].Open : [];
        var light = one.Kind == OperationKind.Shoot ? _day.Blocks[one.Block].Shots[one.Index].Open : [];
        while (start < Late && !(Inside(own, start, Occupies(one)) && Inside(light, start, Duration(one))))
        {
            start++;
        }

        return start;
    }

    private static bool Inside(IReadOnlyList<OpenTime> open, long start, long length) =>
        open.Count == 0 || length == 0 || open.Any(one => one.FromMs <= start && start + length <= one.UntilMs);

    private bool Units()
    {
        var moved = false;
        for (var resource = 0; resource < _day.Resources.Count; resource++)
        {
            var queue = _x.Keys.Where(one => Resource(one) == resource).ToList();
            for (var i = 1; i < queue.Count; i++)
            {
                var ends = queue.Take(i).Select(one => _x[one] + Occupies(one)).OrderDescending().ToList();
                var capacity = _day.Resources[resource].Capacity;
                moved |= Push(queue[i], Math.Max(_x[queue[i - 1]], ends.Count >= capacity ? ends[capacity - 1] : 0));
            }
        }

        return moved;
    }

    private bool Budgets()
    {
        var moved = false;
        foreach (var b in _order)
        {
            for (var p = 0; p < _day.Blocks[b].Plates.Count; p++)
            {
                foreach (var budget in _day.Blocks[b].Plates[p].Budgets)
                {
                    var stage = Operation.Stage(b, p, budget.Event.Index);
                    moved |= Push(stage, _x[stage] + Elapsed(b, p, budget) - Limit(b, p, budget));
                }
            }
        }

        return moved;
    }

    private long At(Operation one, Moment moment) => _x[one] + moment.OffsetMs + (moment.FromEnd ? Duration(one) : 0);

    private bool Push(Operation one, long start)
    {
        if (start <= _x[one])
        {
            return false;
        }

        _x[one] = start;
        return true;
    }
}
