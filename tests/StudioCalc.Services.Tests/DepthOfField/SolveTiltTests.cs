using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SolveTiltTests
{
    public static TheoryData<string, string, Action<SolveTiltRequest>> Bad => new()
    {
        { "permitted_blur", "REQUIRED", request => request.PermittedBlur = null },
        { "aperture", "REQUIRED", request => request.Aperture = null },
        { "aperture.mark", "UNKNOWN_MARK", request => request.Aperture.Mark = "f/8.5" },
        { "permitted_blur.named", "CONFLICT", request => request.PermittedBlur.Named = BlurCriterion.Diagonal1500 },
        { "sensor.format", "UNKNOWN_MARK", request => request.Sensor = new() { Format = "35x24" } },
        { "plane", "REQUIRED", request => request.ClearPlane() },
        { "table.distance", "REQUIRED", request => request.Table.ClearDistance() },
        { "table.elevation_deg", "OUT_OF_RANGE", request => request.Table.ElevationDeg = 0 },
        { "points.far.distance_mm", "CONFLICT", request => request.Points = Points(800, 0, 700, 50) },
        { "points.far", "CONFLICT", request => request.Points = Points(800, 0, 800, 0) },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<SolveTiltRequest> spoil)
    {
        var request = Examples.Tilt();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.DepthOfField.SolveTilt(request)));
    }

    [Fact]
    public void Wedge_WithoutApertureAndBlur_NamesBoth()
    {
        var request = Examples.Tilt();
        (request.Aperture, request.PermittedBlur) = (null, null);
        Assert.Equal(
            [("permitted_blur", "REQUIRED"), ("aperture", "REQUIRED")], Calls.Refused(() => Calls.DepthOfField.SolveTilt(request)));
    }

    [Fact]
    public void Table_ByHeightOrAxisOrPoints_GivesTheSame()
    {
        var request = Examples.Tilt();
        var byAxis = Calls.DepthOfField.SolveTilt(request).Solution;
        var (sin, cos) = Math.SinCos(50 * Math.PI / 180);
        request.Table.HeightMm = 850 * sin;
        var byHeight = Calls.DepthOfField.SolveTilt(request).Solution;

        // Points of the table 200 mm before and behind the axis, in the frame of the camera.
        request.Points = Points(850 - 200 * cos, -200 * sin, 850 + 200 * cos, 200 * sin);
        var byPoints = Calls.DepthOfField.SolveTilt(request).Solution;
        foreach (var other in new[] { byHeight, byPoints })
        {
            Assert.Equal(byAxis.TiltDeg, other.TiltDeg, 1e-9);
            Assert.Equal(byAxis.HingeDistanceMm, other.HingeDistanceMm, 1e-6);
            Assert.Equal(byAxis.LensToSensorMm, other.LensToSensorMm, 1e-9);
            Assert.Equal(byAxis.PlaneToSensorDeg, other.PlaneToSensorDeg, 1e-9);
            Assert.Equal(byAxis.AxisCrossingMm, other.AxisCrossingMm, 1e-6);
        }

        Assert.Equal(40, byAxis.PlaneToSensorDeg, 1e-9);
        Assert.True(byAxis.TiltDeg > 0);
    }

    [Fact]
    public void Wedge_AtTheDistancesAskedFor_GrowsAwayFromTheCamera()
    {
        var request = Examples.Tilt();
        var wedge = Calls.DepthOfField.SolveTilt(request).Solution.Wedge;
        Assert.Equal([700, 850, 1000], wedge.Select(height => height.DistanceMm));
        Assert.Equal(wedge[0].HalfHeightMm / 700, wedge[2].HalfHeightMm / 1000, 1e-12);
        request.WedgeDistancesMm.Clear();
        Assert.Equal(wedge[1], Assert.Single(Calls.DepthOfField.SolveTilt(request).Solution.Wedge));
        (request.Aperture, request.PermittedBlur) = (null, null);
        Assert.Empty(Calls.DepthOfField.SolveTilt(request).Solution.Wedge);
    }

    [Fact]
    public void StraightDown_NeedsNoTiltAndHasNoWedge()
    {
        var request = Examples.Tilt();
        request.Table.ElevationDeg = 90;
        var answer = Calls.DepthOfField.SolveTilt(request).Solution;
        Assert.Equal((0, 0, false), (answer.TiltDeg, answer.PlaneToSensorDeg, answer.HasHingeDistanceMm));
        Assert.Equal(850, answer.AxisCrossingMm, 1e-9);
        Assert.Empty(answer.Wedge);
    }

    [Fact]
    public void LevelPlane_UnderALevelCamera_NeverCrossesTheAxis()
    {
        var request = Examples.Tilt();
        request.WedgeDistancesMm.Clear();
        request.Points = Points(500, -700, 3000, -700);
        var answer = Calls.DepthOfField.SolveTilt(request).Solution;
        Assert.False(answer.HasAxisCrossingMm);
        Assert.Equal((90, 700), (answer.PlaneToSensorDeg, answer.HingeDistanceMm));
        Assert.Empty(answer.Wedge);
    }

    [Fact]
    public void LowCamera_BeyondTheTiltRange_TellsTheNearestAndTheLowestElevation()
    {
        var request = Examples.Tilt();
        request.Table.ElevationDeg = 25;
        var answer = Calls.DepthOfField.SolveTilt(request).NotReached;
        Assert.Equal(TiltObstacle.TiltRange, answer.Obstacle);
        Assert.Equal(8, answer.Nearest.TiltDeg, 1e-9);
        Assert.Equal(850, answer.Nearest.AxisCrossingMm, 1e-9);
        Assert.Equal(3, answer.Nearest.Wedge.Count);

        request.Table.ElevationDeg = answer.LowestElevationDeg;
        Assert.Equal(8, Calls.DepthOfField.SolveTilt(request).Solution.TiltDeg, 1e-6);
        request.Table.ElevationDeg = 25;
        request.LargestTiltDeg = 8 + answer.ShortfallDeg;
        Assert.NotNull(Calls.DepthOfField.SolveTilt(request).Solution);
    }

    [Fact]
    public void BeyondTheTiltRange_TellsTheFocalLengthAndTheDistanceThatDo()
    {
        foreach (var elevation in new[] { 25.0, 4 })
        {
            var request = Examples.Tilt();
            request.Table.ElevationDeg = elevation;
            var answer = Calls.DepthOfField.SolveTilt(request).NotReached;
            Assert.Equal(elevation == 4 ? TiltObstacle.HingeTooNear : TiltObstacle.TiltRange, answer.Obstacle);
            var shorter = request.Clone();
            shorter.FocalLengthMm = answer.LongestFocalLengthMm;
            Assert.Equal(8, Calls.DepthOfField.SolveTilt(shorter).Solution.TiltDeg, 1e-6);
            request.Table.AxisMm = answer.LeastAxisMm;
            Assert.Equal(8, Calls.DepthOfField.SolveTilt(request).Solution.TiltDeg, 1e-6);
        }
    }

    [Fact]
    public void TwoPoints_BeyondTheTiltRange_TellTheFocalLengthAlone()
    {
        var request = Examples.Tilt();
        request.Points = Points(500, -100, 900, -100);
        var answer = Calls.DepthOfField.SolveTilt(request).NotReached;
        Assert.False(answer.HasLeastAxisMm);
        request.FocalLengthMm = answer.LongestFocalLengthMm;
        Assert.Equal(8, Calls.DepthOfField.SolveTilt(request).Solution.TiltDeg, 1e-6);
        request.ClearLargestTiltDeg();
        (request.FocalLengthMm, request.Points) = (150, Points(500, -100, 900, -100));
        Assert.False(Calls.DepthOfField.SolveTilt(request).NotReached.HasLongestFocalLengthMm);
    }

    [Fact]
    public void HingeWithinTheFocalLength_WithoutATiltRange_HasNothingNearest()
    {
        var request = Examples.Tilt();
        request.Table = new() { ElevationDeg = 15, AxisMm = 300 };
        request.ClearLargestTiltDeg();
        var answer = Calls.DepthOfField.SolveTilt(request).NotReached;
        Assert.Equal(TiltObstacle.HingeTooNear, answer.Obstacle);
        Assert.Null(answer.Nearest);
        Assert.False(answer.HasShortfallDeg || answer.HasLowestElevationDeg);
        Assert.Equal(90, answer.HingeDistanceMm + answer.ShortfallMm, 1e-9);
    }

    [Theory]
    [InlineData(90)]
    [InlineData(80)]
    public void PlaneWithinTheFocalLength_FormsNoImage(double elevation)
    {
        var request = Examples.Tilt();
        request.Table = new() { ElevationDeg = elevation, AxisMm = 80 };
        var answer = Calls.DepthOfField.SolveTilt(request).NotReached;
        Assert.Equal(TiltObstacle.PlaneTooNear, answer.Obstacle);
        Assert.True(answer.ShortfallMm > 9.99);
        Assert.Null(answer.Nearest);
    }

    [Fact]
    public void Points_ThroughTheMiddleOfTheLens_AreNotReached()
    {
        var request = Examples.Tilt();
        request.Points = Points(500, 100, 1000, 200);
        var answer = Calls.DepthOfField.SolveTilt(request).NotReached;
        Assert.Equal((TiltObstacle.HingeTooNear, 90), (answer.Obstacle, answer.ShortfallMm));
        Assert.Null(answer.Nearest);
    }

    private static TwoPoints Points(double x1, double y1, double x2, double y2) => new()
    {
        Near = new() { DistanceMm = x1, HeightMm = y1 },
        Far = new() { DistanceMm = x2, HeightMm = y2 },
    };
}
