namespace StudioCalc.Planning;

/// <summary>What every way to go on shares after a set of blocks and what stands on the set.</summary>
/// <remarks>
/// <code>
/// r_k = max(r_k, max over m of (min over j of S_jkm + r_m))                                 (9)
/// finish >= r_k + sum over j of work_jk + min over j of tail_jk     for each resource k      (10)
/// finish >= r_m + max over j of F_jm                                for each resource m      (11)
/// </code>
/// <para>j: blocks left. (9) lifts a release to the first moment at which any of them can use it, which changes no way to go on. In (10) the
/// set has its least setups too, and work passes in open times only. From the set, (9) and (11) take the setup that comes now, if setups obey
/// the triangle inequality: a detour only adds to it. Otherwise they take the cheapest setup into each block.</para>
/// </remarks>
internal sealed class LeftBounds
{
    private readonly SearchDay _day;
    private readonly long[] _lift;
    private readonly long[] _work;
    private readonly long[] _tail;
    private readonly long[] _finish;
    private readonly bool[] _used;
    private readonly int _resources;
    private readonly bool _lifts;

    public LeftBounds(SearchDay day, int left, int before, bool triangle)
    {
        _day = day;
        _resources = day.Day.Layout.Capacity.Length;
        _lifts = _resources <= 10;
        var columns = _resources + 1;
        _lift = new long[_lifts ? _resources * columns : 0];
        Array.Fill(_lift, Windows.Never);
        (_work, _tail, _finish, _used) = (new long[_resources], new long[_resources], new long[columns], new bool[_resources]);
        Array.Fill(_tail, Windows.Never);
        Array.Fill(_finish, LinearTimes.None);
        SetupMs = day.Setups.Least(left, before);
        for (var j = 0; j < day.Count; j++)
        {
            if ((left >> j & 1) == 1)
            {
                ExcessMs += day.LeastExcess[j];
                Add((triangle ? day.After[before][j] : day.Cheapest[j]).Linear, day.Cheapest[j], columns);
            }
        }

        _work[day.Day.Day.Set] += SetupMs;
    }

    public long SetupMs { get; }

    public long ExcessMs { get; }

    /// <summary>Lifts the releases and gives the least finish; resources without work left count as free.</summary>
    public long Finish(Span<long> free)
    {
        var layout = _day.Day.Layout;
        var finish = Math.Max(free[layout.Finish], _finish[_resources]);
        for (var k = 0; k < _resources; k++)
        {
            var units = free.Slice(layout.At[k], layout.Capacity[k]);
            if (!_used[k])
            {
                units.Clear();
                continue;
            }

            if (_lifts)
            {
                Lift(free, units, k);
            }

            finish = Math.Max(finish, _finish[k] + units[0]);
        }

        for (var k = 0; k < _resources; k++)
        {
            if (_used[k])
            {
                var units = free.Slice(layout.At[k], layout.Capacity[k]);
                finish = Math.Max(finish, _tail[k] + (units.Length == 1
                    ? Windows.Pass(_day.Day.Open[k], units[0], _work[k])
                    : Shared(units, _work[k])));
            }
        }

        return free[layout.Finish] = finish;
    }

    private static long Shared(ReadOnlySpan<long> units, long work)
    {
        foreach (var unit in units)
        {
            work += unit;
        }

        return (work + units.Length - 1) / units.Length;
    }

    private void Lift(Span<long> free, Span<long> units, int k)
    {
        var layout = _day.Day.Layout;
        var row = _lift.AsSpan(k * (_resources + 1), _resources + 1);
        var least = row[_resources];
        for (var m = 0; m < _resources; m++)
        {
            if (_used[m])
            {
                least = Math.Max(least, row[m] + free[layout.At[m]]);
            }
        }

        for (var u = 0; u < units.Length; u++)
        {
            units[u] = Math.Max(units[u], least);
        }
    }

    private void Add(LinearTimes after, BlockTimer cheapest, int columns)
    {
        var least = cheapest.Linear;
        var (used, own, set) = (least.Used, least.Used.Length + 1, _day.Day.Day.Set);
        for (var u = 0; u < used.Length; u++)
        {
            var k = used[u];
            _used[k] = true;
            _work[k] += least.Work[u] - (k == set ? cheapest.SetupMs : 0);
            _tail[k] = Math.Min(_tail[k], least.Tail[u]);
            _finish[k] = Math.Max(_finish[k], (k == set ? after : least).Finish[u]);
            for (var m = 0; _lifts && m < columns; m++)
            {
                var c = least.Column[m];
                ref var lift = ref _lift[k * columns + m];
                lift = Math.Min(lift, c < 0 ? LinearTimes.None : (m == set ? after : least).Start[u * own + c]);
            }
        }

        _finish[_resources] = Math.Max(_finish[_resources], least.Finish[used.Length]);
    }
}
