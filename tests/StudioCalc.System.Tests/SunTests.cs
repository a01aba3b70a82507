using System.Globalization;
using StudioCalc.Client.Embedded;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.System.Tests;

/// <summary>The sun's place, against the library ephem over random moments and places.</summary>
public sealed class SunTests
{
    private const int Seed = 47;

    [PeerFact(Peer.Ephem)]
    public async Task Position_AgainstEphem_IsWithinTwoHundredthsOfADegree()
    {
        var random = new Random(Seed);
        var moments = Enumerable.Range(0, 3000).Select(_ => (
            Second: random.NextInt64(-631152000, 4133980800),
            Latitude: -89.9 + (179.8 * random.NextDouble()),
            Longitude: -180 + (360 * random.NextDouble()))).ToList();
        var theirs = await Ephem(moments);
        var worst = 0.0;
        foreach (var (moment, (bearing, elevation, _)) in moments.Zip(theirs))
        {
            var ours = SunPosition.At(moment.Second, moment.Latitude, moment.Longitude);
            worst = Math.Max(worst, AngleDeg(ours.BearingDeg, ours.TrueElevationDeg, bearing, elevation));
        }

        Assert.InRange(worst, 0.001, 0.02);
    }

    [PeerFact(Peer.Ephem)]
    public async Task SunriseAndSunset_AgainstEphem_HaveTheSunOnTheHorizon()
    {
        using var client = EmbeddedStudioCalc.Create();
        var random = new Random(Seed);
        var moments = new List<(long Second, double Latitude, double Longitude)>();
        for (var i = 0; i < 60; i++)
        {
            var (latitude, longitude) = (-60 + (120 * random.NextDouble()), -180 + (360 * random.NextDouble()));
            var answer = await client.FillPlacement.TrackSunAsync(new()
            {
                Place = new() { LatitudeDeg = latitude, LongitudeDeg = longitude },
                Date = new DateOnly(1950, 1, 1).AddDays(random.Next(55000)).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                TimeZone = "UTC",
                BearingDeg = 180,
                Window = new() { WidthMm = 1200, HeightMm = 1500, SillHeightMm = 850 },
                TableHeightMm = 750,
                DistanceMm = 1000,
            });
            moments.Add((answer.Sunrise.Time.Seconds, latitude, longitude));
            moments.Add((answer.Sunset.Time.Seconds, latitude, longitude));
        }

        // Near the horizon their refraction is another formula; both mean 34 minutes of arc, give or take two.
        Assert.All(await Ephem(moments), sun => Assert.InRange(sun.Refracted, -0.1, 0.1));
    }

    private static async Task<IReadOnlyList<(double Bearing, double Elevation, double Refracted)>> Ephem(
        IEnumerable<(long Second, double Latitude, double Longitude)> moments)
    {
        var lines = moments.Select(moment => FormattableString.Invariant($"{moment.Second} {moment.Latitude:R} {moment.Longitude:R}"));
        var output = await Tool.RunAsync(new global::System.Diagnostics.ProcessStartInfo(Machine.Python, [Tool.Script("python", "sun.py")]), string.Join('\n', lines) + "\n");
        return
        [
            .. output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray())
                .Select(numbers => (numbers[0], numbers[1], numbers[2])),
        ];
    }

    // Between two directions.
    private static double AngleDeg(double bearingA, double elevationA, double bearingB, double elevationB) =>
        FaceView.AngleDeg(Vector.Towards(bearingA, elevationA), Vector.Towards(bearingB, elevationB));
}
