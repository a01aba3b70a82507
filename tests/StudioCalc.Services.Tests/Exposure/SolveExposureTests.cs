using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SolveExposureTests
{
    [Fact]
    public void Example_IsSolvedForTheShutterSpeed()
    {
        var solution = Calls.Exposure.SolveExposure(Examples.Solve()).Solution;
        Assert.Equal("0.3", solution.ShutterSpeed.Mark);
        Assert.Equal(0.3 / Math.Log10(2) + 2 * Math.Log2(1 + 0.25 / 0.8), solution.LensLossStops, 1e-9);
        Assert.Equal(solution.Aperture.FNumber * (1 + 0.25 / 0.8), solution.EffectiveFNumber, 1e-9);
        Assert.Equal(solution.RestStops, -solution.ShutterSpeed.RestStops, 1e-9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Solution_SentThroughTheEvaluation_MetersRight(int unknown)
    {
        var request = Examples.Solve();
        request.ShutterSpeed = new() { Mark = "1/4" };
        request.CompensationStops = 0.5;
        if (unknown == 1)
        {
            request.Aperture = null;
        }
        else if (unknown == 2)
        {
            request.ShutterSpeed = null;
        }
        else
        {
            request.Iso = null;
        }

        var solution = Calls.Exposure.SolveExposure(request).Solution;
        var evaluated = Calls.Exposure.EvaluateExposure(new()
        {
            Light = new() { Continuous = request.Light },
            LensLossStops = solution.LensLossStops,
            Settings = new()
            {
                Aperture = new() { FNumber = solution.Aperture.FNumber },
                ShutterSpeed = new() { TimeS = solution.ShutterSpeed.TimeS },
                Iso = new() { Speed = solution.Iso.Speed },
            },
        });
        Assert.Equal(0.5, evaluated.LightOverSettingStops, 1e-9);
    }

    [Fact]
    public void NotReached_TellsTheLimitTheShortfallAndWhatHelps()
    {
        var request = Examples.Solve();
        request.Camera.SlowestShutterSpeed = new() { Mark = "1/30" };
        var answer = Calls.Exposure.SolveExposure(request);
        var exact = Calls.Exposure.SolveExposure(Examples.Solve()).Solution.ShutterSpeed.TimeS;
        var way = answer.NotReached;
        Assert.Equal((ExposureObstacle.SlowestShutterSpeed, "1/30"), (way.Obstacle, way.Nearest.ShutterSpeed.Mark));
        Assert.Equal(Math.Log2(exact * 32), way.ShortfallStops, 1e-9);
        Assert.Equal(-way.ShortfallStops, way.Nearest.RestStops, 1e-9);
        Assert.Equal(
            [ExposureRemedyKind.OpenAperture, ExposureRemedyKind.RaiseIso, ExposureRemedyKind.UnfilterLens, ExposureRemedyKind.MoreLight],
            way.Remedies.Select(remedy => remedy.Kind));
        Assert.Equal("f/3.5", way.Remedies[0].Solution.Aperture.Mark);
        Assert.True(way.Remedies[0].Solution.ShutterSpeed.TimeS <= 1 / 32.0);
        Assert.Equal(way.ShortfallStops - (0.3 / Math.Log10(2)), way.Remedies[2].ShortfallStops, 1e-9);
        Assert.Contains(answer.Advisories, advisory => advisory.Code == AdvisoryCode.MovingLights);
    }

    [Fact]
    public void Remedy_ThatItsOwnLimitStops_TellsWhatIsLeftOrIsNotListed()
    {
        var request = Examples.Solve();
        request.Camera.SlowestShutterSpeed = new() { Mark = "1/30" };
        request.Camera.WidestAperture = new() { Mark = "f/8" };
        request.Camera.HighestIso = new() { Mark = "200" };
        var way = Calls.Exposure.SolveExposure(request).NotReached;
        Assert.DoesNotContain(way.Remedies, remedy => remedy.Kind == ExposureRemedyKind.RaiseIso);
        Assert.Equal(1, way.Remedies[0].ChangeStops, 1e-9);
        Assert.Equal(way.ShortfallStops - 1, way.Remedies[0].ShortfallStops, 1e-9);
    }

    [Fact]
    public void FNumbersThatAreEffective_LoseNothingMore()
    {
        var request = Examples.Solve();
        request.LensFilters.Clear();
        request.CloseUp = new() { FNumbersAreEffective = true };
        var solution = Calls.Exposure.SolveExposure(request).Solution;
        Assert.Equal((0, solution.Aperture.FNumber), (solution.LensLossStops, solution.EffectiveFNumber));
    }

    [Theory]
    [InlineData("""{"light":{"illuminanceLx":100},"aperture":{"mark":"8"}}""", "shutter_speed REQUIRED,iso REQUIRED")]
    [InlineData("""{"light":{"illuminanceLx":100},"aperture":{"mark":"8"},"shutterSpeed":{"mark":"1"},"iso":{"mark":"100"}}""", "aperture CONFLICT")]
    [InlineData("""{"light":{"illuminanceLx":100},"aperture":{"mark":"8"},"iso":{"mark":"100"},"closeUp":{"fNumbersAreEffective":false}}""",
        "close_up.f_numbers_are_effective CONFLICT")]
    [InlineData("""{"light":{"illuminanceLx":100},"aperture":{"mark":"2"},"iso":{"mark":"100"},"camera":{"widestAperture":{"mark":"2.8"}}}""", "aperture CONFLICT")]
    [InlineData("""{"light":{"illuminanceLx":100},"aperture":{"mark":"8"},"iso":{"mark":"50"},"camera":{"lowestIso":{"mark":"100"}}}""", "iso CONFLICT")]
    [InlineData("""{"light":{"illuminanceLx":100},"aperture":{"mark":"8"},"shutterSpeed":{"mark":"2"},"camera":{"slowestShutterSpeed":{"mark":"1"}}}""",
        "shutter_speed CONFLICT")]
    [InlineData("""
        {"light":{"illuminanceLx":100},"aperture":{"mark":"16"},"iso":{"mark":"100"},
         "camera":{"smallestAperture":{"mark":"4"},"widestAperture":{"mark":"8"},"fastestShutterSpeed":{"mark":"1"},
                   "slowestShutterSpeed":{"mark":"1/4"},"lowestIso":{"mark":"200"},"highestIso":{"mark":"100"}}}
        """,
        "camera.smallest_aperture CONFLICT,camera.slowest_shutter_speed CONFLICT,camera.highest_iso CONFLICT,aperture CONFLICT,iso CONFLICT")]
    public void FieldsThatDoNotFit_AreRefusedByPath(string json, string refused) => Assert.Equal(
        refused.Split(','),
        Calls.Refused(() => Calls.Exposure.SolveExposure(Calls.Parse<SolveExposureRequest>(json))).Select(one => $"{one.Field} {one.Reason}"));
}
