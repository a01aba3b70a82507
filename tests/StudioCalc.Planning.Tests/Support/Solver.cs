using Google.OrTools.Sat;

namespace StudioCalc.Planning.Tests;

/// <summary>A day as a constraint model, from the records alone; solved by one worker.</summary>
/// <remarks>Least excess, then the earliest finish, then the least setups, as one weighted sum. It chooses times freely, so it also tells
/// whether keeping what a block keeps alone loses anything.</remarks>
internal sealed class Solver
{
    private const int Horizon = 1500;

    private readonly ShootDay _day;
    private readonly CpModel _model = new();
    private readonly Dictionary<Operation, (IntVar Start, LinearExpr End, LinearExpr Free)> _at = [];
    private readonly List<LinearExpr> _excess = [];
    private readonly List<LinearExpr> _setups = [];
    private readonly BoolVar[,] _before;
    private readonly BoolVar[,] _next;

    public Solver(ShootDay day)
    {
        _day = day;
        var n = day.Blocks.Count;
        (_before, _next) = (new BoolVar[n, n], new BoolVar[n + 1, n + 1]);
        Order(n);
        for (var b = 0; b < n; b++)
        {
            AddStages(b);
            AddShots(b);
            AddBudgets(b);
        }

        Share();
        var finish = _model.NewIntVar(0, Horizon, "finish");
        foreach (var (_, at) in _at)
        {
            _model.Add(finish >= at.Free);
            _model.Add(finish >= at.End);
        }

        var objective = LinearExpr.Sum(_excess) * 2_000_000 + LinearExpr.Sum(_setups);
        _model.Minimize(objective + finish * 1000);
        (Finish, Objective) = (finish, objective);
    }

    private IntVar Finish { get; }

    private LinearExpr Objective { get; }

    /// <summary>The proved best cost; none where there is no solution. Not proved: null with false.</summary>
    public (bool IsProved, OrderCost? Best) Solve()
    {
        var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1,max_deterministic_time:3" };
        return solver.Solve(_model) switch
        {
            CpSolverStatus.Optimal => (true, new(0, _excess.Sum(solver.Value), solver.Value(Finish), _setups.Sum(solver.Value))),
            CpSolverStatus.Infeasible => (true, null),
            _ => (false, null),
        };
    }

    private void Order(int n)
    {
        var arcs = _model.AddCircuit();
        var place = Enumerable.Range(0, n).Select(i => _model.NewIntVar(0, n - 1, "place")).ToArray();
        for (var i = 0; i <= n; i++)
        {
            for (var j = 0; j <= n; j++)
            {
                if (i != j)
                {
                    _next[i, j] = _model.NewBoolVar($"{i} then {j}");
                    arcs.AddArc(i, j, _next[i, j]);
                }
            }
        }

        for (var i = 0; i < n; i++)
        {
            _model.Add(place[i] == 0).OnlyEnforceIf(_next[n, i]);
            if (_day.Blocks[i].Position is { } position)
            {
                _model.Add(place[i] == position);
            }

            for (var j = 0; j < n; j++)
            {
                if (i != j)
                {
                    _before[i, j] = _model.NewBoolVar($"{i} before {j}");
                    _model.Add(place[i] + 1 <= place[j]).OnlyEnforceIf(_before[i, j]);
                    _model.Add(place[j] + 1 <= place[i]).OnlyEnforceIf(_before[i, j].Not());
                    _model.Add(place[j] == place[i] + 1).OnlyEnforceIf(_next[i, j]);
                }
            }
        }
    }

    private void AddStages(int b)
    {
        var block = _day.Blocks[b];
        for (var p = 0; p < block.Plates.Count; p++)
        {
            for (var i = 0; i < block.Plates[p].Stages.Count; i++)
            {
                var stage = block.Plates[p].Stages[i];
                var start = Start(Operation.Stage(b, p, i), LinearExpr.Constant(stage.DurationMs), LinearExpr.Constant(stage.DurationMs));
                Inside(start, stage.Resource is { } resource ? _day.Resources[resource].Open : [], stage.DurationMs);
                _model.Add(start >= (i == 0 ? block.Plates[p].NotBeforeMs : 0));
                if (i > 0)
                {
                    _model.Add(start >= _at[Operation.Stage(b, p, i - 1)].End + block.Plates[p].Stages[i - 1].LagMs);
                }
            }
        }
    }

