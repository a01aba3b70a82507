using StudioCalc.Planning;

namespace StudioCalc.Services;

/// <summary>The day in the order so far, as if nothing had happened yet: what a new plan is measured against.</summary>
internal sealed class PlanBefore
{
    private readonly DayRead _day;
    private readonly Dictionary<Operation, TimedOperation> _latest;

    public PlanBefore(DayDraft draft, DayLooks looks, IReadOnlyList<int> ranks, CancellationToken cancellation)
    {
        _day = draft.Arrange(draft.Groups, draft.Positions, looks);
        var order = draft.Groups.Shots.Select((shots, block) => (Rank: shots.Min(shot => ranks[shot]), block)).Order().Select(one => one.block);
        var schedule = Schedule.Of(_day.Day, order, cancellation);
        _latest = schedule.Latest.ToDictionary(one => one.Operation);
        FinishMs = schedule.FinishMs;
    }

    /// <summary>When the day was to end. [ms]</summary>
    public long FinishMs { get; }

    /// <summary>When a plate was to be fired; none where its shots had no place. [ms]</summary>
    public long? FireMs(int plate) => _day.Plates[plate] is { } read && _latest.TryGetValue(read.Stage(0), out var first) ? first.StartMs : null;
}
