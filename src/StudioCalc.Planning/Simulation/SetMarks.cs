namespace StudioCalc.Planning;

/// <summary>How far the set is behind the plan or before it, at each of its marks: the set is free, frames begin.</summary>
internal sealed class SetMarks
{
    private readonly List<(long PlannedMs, long ActualMs)> _marks = [];

    public long LastPlannedMs => _marks[^1].PlannedMs;

    public void Begin() => _marks.Clear();

    public void Add(long plannedMs, long actualMs) => _marks.Add((plannedMs, actualMs));

    /// <summary>When the photographer calls for what the plan has at a moment.</summary>
    /// <remarks>The call comes when what is left on the set by the plan is the planned lead: after each mark the planned moment moves by what
    /// the set is late there. A mark that is not reached when the call is due does not move it.</remarks>
    /// <param name="plannedMs">The planned moment. [ms]</param>
    /// <param name="knownMs">No call comes before this. [ms]</param>
    public long Called(long plannedMs, long knownMs)
    {
        for (var i = 0; i < _marks.Count - 1; i++)
        {
            var call = Shifted(i, plannedMs);
            if (call <= _marks[i + 1].ActualMs)
            {
                return Math.Max(call, knownMs);
            }
        }

        return Math.Max(Shifted(_marks.Count - 1, plannedMs), knownMs);
    }

    private long Shifted(int mark, long plannedMs)
    {
        var (planned, actual) = _marks[mark];
        return Math.Max(actual, actual + plannedMs - planned);
    }
}
