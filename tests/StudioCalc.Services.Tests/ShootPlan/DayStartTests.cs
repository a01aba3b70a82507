using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>When a day starts, by the clocks of a zone that skips an hour on 29 March 2026 and has one twice on 25 October.</summary>
public sealed class DayStartTests
{
    private const string Zone = "Europe/Vienna";

    [Theory]
    [InlineData("2026-11-26T09:00", null, "2026-11-26T08:00:00Z")]
    [InlineData("2026-07-01T09:00:30", null, "2026-07-01T07:00:30Z")]
    [InlineData("2026-07-01T09:00", 120, "2026-07-01T07:00:00Z")]
    [InlineData("2026-10-25T02:30", 120, "2026-10-25T00:30:00Z")]
    [InlineData("2026-10-25T02:30", 60, "2026-10-25T01:30:00Z")]
    [InlineData("2026-03-29T01:59", null, "2026-03-29T00:59:00Z")]
    [InlineData("2026-03-29T03:00", null, "2026-03-29T01:00:00Z")]
    public void LocalTime_OfTheZone_IsOneInstant(string local, int? offset, string instant) =>
        Assert.Equal(DateTimeOffset.Parse(instant, System.Globalization.CultureInfo.InvariantCulture), Started(Local(local, offset)));

    [Fact]
    public void Instant_IsTakenAsItIs()
    {
        var instant = new DateTimeOffset(2026, 10, 25, 0, 30, 0, TimeSpan.Zero);
        Assert.Equal(instant, Started(new() { Instant = Timestamp.FromDateTimeOffset(instant), TimeZone = Zone }));
    }

    [Theory]
    [InlineData("2026-03-29T02:00", null, "start.local_time", "CONFLICT")]
    [InlineData("2026-03-29T02:59:59", 60, "start.local_time", "CONFLICT")]
    [InlineData("2026-10-25T02:30", null, "start.utc_offset_minutes", "REQUIRED")]
    [InlineData("2026-10-25T02:30", 90, "start.utc_offset_minutes", "CONFLICT")]
    [InlineData("2026-11-26T09:00", 120, "start.utc_offset_minutes", "CONFLICT")]
    [InlineData("2026-02-30T09:00", null, "start.local_time", "UNKNOWN_MARK")]
    [InlineData("26.11.2026 09:00", null, "start.local_time", "UNKNOWN_MARK")]
    [InlineData("1999-11-26T09:00", null, "start.local_time", "OUT_OF_RANGE")]
    [InlineData("2101-11-26T09:00", null, "start.local_time", "OUT_OF_RANGE")]
    public void LocalTime_ThatIsNone_OrTwo_IsRefused(string local, int? offset, string field, string reason) =>
        Assert.Equal([(field, reason)], Refused(Local(local, offset)));

    [Fact]
    public void Offset_BesideAnInstant_IsRefused() => Assert.Equal(
        [("start.utc_offset_minutes", "CONFLICT")],
        Refused(new() { Instant = Timestamp.FromDateTimeOffset(DateTimeOffset.UnixEpoch.AddYears(56)), TimeZone = Zone, UtcOffsetMinutes = 60 }));

    [Fact]
    public void Zone_ThatIsUnknown_IsRefused() => Assert.Equal(
        [("start.time_zone", "UNKNOWN_MARK")], Refused(new() { LocalTime = "2026-11-26T09:00", TimeZone = "Noodle/Bowl" }));

    private static DayStart Local(string local, int? offset)
    {
        var start = new DayStart { LocalTime = local, TimeZone = Zone };
        if (offset is { } minutes)
        {
            start.UtcOffsetMinutes = minutes;
        }

        return start;
    }

    private static DateTimeOffset Started(DayStart start)
    {
        var request = SmallDay.Plan();
        request.Start = start;
        return Calls.ShootPlan.PlanShoot(request).Start.ToDateTimeOffset();
    }

    private static IReadOnlyList<(string Field, string Reason)> Refused(DayStart start)
    {
        var request = SmallDay.Plan();
        request.Start = start;
        return Calls.Refused(() => Calls.ShootPlan.PlanShoot(request));
    }
}
