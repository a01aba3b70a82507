using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class SunTests
{
    private static readonly SunObstruction[] None = [];

    // I. Reda, A. Andreas, "Solar Position Algorithm for Solar Radiation Applications", NREL/TP-560-34302, worked example: 17 October
    // 2003, 12:30:30 at UTC-7, with refraction at 820 hPa and 11 °C (here 1010 hPa and 10 °C). Values from memory.
    [Fact]
    public void Position_OfThePublishedExample_IsWithinAHundredthOfADegree()
    {
        var sun = SunPosition.At(Unix(2003, 10, 17, 19, 30, 30), 39.742476, -105.1786);
        Assert.Equal(90 - 50.11162, sun.ElevationDeg, 0.01);
        Assert.Equal(194.34024, sun.BearingDeg, 0.01);
    }

    // J. Meeus, Astronomical Algorithms, example 25.a: 13 October 1992, 0:00 dynamical time: declination -7.78507 degrees, right
    // ascension 198.38083 degrees. Value from memory. Seen from the north pole the elevation is the declination.
    [Fact]
    public void Elevation_AtThePole_IsThePublishedDeclination()
    {
        var sun = SunPosition.At(Unix(1992, 10, 13, 0, 0, 0) - 70, 90, 0);
        Assert.Equal(-7.78507, sun.TrueElevationDeg, 0.003); // The sun's parallax is 0.0024 degree.
    }

    // Common refraction lifts the horizon by 34', and a star at 45 degrees by 1'.
    [Theory]
    [InlineData(0, 0.48, 0.005)]
    [InlineData(45, 0.0167, 0.001)]
    public void Refraction_IsTheCommonOne(double elevation, double lift, double tolerance)
    {
        var sun = Enumerable.Range(0, 86400 / 4).Select(i => SunPosition.At(Unix(2026, 6, 21, 0, 0, 0) + 4 * i, 30, 0))
            .MinBy(at => Math.Abs(at.TrueElevationDeg - elevation));
        Assert.Equal(lift, sun.ElevationDeg - sun.TrueElevationDeg, tolerance);
    }

    [Fact]
    public void Sun_NeverLeavesItsBounds() => Gen.Select(Gen.Long[-631152000, 4133980800], Gen.Double[-90, 90], Gen.Double[-180, 180]).Sample(
        (second, latitude, longitude) =>
        {
            var sun = SunPosition.At(second, latitude, longitude);
            Assert.InRange(sun.BearingDeg, 0, 360);
            Assert.InRange(sun.TrueElevationDeg, -90, 90);
            Assert.InRange(sun.ElevationDeg - sun.TrueElevationDeg, -0.001, 0.7);
            Assert.True(sun.TrueElevationDeg <= 90 - Math.Abs(latitude) + 23.5);
        });

    // The beam to a point is open exactly when the point's ray towards the sun passes the glass.
    [Fact]
    public void Beam_ReachesThePlate_WhenARayFromOneOfItsPointsPassesTheGlass() => Gen.Select(
        Gen.Select(Gen.Double[100, 3000], Gen.Double[100, 3000], Gen.Double[-400, 1500]),
        Gen.Select(Gen.Double[50, 4000], Gen.Double[-2500, 2500], Gen.Double[20, 900]),
        Gen.Select(Gen.Double[0, 360], Gen.Double[0, 360], Gen.Double[0.5, 89])).Sample(
        (glass, plate, angles) =>
        {
            var opening = new WindowOpening(glass.Item1, glass.Item2, glass.Item3);
            var sun = new SunPosition(angles.Item2, angles.Item3, angles.Item3);
            SunBeam Beam(double diameter) => new(opening, angles.Item1, plate.Item1, plate.Item2, diameter, 0, None);
            var rays = Math.SinCos((angles.Item2 - angles.Item1) * Math.PI / 180);
            var tan = Math.Tan(angles.Item3 * Math.PI / 180);
            var any = false;
            for (var ring = 0; ring <= 40; ring++)
            {
                for (var step = 0; step < 90; step++)
                {
                    var (sin, cos) = Math.SinCos(step * Math.PI / 45);
                    var (x, y) = (ring / 40.0 * plate.Item3 / 2 * sin, ring / 40.0 * plate.Item3 / 2 * cos);
                    var along = (plate.Item1 - y) / rays.Cos;
                    var (atX, atZ) = (x + along * rays.Sin + plate.Item2, along * tan);
                    any |= rays.Cos > 0 && y < plate.Item1 && Math.Abs(atX) <= opening.WidthMm / 2
                        && atZ >= opening.SillOverTableMm && atZ <= opening.SillOverTableMm + opening.HeightMm;
                }
            }

            // Between the sampled points of the plate there is some room.
            Assert.True(!any || Beam(plate.Item3).Reaches(sun));
            Assert.True(any || !Beam(plate.Item3 * 0.93).Reaches(sun) || plate.Item1 < plate.Item3);
        },
        iter: 3000);

    [Theory]
    [InlineData(350, 10, 0, true)]
    [InlineData(350, 10, 355, true)]
    [InlineData(350, 10, 349, false)]
    [InlineData(350, 10, 11, false)]
    [InlineData(10, 350, 180, true)]
    [InlineData(10, 350, 0, false)]
    [InlineData(0, 360, 359.9, true)]
    public void Obstruction_HidesBetweenItsBearings_OverNorthToo(double from, double to, double bearing, bool hides)
    {
        var obstruction = new SunObstruction(from, to, 30);
        Assert.Equal(hides, obstruction.Hides(new(bearing, 30, 30)));
        Assert.False(obstruction.Hides(new(bearing, 30.01, 30.01)));
    }

    [Fact]
    public void Spells_AreOpenInsideAndClosedJustOutside() => Gen.Select(
        Gen.Double[-70, 70], Gen.Double[-180, 180], Gen.Int[0, 20000], Gen.Double[0, 360], Gen.Double[300, 3000], Gen.Double[-1000, 1000]).Sample(
        (latitude, longitude, day, bearing, distance, right) =>
        {
            var start = day * 86400L;
            var beam = new SunBeam(
                new(1200, 1500, 100), bearing, distance, right, 280, 5, [new(bearing - 20 < 0 ? bearing + 340 : bearing - 20, bearing, 40)]);
            var sun = SunDay.Follow(start, start + 86400, latitude, longitude, beam);
            bool Reaches(long second) => beam.Reaches(SunPosition.At(second, latitude, longitude));
            long? last = null;
            foreach (var (from, to) in sun.Spells)
            {
                Assert.True(Reaches(from) && Reaches(to - 1) && from < to && !(from <= last));
                Assert.True(from == start || !Reaches(from - 1));
                Assert.True(to == start + 86400 || !Reaches(to));
                last = to;
            }

            for (var second = start; second < start + 86400; second += 600)
            {
                Assert.Equal(Reaches(second), sun.Spells.Any(spell => spell.StartS <= second && second < spell.EndS));
            }
        },
        iter: 200);

    [Theory]
    [InlineData(78.2, 6, 21, true)]
    [InlineData(78.2, 12, 21, false)]
    public void PolarDayAndNight_HaveNoRiseAndNoSet(double latitude, int month, int day, bool isDay)
    {
        var start = Unix(2026, month, day, 0, 0, 0);
        var beam = new SunBeam(new(20000, 20000, -10), 180, 10, 0, 280, 0, None);
        var sun = SunDay.Follow(start, start + 86400, latitude, 15, beam);
        Assert.Null(sun.SunriseS);
        Assert.Null(sun.SunsetS);
        Assert.Equal(isDay, SunPosition.At(sun.NoonS, latitude, 15).ElevationDeg > 0);
        Assert.Equal(isDay ? 1 : 0, sun.Spells.Count);
        Assert.Equal(180, SunPosition.At(sun.NoonS, latitude, 15).BearingDeg, 0.2);
    }

    [Fact]
    public void MidnightSun_OnAWindowThatFacesNorth_ShinesFromTheDaysFirstSecondAndToItsLast()
    {
        var start = Unix(2026, 6, 21, 23, 0, 0);
        var beam = new SunBeam(new(20000, 20000, -10), 0, 10, 0, 280, 0, None);
        var sun = SunDay.Follow(start, start + 86400, 78.2, 15, beam);
        Assert.Equal(start, sun.Spells[0].StartS);
        Assert.Equal(start + 86400, sun.Spells[^1].EndS);
    }

    private static long Unix(int year, int month, int day, int hour, int minute, int second) =>
        new DateTimeOffset(year, month, day, hour, minute, second, TimeSpan.Zero).ToUnixTimeSeconds();
}
