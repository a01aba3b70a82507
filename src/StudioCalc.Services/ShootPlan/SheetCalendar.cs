using NodaTime;
using NodaTime.TimeZones;
using StudioCalc.V1;
using Duration = Google.Protobuf.WellKnownTypes.Duration;

namespace StudioCalc.Services;

/// <summary>The running order and the fire times as a calendar.</summary>
internal static class SheetCalendar
{
    // Older changes of a zone do not matter, and may have offsets with seconds.
    private static readonly Instant FarBack = Instant.FromUtc(1975, 1, 1, 0, 0);
    private static readonly TimeSpan Shortest = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BeforeFire = TimeSpan.FromMinutes(5);

    public static Document Write(RenderCallSheetRequest request, PlanShootResponse plan, DayClock clock)
    {
        var order = plan.Order.Solution ?? plan.Order.NotReached.Nearest;
        var title = plan.Title.Length > 0 ? plan.Title : "Call sheet";
        return new()
        {
            MediaType = "text/calendar; charset=utf-8",
            FileName = "call-sheet.ics",
            Content = Planning.CalendarText.Write(new()
            {
                Name = title,
                Stamp = clock.Local(new()),
                Zone = Zone(clock, order?.Finish ?? new()),
                Events = order is null ? [] : [.. Shots(request.Plan.Day, order, title, clock), .. Fires(order, title, clock)],
            }),
        };
    }

    private static IEnumerable<Planning.CalendarEvent> Shots(ShootDay day, ShootOrder order, string title, DayClock clock)
    {
        var asked = day.Shots.ToDictionary(shot => shot.Name, StringComparer.Ordinal);
        foreach (var shot in order.Shots)
        {
            var note = asked[shot.Name].HasNote ? "\n" + asked[shot.Name].Note : "";
            yield return Event(
                "shot", shot.Name, FormattableString.Invariant($"{shot.Place}. {shot.Name}"), shot.Start, shot.End, title, clock) with
            {
                Description = $"Plates: {string.Join(", ", asked[shot.Name].Plates)}{note}",
                Categories = ["set"],
            };
        }
    }

    private static IEnumerable<Planning.CalendarEvent> Fires(ShootOrder order, string title, DayClock clock) =>
        order.Plates.Select(plate => Event("fire", plate.Name, $"Fire {plate.Name}", plate.Fire, plate.Landed, title, clock) with
        {
            Description = string.Join('\n', plate.Stages.Select(stage => stage.Station).Where(station => station.Length > 0).Distinct(StringComparer.Ordinal)),
            Categories = ["kitchen"],
            Reminder = BeforeFire,
        });

    private static Planning.CalendarEvent Event(
        string kind, string name, string summary, Duration from, Duration until, string title, DayClock clock)
    {
        var (start, end) = (clock.Local(from), clock.Local(until));
        return new()
        {
            Uid = Planning.CalendarText.Uid(title, clock.Start.ToString("g", System.Globalization.CultureInfo.InvariantCulture), kind, name),
            Start = start,
            End = end - start < Shortest ? start + Shortest : end,
            Summary = summary,
        };
    }

    // What holds at the start, and what changes until the day after the end.
    private static Planning.CalendarZone Zone(DayClock clock, Duration finish)
    {
        var end = clock.Start + NodaTime.Duration.FromSeconds(finish.Seconds) + NodaTime.Duration.FromDays(1);
        var intervals = clock.Zone.GetZoneIntervals(new Interval(clock.Start, end)).ToList();
        return new(clock.Zone.Id, [.. intervals.Select((one, i) => Offset(clock.Zone, one, isFirst: i == 0))]);
    }

    private static Planning.CalendarOffset Offset(DateTimeZone zone, ZoneInterval interval, bool isFirst)
    {
        var offset = interval.WallOffset.ToTimeSpan();
        var isOld = !interval.HasStart || interval.Start < FarBack;
        var at = isOld ? FarBack : interval.Start;
        var before = isOld && isFirst ? offset : zone.GetUtcOffset(at - NodaTime.Duration.Epsilon).ToTimeSpan();
        return new(at.ToDateTimeOffset(), before, offset, interval.Name, interval.Savings != NodaTime.Offset.Zero);
    }
}
