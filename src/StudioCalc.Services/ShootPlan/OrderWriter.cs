using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes orders: printed times are the latest that keep the end of the day.</summary>
internal sealed class OrderWriter
{
    private readonly DayRead _day;
    private readonly Planning.ShootOrder _order;
    private readonly Dictionary<Operation, TimedOperation> _earliest;
    private readonly Dictionary<Operation, TimedOperation> _latest;
    private readonly BegunShots _begun;

    public OrderWriter(DayRead day, Planning.ShootOrder order, BegunShots? begun = null)
    {
        (_day, _order, _begun) = (day, order, begun ?? new([], [], null));
        _earliest = order.Schedule.Earliest.ToDictionary(one => one.Operation);
        _latest = order.Schedule.Latest.ToDictionary(one => one.Operation);
        foreach (var one in _begun.Begun.Where(one => !_latest.ContainsKey(one.Operation)))
        {
            int? resource = one.Operation.Kind is OperationKind.Setup or OperationKind.Shoot ? day.Day.Set : null;
            _latest.Add(one.Operation, new(one.Operation, resource, 0, one.StartMs, one.EndMs));
        }
    }

    private IEnumerable<int> Blocks => _begun.Begun.Where(one => one.Operation.Kind == OperationKind.Shoot).Select(one => one.Operation.Block)
        .Concat(_order.Schedule.Order).Distinct();

    public V1.ShootOrder Write()
    {
        var schedule = _order.Schedule;
        var written = new V1.ShootOrder
        {
            Finish = Times.FromMilliseconds(schedule.FinishMs),
            ChangeTime = Times.FromMilliseconds(schedule.SetupMs),
            IsProved = _order.IsProved,
            States = (uint)_order.StatesKept,
            IsSplit = _order.Splits.Count > 0,
            BudgetExcessS = schedule.ExcessMs / 1000.0,
        };
        if (_order.GapMs is { } gap)
        {
            var bound = schedule.FinishMs - Math.Max(0, gap);
            written.FinishBound = Times.FromMilliseconds(bound);
            written.GapShare = bound > 0 ? (schedule.FinishMs - bound) / (double)bound : 0;
        }

        written.Shots.Add(WriteShots());
        written.Plates.Add(Blocks.SelectMany(block => Enumerable.Range(0, _day.Day.Blocks[block].Plates.Count).Select(plate => Write(block, plate)))
            .Select((plate, i) => (plate, i)).OrderBy(one => one.plate.Fire.ToMilliseconds()).ThenBy(one => one.i).Select(one => one.plate));
        written.Loads.Add(WriteLoads());
        written.CriticalPath.Add(CriticalPath.Of(schedule.Network).Where(step => step.Operation.EndMs > step.Operation.StartMs).Select(step => new V1.CriticalStep
        {
            What = What(step.Operation.Operation),
            Start = Times.FromMilliseconds(step.Operation.StartMs),
            End = Times.FromMilliseconds(step.Operation.EndMs),
        }));
        written.UntimedPlates.Add(_day.Asked.Plates.Where((plate, i) => _day.Plates[i] is null && plate.Use is PlateUse.StandIn or PlateUse.Spare).Select(plate => plate.Name));
        return written;
    }

    /// <summary>When a moment of a stage or a shot comes, by the printed times. [ms]</summary>
    public long At(Operation operation, Moment moment) =>
        moment.OffsetMs + (moment.FromEnd ? _latest[operation].EndMs : _latest[operation].StartMs);

    private IEnumerable<OrderedShot> WriteShots()
    {
        var place = 0u;
        var before = _begun.Standing is { } standing ? _day.Asked.Shots[standing] : null;
        foreach (var block in Blocks)
        {
            for (var k = 0; k < _day.Day.Blocks[block].Shots.Count; k++)
            {
                var at = new ShotPlace(block, k);
                if (_begun.Approved.Contains(at))
                {
                    continue;
                }

                var shot = _day.ShotAt(block, k);
                var (setup, shoot) = (_latest[at.Setup], _latest[at.Shoot]);
                var written = new OrderedShot
                {
                    Name = shot.Name,
                    Place = ++place,
                    SetupStart = Times.FromMilliseconds(setup.StartMs),
                    SetupTime = Times.FromMilliseconds(setup.EndMs - setup.StartMs),
                    Start = Times.FromMilliseconds(shoot.StartMs),
                    End = Times.FromMilliseconds(shoot.EndMs),
                    Approved = Times.FromMilliseconds(_latest[at.Approve].EndMs),
                };
                written.ChangedAttributes.Add(_day.Attributes.Where(name => ValueOf(before, name) != ValueOf(shot, name)));
                before = shot;
                yield return written;
            }
        }
    }

