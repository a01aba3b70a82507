using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Tilt against rays traced through a tilted thin lens.</summary>
public sealed class TiltTests
{
    private static readonly Gen<(double F, TiltPlane Plane)> Tables = Gen.Select(
        Gen.Double[20, 150], Gen.Double[15, 89], Gen.Double[250, 3000], (f, elevation, axis) => (f, Table(elevation, axis)));

    [Fact]
    public void Plane_OfTheTable_IsSharpOnTheSensorByRays() => Tables.Sample(one =>
    {
        if (Solve(one.F, one.Plane, null) is { Obstacle: null, Setting: { } setting })
        {
            foreach (var share in new[] { 0.8, 1, 1.7 })
            {
                Assert.True(BlurByRays(one.F, setting, share / one.Plane.PerCrossing, 0) < 1e-6);
            }
        }
    });

    [Fact]
    public void Plane_ThroughTwoPoints_IsSharpOnTheSensorByRays() =>
        Gen.Select(Gen.Double[20, 120], Gen.Double[400, 800], Gen.Double[-500, 500], Gen.Double[810, 3000], Gen.Double[-500, 500])
            .Sample((f, x1, y1, x2, y2) =>
            {
                var none = default(NoTrail);
                var plane = TiltPlane.OfPoints((x1, y1), (x2, y2), ref none);
                if (Solve(f, plane, 30) is { Obstacle: null, Setting: { } setting })
                {
                    Assert.True(BlurByRays(f, setting, x1, 0) < 1e-6);
                    Assert.True(BlurByRays(f, setting, x2, 0) < 1e-6);
                    Assert.Equal(y2, HeightOn(plane, x2), 1e-6);
                }
            });

    [Fact]
    public void Wedge_HalfHeight_IsWhereRaysBlurAsPermitted()
    {
        var none = default(NoTrail);
        foreach (var (f, elevation, axis) in new[] { (90.0, 47.8, 935.6), (45, 60, 400), (85, 45, 900) })
        {
            var setting = Solve(f, Table(elevation, axis), null).Setting!;
            var half = setting.WedgeHalfHeightMm(f, axis, 8, 0.03, ref none);
            foreach (var side in new[] { -1, 1 })
            {
                Assert.Equal(0.03, BlurByRays(f, setting, axis, side * half, f / 8), 0.03 * 0.06);
            }
        }
    }

    [Fact]
    public void NoTilt_PlaneParallelToTheSensor_IsTheLensEquation()
    {
        var setting = Solve(50, Table(90, 600), 8).Setting!;
        Assert.Equal((0, 0), (setting.TiltDeg, setting.PlaneToSensorDeg));
        Assert.Equal(1 / 50.0, 1 / 600.0 + 1 / setting.LensToSensorMm, 1e-12);
        Assert.True(BlurByRays(50, setting, 600, 0) < 1e-9);
    }

    [Fact]
    public void Mirrored_Points_TiltTheOtherWay() =>
        Gen.Select(Gen.Double[400, 800], Gen.Double[-300, 300], Gen.Double[810, 3000], Gen.Double[-300, 300]).Sample((x1, y1, x2, y2) =>
        {
            var none = default(NoTrail);
            var (one, other) = (Solve(60, TiltPlane.OfPoints((x1, y1), (x2, y2), ref none), null),
                Solve(60, TiltPlane.OfPoints((x1, -y1), (x2, -y2), ref none), null));
            Assert.Equal(one.Obstacle, other.Obstacle);
            if (one.Obstacle is null)
            {
                Assert.Equal(one.Setting!.TiltDeg, -other.Setting!.TiltDeg, 1e-9);
                Assert.Equal(1, one.Setting.LensToSensorMm / other.Setting.LensToSensorMm, 1e-9);
            }
        });

    [Fact]
    public void Range_TooSmall_NearestCrossesTheAxisThereAtTheLargestTilt() => Tables.Sample(one =>
    {
        var outcome = Solve(one.F, one.Plane, 5);
        if (outcome.Obstacle == TiltObstacle.TiltRange)
        {
            Assert.Equal(5, outcome.Setting!.TiltDeg, 1e-9);
            Assert.Equal(one.Plane.PerCrossing, outcome.Setting.Plane.PerCrossing);
            Assert.True(BlurByRays(one.F, outcome.Setting, 1 / one.Plane.PerCrossing, 0) < 1e-6);
            var elevation = TiltOutcome.LowestElevationDeg(one.F, 1 / one.Plane.PerCrossing, 5)!.Value;
            Assert.Equal(5, Solve(one.F, Table(elevation, 1 / one.Plane.PerCrossing), 5).Setting!.TiltDeg, 1e-9);
            Assert.Equal(TiltObstacle.TiltRange, Solve(one.F, Table(elevation - 0.1, 1 / one.Plane.PerCrossing), 5).Obstacle);
        }
    });

    [Fact]
    public void Hinge_WithinTheFocalLength_IsNotReached()
    {
        var outcome = Solve(90, Table(15, 300), null);
        Assert.Equal((TiltObstacle.HingeTooNear, null), (outcome.Obstacle, outcome.Setting));
        Assert.Equal(90 - 300 * Math.Tan(Math.PI / 12), outcome.ShortfallMm!.Value, 1e-9);
        Assert.Equal(8, Solve(90, Table(15, 300), 8).Setting!.TiltDeg, 1e-9);
    }

    [Theory]
    [InlineData(90, 45)]
    [InlineData(60, 48)]
    public void Plane_WithinTheFocalLength_IsNotReached(double elevation, double axis)
    {
        var outcome = Solve(50, Table(elevation, axis), 8);
        Assert.Equal(TiltObstacle.PlaneTooNear, outcome.Obstacle);
        Assert.Null(outcome.Setting);
        Assert.True(outcome.ShortfallMm > 0);
        Assert.Null(TiltOutcome.LowestElevationDeg(50, axis, 8));
    }

    private static TiltPlane Table(double elevation, double axis)
    {
        var none = default(NoTrail);
        return TiltPlane.OfTable(elevation, axis, ref none);
    }

    private static TiltOutcome Solve(double f, TiltPlane plane, double? largest)
    {
        var none = default(NoTrail);
        return TiltOutcome.Solve(f, plane, largest, ref none);
    }

    // Through the hinge point (0, -J) and the crossing (u, 0).
    private static double HeightOn(TiltPlane plane, double x) => -plane.HingeMm + plane.HingeMm * plane.PerCrossing * x;

    // Rays from a point over the plane of focus meet the lens from edge to edge, bend as a thin lens bends them, and go on to the
    // sensor. The width of their spot is the blur.
    private static double BlurByRays(double f, TiltSetting setting, double x, double over, double aperture = 10)
    {
        var y = (setting.Plane.IsParallel ? 0 : HeightOn(setting.Plane, x)) + over;
        var (sin, cos) = Math.SinCos(setting.TiltDeg * Math.PI / 180);
        var along = x * cos - y * sin;
        var across = x * sin + y * cos;
        var spots = new[] { -0.5, 0, 0.5 }.Select(edge =>
        {
            // In the frame of the lens: height h at the lens, slope behind it.
            var h = edge * aperture;
            var slope = (h - across) / along - h / f;

            // A direction behind the lens, and the sensor at -v, back in the frame of the camera.
            var (dx, dy) = (-cos + slope * sin, sin + slope * cos);
            var (lensX, lensY) = (h * sin, h * cos);
            return lensY + (-setting.LensToSensorMm - lensX) / dx * dy;
        }).ToList();
        return spots.Max() - spots.Min();
    }
}
