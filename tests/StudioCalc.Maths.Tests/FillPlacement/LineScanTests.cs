using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class LineScanTests
{
    [Fact]
    public void Roots_OfRandomLinesRangesAndTargets_LandOnTheTarget() => Gen.Select(Lines.All, Gen.Double[1, 4.3], Gen.Double[0.01, 2], Gen.Double[0, 1]).Sample(
        (line, start, decades, share) =>
        {
            var (near, far) = (Math.Pow(10, start), Math.Pow(10, start + decades));
            var wanted = line.LightStops(near * Math.Pow(far / near, share)) + share - 0.5;
            var roots = new LineScan(line).Roots(wanted, near, far);
            Assert.All(roots, root =>
            {
                Assert.InRange(root, near, far);
                Assert.InRange(Math.Log2(line.FaceAt(root).Light(line.ReceiverAt(root))), wanted - 1e-6, wanted + 1e-6);
            });
        },
        iter: 250);

    // Every change of sign of a dense scan is a root, or a jump.
    [Fact]
    public void Roots_AgainstADenseScan_MissNone() => Gen.Select(Lines.All, Gen.Double[1, 4.3], Gen.Double[0.01, 2], Gen.Double[0, 1]).Sample(
        (line, start, decades, share) =>
        {
            var (near, far) = (Math.Pow(10, start), Math.Pow(10, start + decades));
            var wanted = line.LightStops(near * Math.Pow(far / near, share));
            if (double.IsInfinity(wanted))
            {
                return;
            }

            var roots = new LineScan(line).Roots(wanted + 1e-7, near, far);
            const int samples = 4000;
            var (before, beforeStops) = (near, line.LightStops(near));
            for (var i = 1; i <= samples; i++)
            {
                var at = near * Math.Pow(far / near, (double)i / samples);
                var stops = line.LightStops(at);
                if (beforeStops >= wanted + 1e-7 != stops >= wanted + 1e-7 && !double.IsInfinity(stops) && !double.IsInfinity(beforeStops)
                    && Math.Abs(stops - beforeStops) < 0.2)
                {
                    Assert.True(roots.Any(root => root >= before * (1 - 1e-9) && root <= at * (1 + 1e-9)), $"Missed between {before} and {at}.");
                }

                (before, beforeStops) = (at, stops);
            }
        },
        iter: 80);

    [Fact]
    public void Band_OfRandomDistances_IsLeftAtItsEndsAndNotBefore() => Gen.Select(Lines.All, Gen.Double[1.5, 4], Gen.Double[0.01, 1]).Sample(
        (line, place, band) =>
        {
            var distance = Math.Pow(10, place);
            var here = line.LightStops(distance);
            if (double.IsInfinity(here))
            {
                return;
            }

            var (near, far) = new LineScan(line).Band(distance, band);
            Assert.InRange(distance, near, far);
            for (var share = 0.02; share < 1; share += 0.02)
            {
                Assert.InRange(line.LightStops(distance + (far - distance) * share) - here, -band - 1e-6, band + 1e-6);
                Assert.InRange(line.LightStops(distance + (Math.Max(near, LineScan.NearestMm) - distance) * share) - here, -band - 1e-6, band + 1e-6);
            }

            Assert.True(near == 0 || Math.Abs(Math.Abs(line.LightStops(near * (1 - 1e-7)) - here) - band) < 1e-3
                || Math.Abs(line.LightStops(near * (1 - 1e-7)) - here) > band);
        },
        iter: 120);

    [Fact]
    public void FlatReceiverUnderAnUprightFace_HasMostAtAFiniteDistance_AndTwoDistancesBelowIt()
    {
        // A window 1.2 m wide and 1.5 m high whose sill is 0.4 m over the plate: most at 0.441 m.
        var axes = new FaceAxes(new(0, 1000, 1150), new(0, 0, 1150));
        var line = new LightLine(
            LightFace.Of(axes, FaceOutline.Rectangle(1200, 1500)), new(0, 0, 1150), new(default, Vector.Up, Collector.Flat));
        var scan = new LineScan(line);
        var most = scan.MostStops(10000);
        Assert.Equal(441, scan.Closest(most, 100, 3000)!.Value, 0.5);
        var roots = scan.Roots(most - 0.1, 10, 10000);
        Assert.Equal(2, roots.Count);
        Assert.InRange(roots[0], 10, 441);
        Assert.InRange(roots[1], 441, 10000);
        Assert.Single(scan.Roots(most - 0.1, 441, 10000));
        Assert.Empty(scan.Roots(most + 0.01, 10, 10000));
        Assert.NotEmpty(scan.Roots(most, 10, 10000));
    }

    [Fact]
    public void Roots_AtTheEndsOfTheRange_Count()
    {
        var line = Lines.Octabox();
        var scan = new LineScan(line);
        Assert.Equal(1000, Assert.Single(scan.Roots(line.LightStops(1000), 1000, 1800)), 1e-6);
        Assert.Equal(1000, Assert.Single(scan.Roots(line.LightStops(1000), 600, 1000)), 1e-6);
    }

    [Fact]
    public void ReceiverOnTheWay_BehindTheFaceFirst_IsNoRootAtTheJump()
    {
        var axes = new FaceAxes(new(0, -1000, 0), default);
        var line = new LightLine(
            LightFace.Of(axes, FaceOutline.Disc(200)), default, new(new(0, -500, 0), new(0, -1, 0), Collector.Flat));
        var scan = new LineScan(line);
        Assert.Equal(0, line.Light(499));
        var roots = scan.Roots(Math.Log2(Math.PI * 0.5), 100, 2000);
        Assert.Equal(600, Assert.Single(roots), 0.1);
        Assert.Empty(scan.Roots(Math.Log2(Math.PI * 1.01), 100, 2000));
    }

    [Fact]
    public void DarkLine_IsDark()
    {
        var line = Lines.Octabox(new Vector(0, 1, -1).Unit(), elevationDeg: 45);
        var scan = new LineScan(line);
        Assert.Null(scan.Closest(0, 100, 1000));
        Assert.Empty(scan.Roots(0, 100, 1000));
    }
}