    private OrderedPlate Write(int block, int plate)
    {
        var (asked, read) = _day.PlateAt(block, plate);
        var stages = asked.Stages.Select((_, i) => _latest[read.Stage(i)]).ToList();
        var first = _day.Day.Blocks[block].Shots.Select((shot, k) => (shot, k)).Where(one => one.shot.Plates.Contains(plate))
            .Min(one => _latest[Operation.Shoot(block, one.k)].StartMs);
        var written = new OrderedPlate
        {
            Name = asked.Name,
            Fire = Times.FromMilliseconds(stages[0].StartMs),
            EarliestFire = Times.FromMilliseconds(_earliest[read.Stage(0)].StartMs),
            Landed = Times.FromMilliseconds(stages[^1].EndMs),
            Wait = Times.FromMilliseconds(Math.Max(0, first - stages[^1].EndMs)),
        };
        written.Stages.Add(stages.Select((stage, i) => new TimedStage
        {
            Kind = asked.Stages[i].Kind,
            Station = asked.Stages[i].Station,
            Start = Times.FromMilliseconds(stage.StartMs),
            End = Times.FromMilliseconds(stage.EndMs),
        }));
        written.Budgets.Add(read.Budgets.Select(budget => Write(budget, read)));
        return written;
    }

    private TimedBudget Write(BudgetPlace budget, PlateRead plate)
    {
        var starts = At(plate.Stage(budget.Event.Index), budget.Event);
        var until = At(Operation.Shoot(plate.Block, budget.LastFrame.Index), budget.LastFrame);
        var written = new TimedBudget
        {
            Component = budget.Asked.Component,
            ClockStarts = Times.FromMilliseconds(starts),
            NeededUntil = Times.FromMilliseconds(until),
        };
        if (budget.Budget is { } known)
        {
            written.Limit = Times.FromMilliseconds(known.LimitMs);
            written.SlackS = (known.LimitMs - (until - starts)) / 1000.0;
            written.SourceKind = budget.Kind;
        }

        return written;
    }

    private IEnumerable<ResourceLoad> WriteLoads()
    {
        var busy = new long[_day.Day.Resources.Count];
        foreach (var one in _latest.Values)
        {
            if (one.Resource is { } resource)
            {
                busy[resource] += one.EndMs - one.StartMs + Held(one.Operation);
            }
        }

        return _day.Day.Resources.Select((resource, i) => new ResourceLoad
        {
            Name = resource.Id,
            Count = (uint)resource.Capacity,
            Busy = Times.FromMilliseconds(busy[i]),
            BusyShare = _order.Schedule.FinishMs > 0 ? Math.Min(1, busy[i] / ((double)resource.Capacity * _order.Schedule.FinishMs)) : 0,
        });

        // Approval that keeps the set.
        long Held(Operation operation) => operation.Kind == OperationKind.Shoot
            && _day.Day.Blocks[operation.Block].Shots[operation.Index] is { ApprovalHoldsSet: true } shot ? shot.ApproveMs : 0;
    }

    private string What(Operation operation) => operation.Kind switch
    {
        OperationKind.Stage => _day.PlateAt(operation.Block, operation.Plate).Asked is var plate ? $"{plate.Name}: {StageName(plate.Stages[operation.Index].Kind)}" : "",
        OperationKind.Setup => $"{_day.ShotAt(operation.Block, operation.Index).Name}: set",
        OperationKind.Shoot => $"{_day.ShotAt(operation.Block, operation.Index).Name}: frames",
        _ => $"{_day.ShotAt(operation.Block, operation.Index).Name}: approval",
    };

    private static string StageName(PlateStageKind kind) => kind switch
    {
        PlateStageKind.Cook => "cook",
        PlateStageKind.Rest => "rest",
        PlateStageKind.PlateUp => "plate up",
        PlateStageKind.Garnish => "garnish",
        PlateStageKind.Carry => "carry",
        _ => "settle",
    };

    private static string ValueOf(DayShot? shot, string attribute) => shot?.Attributes.FirstOrDefault(one => one.Name == attribute)?.Value ?? "";
}

/// <summary>Shots that have begun.</summary>
/// <param name="Begun">What has begun, shots by the start of their frames.</param>
/// <param name="Approved">Shots that are approved, and so are left out.</param>
/// <param name="Standing">The last of these: what stands on the set before the first shot that is written.</param>
internal sealed record BegunShots(IReadOnlyList<Begun> Begun, IReadOnlyList<ShotPlace> Approved, int? Standing);
