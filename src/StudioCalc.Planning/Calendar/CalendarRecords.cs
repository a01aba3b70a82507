namespace StudioCalc.Planning;

/// <summary>An event of a calendar.</summary>
public sealed record CalendarEvent
{
    /// <summary>Its identity, the same whenever the same event is written again: see <see cref="CalendarText.Uid"/>.</summary>
    public required string Uid { get; init; }

    /// <summary>Its start, with the offset of the zone. Fractions of a second are cut.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>Its end, after the start.</summary>
    public required DateTimeOffset End { get; init; }

    /// <summary>What it is, in a few words.</summary>
    public required string Summary { get; init; }

    /// <summary>More about it; lines may be broken.</summary>
    public string Description { get; init; } = "";

    /// <summary>Where it is.</summary>
    public string Location { get; init; } = "";

    /// <summary>Groups that it belongs to.</summary>
    public IReadOnlyList<string> Categories { get; init; } = [];

    /// <summary>How long before its start somebody is reminded; none: nobody is.</summary>
    public TimeSpan? Reminder { get; init; }
}

/// <summary>A change of the offset of a zone, or what holds at first.</summary>
/// <param name="At">The moment from which it holds.</param>
/// <param name="OffsetBefore">The offset until then.</param>
/// <param name="Offset">The offset from then on.</param>
/// <param name="Name">Its short name; may be empty.</param>
/// <param name="IsDaylight">Whether it is daylight-saving time.</param>
public sealed record CalendarOffset(DateTimeOffset At, TimeSpan OffsetBefore, TimeSpan Offset, string Name, bool IsDaylight);

/// <summary>A time zone, as far as the events of a calendar need it.</summary>
/// <param name="Id">Its IANA name.</param>
/// <param name="Offsets">Its offsets in rising order; the first holds before the first event.</param>
public sealed record CalendarZone(string Id, IReadOnlyList<CalendarOffset> Offsets)
{
    /// <summary>Whether a local time of the zone does not tell this moment: the hour is repeated, and this is its second pass.</summary>
    internal bool IsSecondPass(DateTimeOffset moment) => Offsets.Any(change =>
        change.Offset < change.OffsetBefore && moment >= change.At && moment < change.At + (change.OffsetBefore - change.Offset));

    internal TimeSpan OffsetAt(DateTimeOffset moment) =>
        (Offsets.LastOrDefault(change => change.At <= moment) ?? Offsets[0]).Offset;
}

/// <summary>A calendar to be written.</summary>
public sealed record CalendarPlan
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>When it was written: the time that the plan carries, not that of the clock, so that the same plan gives the same text.</summary>
    public required DateTimeOffset Stamp { get; init; }

    /// <summary>The zone that times are told in; none: UTC.</summary>
    public CalendarZone? Zone { get; init; }

    /// <summary>The events.</summary>
    public required IReadOnlyList<CalendarEvent> Events { get; init; }
}
