using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>One replication after another on one core.</summary>
internal sealed class DayRun
{
    private const uint Key = 1;

    private readonly DayModel _model;
    private readonly (uint, uint) _key;
    private readonly DayClock _clock;
    private readonly bool _freely;
    private readonly List<Session> _sessions = [];
    private readonly SetMarks _marks = new();
    private readonly long[][] _starts;
    private readonly long[][] _ends;
    private readonly long[] _landed;
    private readonly int[] _landedBy;
    private readonly bool[] _waited;

    /// <param name="model">The day.</param>
    /// <param name="seed">The seed of the draws.</param>
    /// <param name="freely">Whether the kitchen fires as early as it can and budgets do not matter: for what binds the day.</param>
    public DayRun(DayModel model, uint seed, bool freely)
    {
        (_model, _key, _freely) = (model, (seed, Key), freely);
        _clock = new(model) { Traces = freely };
        var plates = model.Blocks.Max(block => block.Plates.Length);
        var stages = model.Blocks.Max(block => block.Plates.Select(plate => plate.Stages.Length).DefaultIfEmpty().Max());
        _starts = [.. Enumerable.Range(0, plates).Select(_ => new long[stages])];
        _ends = [.. Enumerable.Range(0, plates).Select(_ => new long[stages])];
        (_landed, _landedBy, _waited) = (new long[plates], new int[plates], new bool[plates]);
        Tally = new(model.Resources.Length, model.Blocks.Length);
    }

    public DayTally Tally { get; }

    public RunResult Result { get; private set; }

    /// <summary>Runs a replication.</summary>
    public void Run(uint replication)
    {
        _clock.Begin();
        _marks.Begin();
        _sessions.Clear();
        foreach (var block in _model.Order)
        {
            _sessions.Add(new(block, 0, _model.Blocks[block].AllShots, 0));
        }

        Result = new() { Last = -1 };
        Span<bool> broken = stackalloc bool[_model.Blocks.Length];
        var plannedFree = _model.PlannedFree[^1];
        IReadOnlyList<int>? standing = null;
        for (var k = 0; k < _sessions.Count; k++)
        {
            var session = _sessions[k];
            var block = _model.Blocks[session.Block];
            var setup = FirstSetupMs(standing, block.Shots[First(session.Shots)]);
            _marks.Add(session.Round == 0 ? _model.PlannedFree[k] : plannedFree, _clock.FreeMs(_model.Day.Set));
            Kitchen(replication, session, block, _marks.LastPlannedMs + setup);
            if (session.Round > 0)
            {
                plannedFree += setup + block.Shots.Where((_, s) => Has(session.Shots, s)).Sum(shot => shot.Shot.ShootMs);
            }

            var again = Set(replication, session, block, setup, ref broken[session.Block]);
            standing = block.Shots[63 - System.Numerics.BitOperations.LeadingZeroCount(session.Shots)].Shot.Setup;
            if (again != 0)
            {
                Tally.Again(session.Block, session.Round, _model.MostPlates, System.Numerics.BitOperations.PopCount(again));
                if (session.Round + 1 < _model.MostPlates)
                {
                    _sessions.Add(new(session.Block, session.Round + 1, again, _clock.FreeMs(_model.Day.Set)));
                }
            }
        }

        Result = Result with { IsOver = _clock.IsOver };
        Tally.Add(Result, broken, _clock.BusyMs);
        if (_freely)
        {
            Tally.Walk(_clock, Result.Last);
        }
    }

    private static int First(ulong shots) => System.Numerics.BitOperations.TrailingZeroCount(shots);

    private static bool Has(ulong shots, int shot) => (shots >> shot & 1) != 0;

    private static uint What(Session session, int index) => ((uint)session.Block << 16) | ((uint)session.Round << 12) | (uint)index;

    private static uint Part(OperationKind kind, int index) => ((uint)kind << 24) | (uint)index;

    private long FirstSetupMs(IReadOnlyList<int>? standing, ModelShot shot) => standing is null
        ? _model.Day.Setups.First(shot.Shot.Setup)
        : _model.Day.Setups.SwapMs + _model.Day.Setups.Change(standing, shot.Shot.Setup);

    private void Kitchen(uint replication, Session session, ModelBlock block, long plannedShootMs)
    {
        for (var p = 0; p < block.Plates.Length; p++)
        {
            var plate = block.Plates[p];
            _waited[p] = false;
            if (session.Round > 0 && !IsUsed(block, session.Shots, p))
            {
                continue;
            }

            var (time, place) = (plate.NotBeforeMs, -1);
            for (var i = 0; i < plate.Stages.Length; i++)
            {
                var stage = plate.Stages[i];
                var duration = plate.Times[i] is { } spread
                    ? spread.DrawMs(_key, replication, What(session, p), Part(OperationKind.Stage, i))
                    : stage.DurationMs;
                time = Math.Max(time, Release(session, plate, i, plannedShootMs));
                (_starts[p][i], place) = _clock.Work(stage.Resource, time, duration, place);
                _ends[p][i] = _starts[p][i] + duration;
                time = _ends[p][i] + stage.LagMs;
            }

            (_landed[p], _landedBy[p]) = (time, place);
        }
    }

