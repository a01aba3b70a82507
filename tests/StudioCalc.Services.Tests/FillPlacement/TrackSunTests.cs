using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class TrackSunTests
{
    [Fact]
    public void AnAutumnDay_HasItsSpellsInOrderAndInTheDay()
    {
        var answer = Calls.FillPlacement.TrackSun(Examples.Sun());
        Assert.Equal(2, answer.Spells.Count);
        Assert.Equal(answer.Total.Seconds, answer.Spells.Sum(spell => spell.End.Time.Seconds - spell.Start.Time.Seconds));
        Assert.InRange(answer.Total.Seconds, 3600, 5 * 3600);
        Assert.StartsWith("2026-10-03T12:5", answer.Noon.LocalTime, StringComparison.Ordinal); // 13° E on summer time, 11 minutes before the mean.
        Assert.EndsWith("+02:00", answer.Noon.LocalTime, StringComparison.Ordinal);
        Assert.Equal(180, answer.Noon.BearingDeg, 0.5);
        Assert.Equal((0, 0), (Math.Round(answer.Sunrise.ElevationDeg, 2), Math.Round(answer.Sunset.ElevationDeg, 2)));

        // The obstruction parts them.
        Assert.Equal(205, answer.Spells[0].End.BearingDeg, 0.01);
        Assert.Equal(216, answer.Spells[1].Start.BearingDeg, 0.01);
    }

    [Fact]
    public void Plate_UnsetIs280Mm_AndALargerOneIsLitLonger()
    {
        var request = Examples.Sun();
        request.ClearPlateDiameterMm();
        var usual = Calls.FillPlacement.TrackSun(request);
        Assert.Equal(Calls.FillPlacement.TrackSun(Examples.Sun()).Total, usual.Total);
        request.PlateDiameterMm = 500;
        Assert.True(Calls.FillPlacement.TrackSun(request).Total.Seconds > usual.Total.Seconds);
    }

    [Theory]
    [InlineData("2026-03-29", 23)]
    [InlineData("2026-10-25", 25)]
    [InlineData("2026-06-21", 24)]
    public void PolarDay_LastsAsLongAsTheClocksSay(string date, int hours)
    {
        // On Svalbard's clocks, at the pole, with a window all round the plate's front.
        var request = new TrackSunRequest
        {
            Place = new() { LatitudeDeg = 90, LongitudeDeg = 0 },
            Date = date,
            TimeZone = "Arctic/Longyearbyen",
            BearingDeg = 180,
            Window = new() { WidthMm = 20000, HeightMm = 20000, SillHeightMm = 0 },
            TableHeightMm = 750,
            DistanceMm = 10,
            PlateDiameterMm = 5000,
        };
        var answer = Calls.FillPlacement.TrackSun(request);
        Assert.Null(answer.Sunrise);
        Assert.Null(answer.Sunset);
        var isUp = date != "2026-10-25";
        Assert.Equal(isUp, answer.Spells.Count > 0);
        if (isUp)
        {
            // It shines in while its bearing lies before the window: half of the day.
            Assert.InRange(answer.Total.Seconds, (hours * 1800) - 1900, (hours * 1800) + 1900);
        }
    }

    [Fact]
    public void OffsetOfSeconds_IsToldInFull()
    {
        var request = Examples.Sun();
        (request.Place, request.TimeZone, request.Date) = (new() { LatitudeDeg = 6.3, LongitudeDeg = -10.8 }, "Africa/Monrovia", "1960-05-01");
        Assert.EndsWith("-00:44:30", Calls.FillPlacement.TrackSun(request).Noon.LocalTime, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-02-29", "Europe/Vienna", "date", "UNKNOWN_MARK")]
    [InlineData("21.06.2026", "Europe/Vienna", "date", "UNKNOWN_MARK")]
    [InlineData("1949-12-31", "Europe/Vienna", "date", "OUT_OF_RANGE")]
    [InlineData("2101-01-01", "Europe/Vienna", "date", "OUT_OF_RANGE")]
    [InlineData("2026-06-21", "Europe/Nowhere", "time_zone", "UNKNOWN_MARK")]
    [InlineData("2026-06-21", "europe/vienna", "time_zone", "UNKNOWN_MARK")]
    [InlineData("2011-12-30", "Pacific/Apia", "date", "CONFLICT")]
    public void DateOrZoneThatIsNone_IsRefusedByItsField(string date, string zone, string field, string reason)
    {
        var request = Examples.Sun();
        (request.Date, request.TimeZone) = (date, zone);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.FillPlacement.TrackSun(request)));
    }

    [Fact]
    public void DateAndZone_BothBad_AreBothNamed()
    {
        var request = Examples.Sun();
        (request.Date, request.TimeZone) = ("yesterday", "here");
        Assert.Equal(
            [("time_zone", "UNKNOWN_MARK"), ("date", "UNKNOWN_MARK")], Calls.Refused(() => Calls.FillPlacement.TrackSun(request)));
    }
}
