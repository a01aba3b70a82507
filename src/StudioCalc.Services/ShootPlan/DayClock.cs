using Google.Protobuf.WellKnownTypes;
using NodaTime;
using NodaTime.Text;
using StudioCalc.V1;
using Duration = Google.Protobuf.WellKnownTypes.Duration;

namespace StudioCalc.Services;

/// <summary>The clock of a day: its start, and local time after it. The zones come with the build, so that every replica knows the same.</summary>
internal sealed record DayClock(DateTimeZone Zone, Instant Start)
{
    private const int FirstYear = 2000;
    private const int LastYear = 2100;

    // The last instants of the range still have days of their own in every zone.
    private static readonly string YearsText = FormattableString.Invariant($"Must lie in the years from {FirstYear} to {LastYear}.");

    private static readonly Instant First = Instant.FromUtc(FirstYear, 1, 1, 0, 0);
    private static readonly Instant Last = Instant.FromUtc(LastYear, 12, 31, 23, 59);

    private static readonly LocalDateTimePattern[] Patterns =
    [
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'ss"),
    ];

    /// <summary>The start as the contract tells it.</summary>
    public Timestamp Timestamp => Timestamp.FromDateTimeOffset(Start.ToDateTimeOffset());

    /// <summary>The clock, or null after noting what is bad.</summary>
    public static DayClock? Read(RequestContext context, DayStart start, FieldPath path)
    {
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(start.TimeZone);
        if (zone is null)
        {
            context.Violations.Add(path[DayStart.TimeZoneFieldNumber].ToString(), RefusalReason.UnknownMark,
                "Not a zone of the IANA time zone database, such as `Europe/Vienna`; upper and lower case count.");
        }

        var isInstant = start.MomentCase == DayStart.MomentOneofCase.Instant;
        var momentPath = path[isInstant ? DayStart.InstantFieldNumber : DayStart.LocalTimeFieldNumber];
        var instant = isInstant ? ReadInstant(context, start, path) : ReadLocal(context, start, zone, path);
        if (instant is not { } moment || zone is null)
        {
            return null;
        }

        if (moment < First || moment > Last)
        {
            context.Violations.Add(momentPath.ToString(), RefusalReason.OutOfRange,
                YearsText);
            return null;
        }

        return new(zone, moment);
    }

    /// <summary>The local time so long after the start.</summary>
    public DateTimeOffset Local(Duration after) =>
        (Start + NodaTime.Duration.FromSeconds(after.Seconds) + NodaTime.Duration.FromNanoseconds(after.Nanos)).InZone(Zone).ToDateTimeOffset();

    private static Instant? ReadInstant(RequestContext context, DayStart start, FieldPath path)
    {
        if (start.HasUtcOffsetMinutes)
        {
            context.Violations.Add(path[DayStart.UtcOffsetMinutesFieldNumber].ToString(), RefusalReason.Conflict,
                "Cannot stand beside `instant`, which needs no offset.");
            return null;
        }

        return Instant.FromDateTimeOffset(start.Instant.ToDateTimeOffset());
    }

    private static Instant? ReadLocal(RequestContext context, DayStart start, DateTimeZone? zone, FieldPath path)
    {
        var timePath = path[DayStart.LocalTimeFieldNumber].ToString();
        var read = Patterns.Select(pattern => pattern.Parse(start.LocalTime)).FirstOrDefault(result => result.Success);
        if (read is null)
        {
            context.Violations.Add(timePath, RefusalReason.UnknownMark, "Not a local time such as `2026-11-26T08:00`.");
            return null;
        }

        if (read.Value.Year is < FirstYear or > LastYear)
        {
            context.Violations.Add(timePath, RefusalReason.OutOfRange, YearsText);
            return null;
        }

        if (zone is null)
        {
            return null;
        }

        var found = zone.MapLocal(read.Value);
        if (found.Count == 0)
        {
            context.Violations.Add(timePath, RefusalReason.Conflict, "The clocks of the time zone skip this time.");
            return null;
        }

        var offsetPath = path[DayStart.UtcOffsetMinutesFieldNumber].ToString();
        if (!start.HasUtcOffsetMinutes)
        {
            if (found.Count == 1)
            {
                return found.Single().ToInstant();
            }

            context.Violations.Add(offsetPath, RefusalReason.Required,
                $"The time zone has this time twice: give {Minutes(found.First())} or {Minutes(found.Last())}.");
            return null;
        }

        ZonedDateTime[] both = [found.First(), found.Last()];
        if (Array.FindIndex(both, time => time.Offset.Seconds == 60 * start.UtcOffsetMinutes) is var i and >= 0)
        {
            return both[i].ToInstant();
        }

        context.Violations.Add(offsetPath, RefusalReason.Conflict, found.Count == 1
            ? $"The time zone has another offset at this time: {Minutes(found.Single())}."
            : $"The time zone has other offsets at this time: {Minutes(found.First())} or {Minutes(found.Last())}.");
        return null;
    }

    private static string Minutes(ZonedDateTime time) => FormattableString.Invariant($"{time.Offset.Seconds / 60}");
}
