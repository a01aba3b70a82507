namespace StudioCalc.Planning;

/// <summary>The resources of one replication: when each unit is free, for how long it worked, and what binds what.</summary>
internal sealed class DayClock
{
    private readonly DayModel _model;
    private readonly int[] _firstUnit;
    private readonly long[] _free;
    private readonly int[] _freeBy;
    private readonly long[] _lastStart;
    private readonly int[] _lastBy;
    private readonly List<(long StartMs, long EndMs, int Resource, int After, bool ForResource)> _trace = [];

    public DayClock(DayModel model)
    {
        _model = model;
        _firstUnit = new int[model.Resources.Length + 1];
        for (var i = 0; i < model.Resources.Length; i++)
        {
            _firstUnit[i + 1] = _firstUnit[i] + model.Resources[i].Capacity;
        }

        (_free, _freeBy) = (new long[_firstUnit[^1]], new int[_firstUnit[^1]]);
        (_lastStart, _lastBy) = (new long[model.Resources.Length], new int[model.Resources.Length]);
        BusyMs = new long[model.Resources.Length];
    }

    /// <summary>Whether work and what it waited for are kept.</summary>
    public bool Traces { get; init; }

    public long[] BusyMs { get; }

    /// <summary>Whether work lies outside the hours of its resource.</summary>
    public bool IsOver { get; private set; }

    public void Begin()
    {
        Array.Clear(_free);
        Array.Clear(_lastStart);
        Array.Clear(BusyMs);
        Array.Fill(_freeBy, -1);
        Array.Fill(_lastBy, -1);
        _trace.Clear();
        IsOver = false;
    }

    /// <summary>When a resource of one unit is free.</summary>
    public long FreeMs(int resource) => _free[_firstUnit[resource]];

    /// <summary>Does work as soon as a unit is free, in the order of the calls.</summary>
    /// <returns>Its start, and its place in the trace.</returns>
    public (long StartMs, int Place) Work(int? resource, long fromMs, long durationMs, int after)
    {
        if (resource is not { } at)
        {
            return (fromMs, Note(fromMs, fromMs + durationMs, -1, after, false));
        }

        var unit = _firstUnit[at];
        for (var u = unit + 1; u < _firstUnit[at + 1]; u++)
        {
            unit = _free[u] < _free[unit] ? u : unit;
        }

        var (start, by) = _free[unit] >= _lastStart[at] ? (_free[unit], _freeBy[unit]) : (_lastStart[at], _lastBy[at]);
        var waits = start > fromMs;
        start = Fit(_model.Open[at], Math.Max(start, fromMs), durationMs);
        var place = Note(start, start + durationMs, at, waits ? by : after, waits);
        (_free[unit], _freeBy[unit], _lastStart[at], _lastBy[at]) = (start + durationMs, place, start, place);
        BusyMs[at] += durationMs;
        return (start, place);
    }

    /// <summary>When the frames of a shot could begin if no plate were waited for.</summary>
    public long WithoutPlates(ModelShot shot, long readyMs, long timeMs)
    {
        var own = Windows.Fit(shot.Open, readyMs, timeMs);
        return Windows.Fit(_model.Open[_model.Day.Set], own, timeMs) is < Windows.Never and var start ? start : own;
    }

    /// <summary>Keeps a resource of one unit longer.</summary>
    public void Keep(int resource, long untilMs)
    {
        var unit = _firstUnit[resource];
        BusyMs[resource] += Math.Max(0, untilMs - _free[unit]);
        _free[unit] = Math.Max(_free[unit], untilMs);
    }

    /// <summary>Goes back from the last work to the start of the day.</summary>
    /// <param name="place">The last work.</param>
    /// <param name="pathMs">Gets the time of each resource on the way, the last one for work without a resource.</param>
    /// <param name="binds">Gets whether some work on the way waited for the resource.</param>
    public void WalkBack(int place, long[] pathMs, bool[] binds)
    {
        while (place >= 0)
        {
            var (start, end, resource, after, forResource) = _trace[place];
            pathMs[resource < 0 ? pathMs.Length - 1 : resource] += end - start;
            if (forResource)
            {
                binds[resource] = true;
            }

            place = after;
        }
    }

    // Where no opening is left the work is done after the last: over hours.
    private long Fit(OpenTime[] open, long startMs, long durationMs)
    {
        var start = Windows.Fit(open, startMs, durationMs);
        if (start < Windows.Never)
        {
            return start;
        }

        IsOver = true;
        return Math.Max(startMs, open[^1].UntilMs);
    }

    private int Note(long startMs, long endMs, int resource, int after, bool forResource)
    {
        if (!Traces)
        {
            return -1;
        }

        _trace.Add((startMs, endMs, resource, after, forResource));
        return _trace.Count - 1;
    }
}