    private void AddShots(int b)
    {
        var block = _day.Blocks[b];
        for (var k = 0; k < block.Shots.Count; k++)
        {
            var shot = block.Shots[k];
            var length = SetupLength(b, k);
            _setups.AddRange(k == 0 ? [length.Length] : []);
            var setup = Start(Operation.Setup(b, k), length.Length, length.Length);
            foreach (var (literal, ms) in length.Cases)
            {
                Inside(setup, _day.Resources[_day.Set].Open, ms, literal);
            }

            var held = shot.ShootMs + (shot.ApprovalHoldsSet ? shot.ApproveMs : 0);
            var shoot = Start(Operation.Shoot(b, k), LinearExpr.Constant(shot.ShootMs), LinearExpr.Constant(held));
            Inside(shoot, _day.Resources[_day.Set].Open, held);
            Inside(shoot, shot.Open, shot.ShootMs);
            var approve = Start(Operation.Approve(b, k), LinearExpr.Constant(shot.ApproveMs), LinearExpr.Constant(shot.ApproveMs));
            _model.Add(shoot >= _at[Operation.Setup(b, k)].End);
            _model.Add(approve == shoot + shot.ShootMs);
            foreach (var p in shot.Plates.Count > 0 ? shot.Plates : Enumerable.Range(0, block.Plates.Count))
            {
                var stages = block.Plates[p].Stages;
                _model.Add((shot.SetupBeforePlate ? shoot : setup) >= _at[Operation.Stage(b, p, stages.Count - 1)].End + stages[^1].LagMs);
            }
        }
    }

    private (LinearExpr Length, List<(BoolVar? Literal, long Ms)> Cases) SetupLength(int b, int k)
    {
        var shots = _day.Blocks[b].Shots;
        if (k > 0)
        {
            int[] Of(int shot) => [.. shots[shot].Plates.Count > 0 ? shots[shot].Plates.Order() : Enumerable.Range(0, _day.Blocks[b].Plates.Count)];
            var ms = _day.Setups.Change(shots[k - 1].Setup, shots[k].Setup) + (Of(k - 1).SequenceEqual(Of(k)) ? 0 : _day.Setups.SwapMs);
            return (LinearExpr.Constant(ms), [(null, ms)]);
        }

        var n = _day.Blocks.Count;
        List<(BoolVar? Literal, long Ms)> cases = [(_next[n, b], _day.Setups.FirstMs)];
        cases.AddRange(Enumerable.Range(0, n).Where(i => i != b).Select(i =>
            ((BoolVar?)_next[i, b], _day.Setups.SwapMs + _day.Setups.Change(_day.Blocks[i].Shots[^1].Setup, shots[0].Setup))));
        return (LinearExpr.WeightedSum(cases.Select(one => one.Literal!), cases.Select(one => one.Ms)), cases);
    }

    private void AddBudgets(int b)
    {
        for (var p = 0; p < _day.Blocks[b].Plates.Count; p++)
        {
            foreach (var budget in _day.Blocks[b].Plates[p].Budgets)
            {
                var excess = _model.NewIntVar(0, Horizon, "excess");
                var elapsed = At(Operation.Shoot(b, budget.LastFrame.Index), budget.LastFrame) - At(Operation.Stage(b, p, budget.Event.Index), budget.Event);
                _model.Add(excess >= elapsed - budget.LimitMs);
                _excess.Add(excess);
            }
        }
    }

    // One order on every resource; with several units, of starts.
    private void Share()
    {
        for (var resource = 0; resource < _day.Resources.Count; resource++)
        {
            var queue = _at.Keys.Where(one => Resource(one) == resource).ToList();
            var units = _day.Resources[resource].Capacity > 1;
            for (var i = 0; i < queue.Count; i++)
            {
                for (var j = 0; j < queue.Count; j++)
                {
                    var (a, b) = (queue[i], queue[j]);
                    if (i == j || a.Block == b.Block && i > j)
                    {
                        continue;
                    }

                    var follows = _model.Add(_at[b].Start >= (units ? _at[a].Start : _at[a].Free));
                    if (a.Block != b.Block)
                    {
                        follows.OnlyEnforceIf(_before[a.Block, b.Block]);
                    }
                }
            }

            if (units)
            {
                _model.AddCumulative(_day.Resources[resource].Capacity).AddDemands(
                    queue.Select(one => _model.NewFixedSizeIntervalVar(_at[one].Start, Stage(one).DurationMs, "on")), Enumerable.Repeat(1, queue.Count));
            }
        }
    }

    private Stage Stage(Operation one) => _day.Blocks[one.Block].Plates[one.Plate].Stages[one.Index];

    private int? Resource(Operation one) => one.Kind switch
    {
        OperationKind.Stage => Stage(one).Resource,
        OperationKind.Approve => null,
        _ => _day.Set,
    };

    private IntVar Start(Operation one, LinearExpr length, LinearExpr occupies)
    {
        var start = _model.NewIntVar(0, Horizon, one.ToString());
        _at[one] = (start, start + length, start + occupies);
        return start;
    }

    private LinearExpr At(Operation one, Moment moment) => (moment.FromEnd ? _at[one].End : _at[one].Start) + moment.OffsetMs;

    private void Inside(IntVar start, IReadOnlyList<OpenTime> open, long length, BoolVar? when = null)
    {
        if (open.Count == 0 || length == 0)
        {
            return;
        }

        var choice = open.Select(one =>
        {
            var literal = _model.NewBoolVar("inside");
            _model.Add(start >= one.FromMs).OnlyEnforceIf(literal);
            _model.Add(start + length <= one.UntilMs).OnlyEnforceIf(literal);
            return literal;
        }).ToList();
        var some = _model.AddBoolOr(choice);
        if (when is not null)
        {
            some.OnlyEnforceIf(when);
        }
    }
}
