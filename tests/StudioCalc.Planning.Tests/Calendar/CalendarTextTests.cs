using System.Text;
using CsCheck;

namespace StudioCalc.Planning.Tests;

public sealed class CalendarTextTests
{
    private static readonly DateTimeOffset Stamp = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);
    private static readonly TimeSpan Winter = TimeSpan.FromHours(1), Summer = TimeSpan.FromHours(2);

    // The rules of a European zone in 2026: forward on 29 March, back on 25 October, both at 01:00 UTC.
    private static readonly CalendarZone Zone = new(
        "Europe/Berlin",
        [
            new(new(2025, 10, 26, 1, 0, 0, TimeSpan.Zero), Summer, Winter, "CET", false),
            new(new(2026, 3, 29, 1, 0, 0, TimeSpan.Zero), Winter, Summer, "CEST", true),
            new(new(2026, 10, 25, 1, 0, 0, TimeSpan.Zero), Summer, Winter, "CET", false),
        ]);

    private static readonly string[] Pieces = ["a", "b c", ",", ";", ":", "\\", "\"", "\n", "ñé", "漢字", "🍜", "x"];
    private static readonly Gen<string> Text =
        Gen.Int[0, Pieces.Length - 1].Array[0, 120].Select(parts => string.Concat(parts.Select(part => Pieces[part])) + "x");

    [Fact]
    public void Write_OfAnEvent_IsTheTextOfTheStandard()
    {
        var text = CalendarText.Write(Plan(Event(Stamp, "Fire plate 3; noodles, wide")) with { Zone = null });
        Assert.Equal(
            """
            BEGIN:VCALENDAR
            VERSION:2.0
            PRODID:-//StudioCalc//Shoot plan//EN
            CALSCALE:GREGORIAN
            X-WR-CALNAME:Kitchen
            BEGIN:VEVENT
            UID:one
            DTSTAMP:20260302T090000Z
            DTSTART:20260302T090000Z
            DTEND:20260302T091000Z
            SUMMARY:Fire plate 3\; noodles\, wide
            END:VEVENT
            END:VCALENDAR

            """.ReplaceLineEndings("\r\n"),
            text);
    }

    [Fact]
    public void Write_OfAnyTexts_IsReadByALibrary() => Gen.Select(Text, Text, Text).Sample((summary, description, location) =>
    {
        var one = Event(Stamp, summary) with
        {
            Description = description, Location = location, Categories = ["kitchen, hot", "pass"], Reminder = TimeSpan.FromMinutes(5),
        };
        var read = Read(CalendarText.Write(Plan(one)));
        var found = Assert.Single(read.Events);
        Assert.Equal((summary, description, location), (found.Summary, found.Description, found.Location));
        Assert.Equal(one.Categories, found.Categories);
        Assert.Equal(one.Start.UtcDateTime, found.DtStart!.AsUtc);
        Assert.Equal(one.End.UtcDateTime, found.DtEnd!.AsUtc);
        Assert.Equal("one", found.Uid);
        Assert.Equal(TimeSpan.FromMinutes(-5), Assert.Single(found.Alarms).Trigger!.Duration!.Value.ToTimeSpanUnspecified());
    });

    [Fact]
    public void Lines_AreAtMost75OctetsAndUnfoldToWhatWasWritten() => Text.Sample(summary =>
    {
        var text = CalendarText.Write(Plan(Event(Stamp, summary + summary)));
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        var lines = text.Split("\r\n");
        Assert.All(lines, line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 75 && !line.Contains('\n') && !line.Contains('\r')));
        Assert.DoesNotContain('\uFFFD', Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)));
    });

    // Local times mean what the library's own zone data says, in winter, in summer, and in both passes of the repeated hour.
    [Theory]
    [InlineData("2026-02-10T08:30:00Z")]
    [InlineData("2026-03-29T00:59:00Z")]
    [InlineData("2026-03-29T01:00:00Z")]
    [InlineData("2026-07-01T12:00:00Z")]
    [InlineData("2026-10-25T00:30:00Z")]
    [InlineData("2026-10-25T01:30:00Z")]
    [InlineData("2026-10-25T02:00:00Z")]
    public void Times_OfAZone_AreTheSameMoments(string moment)
    {
        var at = DateTimeOffset.Parse(moment, System.Globalization.CultureInfo.InvariantCulture);
        var found = Assert.Single(Read(CalendarText.Write(Plan(Event(at, "Shot")))).Events);
        Assert.Equal(at.UtcDateTime, found.DtStart!.AsUtc);
        Assert.Equal(at.UtcDateTime.AddMinutes(10), found.DtEnd!.AsUtc);
    }

    [Fact]
    public void RepeatedHour_IsLocalAtFirstAndUtcTheSecondTime()
    {
        var first = CalendarText.Write(Plan(Event(new(2026, 10, 25, 0, 30, 0, TimeSpan.Zero), "Shot")));
        Assert.Contains("DTSTART;TZID=Europe/Berlin:20261025T023000\r\n", first, StringComparison.Ordinal);
        var second = CalendarText.Write(Plan(Event(new(2026, 10, 25, 1, 30, 0, TimeSpan.Zero), "Shot")));
        Assert.Contains("DTSTART:20261025T013000Z\r\n", second, StringComparison.Ordinal);
    }

    [Fact]
    public void Zone_IsBroughtAlong()
    {
        var text = CalendarText.Write(Plan(Event(Stamp, "Shot")));
        Assert.Contains(
            "BEGIN:DAYLIGHT\r\nDTSTART:20260329T020000\r\nTZOFFSETFROM:+0100\r\nTZOFFSETTO:+0200\r\nTZNAME:CEST\r\nEND:DAYLIGHT\r\n",
            text,
            StringComparison.Ordinal);
        Assert.Equal("Europe/Berlin", Assert.Single(Read(text).TimeZones).TzId);
        Assert.Throws<ArgumentException>(() => CalendarText.Write(Plan() with { Zone = Zone with { Offsets = [] } }));
    }

    [Fact]
    public void Uid_OfTheSameParts_IsTheSame()
    {
        Assert.Equal(CalendarText.Uid("plan", "plate 3", "fire"), CalendarText.Uid("plan", "plate 3", "fire"));
        Assert.NotEqual(CalendarText.Uid("plan", "plate 3", "fire"), CalendarText.Uid("plan", "plate 3", "carry"));
        Assert.NotEqual(CalendarText.Uid("ab", "c"), CalendarText.Uid("a", "bc"));
        Assert.Equal('8', Guid.Parse(CalendarText.Uid("plan")).ToString()[14]);
    }

    private static CalendarPlan Plan(params CalendarEvent[] events) => new() { Name = "Kitchen", Stamp = Stamp, Zone = Zone, Events = events };

    private static CalendarEvent Event(DateTimeOffset start, string summary) =>
        new() { Uid = "one", Start = start, End = start.AddMinutes(10), Summary = summary };

    private static Ical.Net.Calendar Read(string text) => Ical.Net.Calendar.Load(text)!;
}
