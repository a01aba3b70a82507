using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class DistanceSolverTests
{
    [Fact]
    public void Solve_OfRandomLines_ReachesOrTellsWhatHelps() => Gen.Select(Lines.All, Gen.Double[1, 4], Gen.Double[0.01, 1], Gen.Double[-12, 12]).Sample(
        (line, start, decades, change) =>
        {
            var scan = new LineScan(line);
            var now = line.Light(line.NowMm);
            var wanted = (now > 0 ? now : 1e-6) * Math.Pow(2, change);
            var (near, far) = (Math.Pow(10, start), Math.Pow(10, start + decades));
            var outcome = DistanceSolver.Solve(scan, wanted, near, far, 0.1);
            if (outcome.Obstacle == DistanceObstacle.None)
            {
                Assert.NotEmpty(outcome.Places);
                Assert.Equal(outcome.Places.OrderBy(place => Math.Abs(place.MovedMm)).Select(place => place.DistanceMm), outcome.Places.Select(place => place.DistanceMm));
                return;
            }

            Assert.Empty(outcome.Places);
            if (outcome.Nearest is { } nearest)
            {
                Assert.InRange(nearest.DistanceMm, near, far);
                for (var share = 0.0; share <= 1; share += 0.01)
                {
                    var other = Math.Abs(line.LightStops(near + (far - near) * share) - Math.Log2(wanted));
                    Assert.True(other > Math.Abs(nearest.OverWantedStops) - 1e-6, $"{other} is nearer than {nearest.OverWantedStops}.");
                }

                // With the power so changed the same distance is an answer.
                Assert.Equal(0, outcome.Powered!.OverWantedStops, 1e-12);
                var again = DistanceSolver.Solve(scan, wanted * Math.Pow(2, nearest.OverWantedStops), near, far, 0.1);
                Assert.True(
                    again.Places.Any(place => Math.Abs(place.DistanceMm - nearest.DistanceMm) < 1e-3 * nearest.DistanceMm)
                    || Math.Abs(again.Nearest!.OverWantedStops) < 1e-6);
            }

            if (outcome.Beyond is { } beyond)
            {
                Assert.Equal(0, beyond.OverWantedStops, 1e-6);
                Assert.True(beyond.DistanceMm < near || beyond.DistanceMm > far);
                Assert.Equal(beyond.DistanceMm < near ? DistanceObstacle.NearestDistance : DistanceObstacle.FarthestDistance, outcome.Obstacle);
                var again = DistanceSolver.Solve(scan, wanted, Math.Min(near, beyond.DistanceMm), Math.Max(far, beyond.DistanceMm), 0.1);
                Assert.Contains(again.Places, place => Math.Abs(place.DistanceMm - beyond.DistanceMm) < 1e-6 * beyond.DistanceMm);
            }
        },
        iter: 120);

    [Fact]
    public void MostGain_OfAnOctaboxOnItsAxis_IsWhatIsLeftToAFullView()
    {
        var none = default(NoTrail);
        var line = Lines.Octabox();
        var gain = WantedLight.MostGainStops(new LineScan(line), ref none);
        Assert.Equal(Math.Log2(Math.PI / line.Light(1000)), gain!.Value, 1e-6);
        Assert.Equal(2.507, gain.Value, 1e-3);
    }

    [Fact]
    public void MostGain_OfAPoint_IsNoneOnItsLine_AndFiniteBeside()
    {
        var none = default(NoTrail);
        var axes = new FaceAxes(new(0, -1000, 0), default);
        Assert.Null(WantedLight.MostGainStops(new LineScan(new(LightFace.Point(axes), default, new(default, null, Collector.Flat))), ref none));
        var beside = new LineScan(new(LightFace.Point(axes), default, new(new(100, 0, 0), new(0, -1, 0), Collector.Flat)));

        // cos / d² with the receiver 100 mm aside is most at 100 / sqrt(2) mm.
        var most = WantedLight.MostGainStops(beside, ref none)!.Value;
        Assert.Equal(Math.Log2(beside.Line.Light(100 / Math.Sqrt(2)) / beside.Line.Light(1000)), most, 1e-9);
    }

    [Fact]
    public void MostGain_OfAFlatReceiverUnderAnUprightFace_IsThatOfThePeak()
    {
        var none = default(NoTrail);
        var axes = new FaceAxes(new(0, 1000, 1150), new(0, 0, 1150));
        var scan = new LineScan(new(LightFace.Of(axes, FaceOutline.Rectangle(1200, 1500)), new(0, 0, 1150), new(default, Vector.Up, Collector.Flat)));
        var gain = WantedLight.MostGainStops(scan, ref none)!.Value;
        Assert.Equal(Math.Log2(scan.Line.Light(441) / scan.Line.Light(1000)), gain, 1e-3);
        var outcome = DistanceSolver.Solve(scan, scan.Line.Light(1000) * Math.Pow(2, gain + 0.5), 200, 2000, 0.1);
        Assert.Equal(DistanceObstacle.MostLight, outcome.Obstacle);
        Assert.Equal(-0.5, outcome.Nearest!.OverWantedStops, 1e-9);
        Assert.Null(outcome.Beyond);
    }

    [Theory]
    [InlineData(3, DistanceObstacle.MostLight)]
    [InlineData(1.5, DistanceObstacle.NearestDistance)]
    [InlineData(-3, DistanceObstacle.FarthestDistance)]
    [InlineData(-20, DistanceObstacle.FarthestDistance)]
    public void Octabox_BeyondItsRange_NamesWhatStandsInTheWay(double changeStops, DistanceObstacle obstacle)
    {
        var line = Lines.Octabox();
        var outcome = DistanceSolver.Solve(new LineScan(line), line.Light(1000) * Math.Pow(2, changeStops), 600, 1800, 0.1);
        Assert.Equal(obstacle, outcome.Obstacle);
        Assert.Equal(changeStops > 0 ? 600 : 1800, outcome.Nearest!.DistanceMm);
        Assert.Equal(Math.Abs(changeStops) is 1.5 or 3 && obstacle != DistanceObstacle.MostLight, outcome.Beyond is not null);
    }
}
