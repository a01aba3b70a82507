using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace StudioCalc.Planning;

/// <summary>Calendars as text that calendar programs read.</summary>
/// <remarks>iCalendar, RFC 5545 (open standard): lines end in CR LF and are folded at 75 octets between characters, texts are escaped, times
/// are UTC or local with a zone that the text brings along. A local time in an hour that is repeated means its first pass (section 3.3.5);
/// the second pass is written in UTC.</remarks>
public static class CalendarText
{
    private const string Utc = "yyyyMMdd'T'HHmmss'Z'";
    private const string Local = "yyyyMMdd'T'HHmmss";

    /// <summary>Writes a calendar.</summary>
    /// <param name="plan">The calendar.</param>
    public static string Write(CalendarPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Zone is { Offsets.Count: 0 })
        {
            throw new ArgumentException("The zone needs an offset.", nameof(plan));
        }

        var lines = new FoldedLines();
        lines.Add("BEGIN:VCALENDAR");
        lines.Add("VERSION:2.0");
        lines.Add("PRODID:-//StudioCalc//Shoot plan//EN");
        lines.Add("CALSCALE:GREGORIAN");
        lines.Add("X-WR-CALNAME:" + Escape(plan.Name));
        AddZone(lines, plan.Zone);
        foreach (var one in plan.Events)
        {
            AddEvent(lines, plan, one);
        }

        lines.Add("END:VCALENDAR");
        return lines.ToString();
    }

    /// <summary>An identity from what an event is: the same parts always give the same one.</summary>
    /// <param name="parts">What tells the event apart: plan, block, plate, what is done.</param>
    public static string Uid(params IReadOnlyList<string> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);

        // Each part with its length, so that two lists of parts never run together to the same text. UUID version 8, RFC 9562.
        var text = string.Concat(parts.Select(part => $"{part.Length.ToString(CultureInfo.InvariantCulture)}:{part}"));
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true).ToString();
    }

    private static void AddZone(FoldedLines lines, CalendarZone? zone)
    {
        if (zone is null)
        {
            return;
        }

        lines.Add("BEGIN:VTIMEZONE");
        lines.Add("TZID:" + zone.Id);
        foreach (var change in zone.Offsets)
        {
            var kind = change.IsDaylight ? "DAYLIGHT" : "STANDARD";
            lines.Add("BEGIN:" + kind);
            lines.Add("DTSTART:" + change.At.ToOffset(change.OffsetBefore).ToString(Local, CultureInfo.InvariantCulture));
            lines.Add("TZOFFSETFROM:" + Offset(change.OffsetBefore));
            lines.Add("TZOFFSETTO:" + Offset(change.Offset));
            if (change.Name.Length > 0)
            {
                lines.Add("TZNAME:" + Escape(change.Name));
            }

            lines.Add("END:" + kind);
        }

        lines.Add("END:VTIMEZONE");
    }

    private static void AddEvent(FoldedLines lines, CalendarPlan plan, CalendarEvent one)
    {
        lines.Add("BEGIN:VEVENT");
        lines.Add("UID:" + Escape(one.Uid));
        lines.Add("DTSTAMP:" + plan.Stamp.UtcDateTime.ToString(Utc, CultureInfo.InvariantCulture));
        lines.Add("DTSTART" + Time(one.Start, plan.Zone));
        lines.Add("DTEND" + Time(one.End, plan.Zone));
        lines.Add("SUMMARY:" + Escape(one.Summary));
        AddText(lines, "DESCRIPTION", one.Description);
        AddText(lines, "LOCATION", one.Location);
        if (one.Categories.Count > 0)
        {
            lines.Add("CATEGORIES:" + string.Join(',', one.Categories.Select(Escape)));
        }

        if (one.Reminder is { } before)
        {
            lines.Add("BEGIN:VALARM");
            lines.Add("ACTION:DISPLAY");
            lines.Add("DESCRIPTION:" + Escape(one.Summary));
            lines.Add("TRIGGER:-PT" + ((long)before.TotalSeconds).ToString(CultureInfo.InvariantCulture) + "S");
            lines.Add("END:VALARM");
        }

        lines.Add("END:VEVENT");
    }

    private static void AddText(FoldedLines lines, string name, string text)
    {
        if (text.Length > 0)
        {
            lines.Add(name + ":" + Escape(text));
        }
    }

    private static string Time(DateTimeOffset moment, CalendarZone? zone) =>
        zone is null || zone.IsSecondPass(moment)
            ? ":" + moment.UtcDateTime.ToString(Utc, CultureInfo.InvariantCulture)
            : ";TZID=" + zone.Id + ":" + moment.ToOffset(zone.OffsetAt(moment)).ToString(Local, CultureInfo.InvariantCulture);

    private static string Offset(TimeSpan offset) =>
        (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString(offset.Seconds == 0 ? "hhmm" : "hhmmss", CultureInfo.InvariantCulture);

    // Section 3.3.11; control characters have no place in a text.
    private static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in text.ReplaceLineEndings("\n"))
        {
            _ = c switch
            {
                '\\' or ';' or ',' => escaped.Append('\\').Append(c),
                '\n' => escaped.Append("\\n"),
                '\t' => escaped.Append(' '),
                _ when char.IsControl(c) => escaped,
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }
}