    // What is made again has no printed time; it is called for as long before its frames as the first time.
    private long Release(Session session, ModelPlate plate, int stage, long plannedShootMs) =>
        _freely ? session.KnownMs
        : session.Round > 0 ? _marks.Called(plannedShootMs - plate.PlannedShootMs + plate.PlannedMs[stage], session.KnownMs)
        : _model.Policy == FiringPolicy.Clock ? plate.PlannedMs[stage]
        : _marks.Called(plate.PlannedMs[stage], 0);

    private static bool IsUsed(ModelBlock block, ulong shots, int plate)
    {
        for (var k = 0; k < block.Shots.Length; k++)
        {
            if (Has(shots, k) && block.Shots[k].Plates.Contains(plate))
            {
                return true;
            }
        }

        return false;
    }

    private ulong Set(uint replication, Session session, ModelBlock block, long firstSetupMs, ref bool broken)
    {
        var again = 0UL;
        ModelShot? before = null;
        for (var k = 0; k < block.Shots.Length; k++)
        {
            if (!Has(session.Shots, k))
            {
                continue;
            }

            var shot = block.Shots[k];
            var change = before is null ? firstSetupMs
                : _model.Day.Setups.Change(before.Shot.Setup, shot.Shot.Setup)
                    + (before.Plates.AsSpan().SequenceEqual(shot.Plates) ? 0 : _model.Day.Setups.SwapMs);
            before = shot;
            var (landed, landedBy) = (0L, -1);
            foreach (var p in shot.Plates)
            {
                (landed, landedBy) = _landed[p] > landed ? (_landed[p], _landedBy[p]) : (landed, landedBy);
            }

            if (change > 0 && _model.SetupFactor is { } factor)
            {
                change = (long)(change * factor.DrawMs(_key, replication, What(session, k), Part(OperationKind.Setup, 0)) / 1000.0 + 0.5);
            }

            var set = _model.Day.Set;
            var (setupStart, setupBy) = _clock.Work(set, shot.Shot.SetupBeforePlate ? 0 : landed, change, shot.Shot.SetupBeforePlate ? -1 : landedBy);
            var ready = setupStart + change;
            var tries = ShotTries.Draw(shot, _key, replication, What(session, k));
            var wanted = Windows.Fit(shot.Open, Math.Max(ready, landed), tries.TimeMs);
            if (wanted >= Windows.Never)
            {
                Result = Result with { Missed = Result.Missed + 1 };
                continue;
            }

            var (start, deadline) = (wanted, long.MaxValue);
            foreach (var (p, budget) in _freely ? [] : shot.Budgets)
            {
                var at = budget.Event;
                var limit = (at.FromEnd ? _ends : _starts)[p][at.Index] + at.OffsetMs + budget.LimitMs;
                var last = start + (budget.LastFrame.FromEnd ? tries.TimeMs : 0) + budget.LastFrame.OffsetMs;
                deadline = last > limit ? Math.Min(deadline, limit) : deadline;
            }

            var spent = deadline == long.MaxValue ? tries.TimeMs : Math.Clamp(deadline - start, 0, tries.TimeMs);
            var (began, place) = _clock.Work(set, start, spent, landed > ready ? landedBy : setupBy);
            if (session.Round == 0)
            {
                _marks.Add(shot.PlannedMs, began);
            }

            Result = Result with { IdleMs = Result.IdleMs + Math.Max(0, landed - _clock.WithoutPlates(shot, ready, tries.TimeMs)) };
            Wait(session.Block, shot, began);
            var (frames, keepers) = tries.Within(spent);
            var finished = deadline == long.MaxValue && tries.IsFinished;
            broken |= deadline < long.MaxValue;
            again |= finished ? 0 : 1UL << k;
            Result = Result with { Frames = Result.Frames + frames, Keepers = Result.Keepers + keepers, Finished = Result.Finished + (finished ? 1 : 0) };
            var end = began + spent;
            if (finished)
            {
                var approval = shot.Approval is { } time
                    ? time.DrawMs(_key, replication, What(session, k), Part(OperationKind.Approve, 0))
                    : shot.Shot.ApproveMs;
                end += approval;
                if (shot.Shot.ApprovalHoldsSet)
                {
                    _clock.Keep(set, end);
                }
            }

            Result = end >= Result.FinishMs ? Result with { FinishMs = end, Last = place } : Result;
        }

        return again;
    }

    private void Wait(int block, ModelShot shot, long startMs)
    {
        foreach (var p in shot.Plates)
        {
            if (!_waited[p])
            {
                _waited[p] = true;
                Tally.Wait(block, startMs - _landed[p]);
            }
        }
    }

    private readonly record struct Session(int Block, int Round, ulong Shots, long KnownMs);
}

/// <summary>What one replication came to.</summary>
internal readonly record struct RunResult(
    long FinishMs, int Finished, int Frames, int Keepers, int Missed, long IdleMs, bool IsOver, int Last);
