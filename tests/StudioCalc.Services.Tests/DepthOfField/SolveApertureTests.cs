using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SolveApertureTests
{
    public static TheoryData<string, string, Action<SolveApertureRequest>> Refused => new()
    {
        { "lens.focal_length_mm", "REQUIRED", request => request.Lens.ClearFocalLengthMm() },
        { "lens.focal_length_mm", "REQUIRED", request => { request.Distances = Distances(600, 700); request.Lens.ClearFocalLengthMm(); } },
        { "distances.far_mm", "OUT_OF_RANGE", request => request.Distances = Distances(700, 600) },
        { "distances.far_mm", "OUT_OF_RANGE", request => request.Distances = Distances(700, 700) },
        { "distances.far_mm", "OUT_OF_RANGE", request => request.Distances = Distances(700, 700.0009) },
        { "distances.near_mm", "OUT_OF_RANGE", request => request.Distances = Distances(380, 390) },
        { "distances.near_mm", "OUT_OF_RANGE", request => request.Distances = Distances(110, 200, DistanceOrigin.EntrancePupil) },
        { "around_focus.front_mm", "OUT_OF_RANGE", request => request.AroundFocus.FrontMm = 1000 },
        { "around_focus.behind_mm", "OUT_OF_RANGE", request => request.AroundFocus.FrontMm = request.AroundFocus.BehindMm = 0 },
        { "around_focus.closeness.magnification", "OUT_OF_RANGE", request => request.AroundFocus.Closeness = new() { Magnification = 0 } },
        { "around_focus.closeness", "OUT_OF_RANGE", request => request.AroundFocus.Closeness = new() { Magnification = 0.00009 } },
        { "around_focus.closeness.sensor_distance_mm", "OUT_OF_RANGE", request => request.AroundFocus.Closeness = new() { SensorDistanceMm = 390 } },
        { "limits.smallest_aperture", "CONFLICT", request => request.Limits.SmallestAperture = new() { Mark = "f/2" } },
        { "sensor.format", "UNKNOWN_MARK", request => request.Sensor.Format = "24x35" },
        { "permitted_blur.pixels", "CONFLICT", request => { request.PermittedBlur = new() { Pixels = 2 }; request.Sensor.ClearLongSidePixels(); } },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void SolveAperture_FieldsThatDoNotGoTogether_NamesTheField(string field, string reason, Action<SolveApertureRequest> spoil)
    {
        var request = Examples.SolveAperture();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.DepthOfField.SolveAperture(request)));
    }

    [Fact]
    public void Solution_EvaluatedAgain_HasTheSameZoneAndBlur()
    {
        var answer = Calls.DepthOfField.SolveAperture(Examples.SolveAperture());
        var solution = answer.Solution;
        Assert.Equal("f/11", solution.Aperture.Mark);
        Assert.InRange(solution.Aperture.RestStops, 0, 1 / 3.0);
        Assert.True(solution.EndBlurWithDiffractionUm <= answer.PermittedBlurUm);
        var evaluate = new EvaluateDepthOfFieldRequest
        {
            Camera = new()
            {
                Lens = Examples.SolveAperture().Lens,
                Closeness = new() { Magnification = solution.Focus.Magnification },
                Sensor = Examples.SolveAperture().Sensor,
            },
            Aperture = new() { Set = new() { Mark = solution.Aperture.Mark } },
            PermittedBlur = Examples.SolveAperture().PermittedBlur,
        };

        // The plane that was told lies 1027.778 mm from the entrance pupil, the points 22 mm before and 30 mm behind it.
        var moved = solution.Focus.FromEntrancePupilMm - (100 * 330 / 36.0 + 100 / 0.9);
        evaluate.OffsetsMm.Add([-22 - moved, 30 - moved]);
        var again = Calls.DepthOfField.EvaluateDepthOfField(evaluate);
        Assert.Equal(again.Zone.TotalDepthMm, solution.Zone.TotalDepthMm, 1e-9);
        Assert.All(again.Points, point => Assert.Equal(solution.EndBlurUm, point.BlurUm, 1e-9));
        Assert.All(again.Points, point => Assert.Equal(solution.EndBlurWithDiffractionUm, point.BlurWithDiffractionUm, 1e-9));
    }

    [Fact]
    public void SmallestAperture_TooWide_IsNamedWithTheNearest()
    {
        var request = Examples.SolveAperture();
        request.Limits.SmallestAperture = new() { Mark = "f/10" };
        var missed = Calls.DepthOfField.SolveAperture(request).NotReached;
        Assert.Equal(DepthObstacle.SmallestAperture, missed.Obstacle);
        Assert.Equal("f/10", missed.Nearest.Aperture.Mark);
        Assert.Equal(missed.Nearest.EndBlurWithDiffractionUm - 30.0046, missed.ShortfallUm, 1e-3);
    }

    [Fact]
    public void Limit_BetweenMarks_IsTheNearestWithoutAMark()
    {
        var request = Examples.SolveAperture();
        request.Limits.SmallestAperture = new() { FNumber = 10.4 };
        var nearest = Calls.DepthOfField.SolveAperture(request).NotReached.Nearest;
        Assert.Equal(10.4, nearest.Aperture.FNumber);
        Assert.False(nearest.Aperture.HasMark);
    }

    [Theory]
    [InlineData(60, 90, 32)]
    [InlineData(22, 30, 10)]
    public void Remedies_AroundAFocus_HoldWhenSentBack(double frontMm, double behindMm, double smallest)
    {
        var request = Examples.SolveAperture();
        (request.AroundFocus.FrontMm, request.AroundFocus.BehindMm) = (frontMm, behindMm);
        request.Limits.SmallestAperture = new() { FNumber = smallest };
        var missed = Calls.DepthOfField.SolveAperture(request).NotReached;
        Assert.Equal(
            [DepthRemedyKind.FrameWider, DepthRemedyKind.Stack, DepthRemedyKind.PermitMoreBlur, DepthRemedyKind.HoldLessDepth],
            missed.Remedies.Select(remedy => remedy.Kind));
        foreach (var remedy in missed.Remedies.Where(remedy => remedy.Kind != DepthRemedyKind.Stack))
        {
            var changed = request.Clone();
            switch (remedy.Kind)
            {
                case DepthRemedyKind.FrameWider:
                    changed.AroundFocus.Closeness = new() { Magnification = remedy.Magnification };
                    Assert.Equal(100 / remedy.Magnification, 100 * 330 / 36.0 + remedy.CameraBackMm, 1e-6);
                    break;
                case DepthRemedyKind.PermitMoreBlur:
                    changed.PermittedBlur = new() { DiameterUm = remedy.PermittedBlurUm };
                    break;
                default:
                    var share = remedy.DepthMm / (frontMm + behindMm);
                    (changed.AroundFocus.FrontMm, changed.AroundFocus.BehindMm) = (frontMm * share, behindMm * share);
                    break;
            }

            Holds(changed, remedy);
        }
    }

    [Fact]
    public void Remedies_ByDistancesFromTheSensor_HoldWhenSentBack()
    {
        var request = Examples.SolveAperture();
        request.Distances = Distances(1050, 1180);
        var missed = Calls.DepthOfField.SolveAperture(request).NotReached;
        foreach (var remedy in missed.Remedies.Where(remedy => remedy.Kind != DepthRemedyKind.Stack))
        {
            var changed = request.Clone();
            switch (remedy.Kind)
            {
                case DepthRemedyKind.FrameWider:
                    changed.Distances = Distances(1050 + remedy.CameraBackMm, 1180 + remedy.CameraBackMm);
                    break;
                case DepthRemedyKind.PermitMoreBlur:
                    changed.PermittedBlur = new() { DiameterUm = remedy.PermittedBlurUm };
                    break;
                default:
                    var (plane, share) = (missed.Nearest.Focus.FromSensorMm, remedy.DepthMm / 130);
                    changed.Distances = Distances(plane - share * (plane - 1050), plane + share * (1180 - plane));
                    break;
            }

            var after = Holds(changed, remedy);
            if (remedy.Kind == DepthRemedyKind.FrameWider)
            {
                Assert.Equal(remedy.Magnification, after.Focus.Magnification, 1e-9);
            }
        }
    }

    private static ApertureSolution Holds(SolveApertureRequest request, DepthRemedy remedy)
    {
        var after = Calls.DepthOfField.SolveAperture(request).Solution;
        Assert.NotNull(after);
        Assert.Equal(remedy.Aperture.HasMark, after.Aperture.HasMark);
        Assert.Equal(remedy.Aperture.Mark, after.Aperture.Mark);
        return after;
    }

    private static NearAndFar Distances(double near, double far, DistanceOrigin origin = DistanceOrigin.Sensor) =>
        new() { NearMm = near, FarMm = far, Origin = origin };
}
