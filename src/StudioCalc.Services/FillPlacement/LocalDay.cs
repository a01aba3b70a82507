using NodaTime;
using NodaTime.Text;
using NodaTime.TimeZones;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A day by the clocks of a time zone. The zones come with the build, so that every replica knows the same.</summary>
internal sealed record LocalDay(DateTimeZone Zone, long StartS, long EndS)
{
    public const int FirstYear = 1950;
    public const int LastYear = 2100;

    private static readonly OffsetDateTimePattern Minutes = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'sso<Z+HH:mm>");
    private static readonly OffsetDateTimePattern Seconds = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'sso<+HH:mm:ss>");

    /// <summary>The day, or null after noting what is bad.</summary>
    public static LocalDay? Read(RequestContext context, string date, FieldPath datePath, string zoneName, FieldPath zonePath)
    {
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneName);
        if (zone is null)
        {
            context.Violations.Add(zonePath.ToString(), RefusalReason.UnknownMark,
                "Not a zone of the IANA time zone database, such as `Europe/Vienna`; upper and lower case count.");
        }

        if (!LocalDatePattern.Iso.Parse(date).TryGetValue(default, out var day))
        {
            context.Violations.Add(datePath.ToString(), RefusalReason.UnknownMark, "Not a date such as `2026-06-21`.");
            return null;
        }

        if (day.Year is < FirstYear or > LastYear)
        {
            context.Violations.Add(datePath.ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"Must lie in the years from {FirstYear} to {LastYear}."));
            return null;
        }

        if (zone is null)
        {
            return null;
        }

        try
        {
            return new(zone, Seconds1970(zone.AtStartOfDay(day)), Seconds1970(zone.AtStartOfDay(day.PlusDays(1))));
        }
        catch (SkippedTimeException)
        {
            context.Violations.Add(datePath.ToString(), RefusalReason.Conflict, "The clocks of the time zone skipped this day, or the next.");
            return null;
        }
    }

    /// <summary>A second of the day as local time with its offset.</summary>
    public string Text(long second)
    {
        var local = Instant.FromUnixTimeSeconds(second).InZone(Zone).ToOffsetDateTime();
        return (local.Offset.Seconds % 60 == 0 ? Minutes : Seconds).Format(local);
    }

    private static long Seconds1970(ZonedDateTime time) => time.ToInstant().ToUnixTimeSeconds();
}
