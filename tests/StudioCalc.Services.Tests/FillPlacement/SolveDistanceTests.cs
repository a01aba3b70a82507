using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SolveDistanceTests
{
    public static TheoryData<string, string, Action<SolveDistanceRequest>> Bad => new()
    {
        { "distances.farthest_mm", "OUT_OF_RANGE", request => request.Distances.NearestMm = 2001 },
        { "source.pose.aim_point", "CONFLICT", request => request.Source.Pose.AimPoint = request.Source.Pose.Position.Clone() },
        { "source.hot_centre", "CONFLICT", request =>
        {
            request.Source.Point = new();
            request.Source.HotCentre = new() { WidthShare = 0.5, LuminanceRatio = 2 };
        } },
        { "source.calibration", "REQUIRED", request => request.Reading = Flash() },
        { "receiver.source_index", "OUT_OF_RANGE", request => request.Receiver = new() { Place = Origin(), SourceIndex = 1 } },
        { "receiver.up", "OUT_OF_RANGE", request => request.Receiver = new() { Place = Origin(), Up = false } },
        { "receiver.aim_point", "CONFLICT", request => request.Receiver = new() { Place = Origin(), AimPoint = Origin() } },
        { "change_stops", "CONFLICT", request => request.Receiver = new() { Place = Origin(), AimPoint = new() { XMm = 0, YMm = 1000, ZMm = -1000 } } },
        { "reading.continuous", "CONFLICT", request =>
        {
            request.Source.Calibration = Calibrated();
            request.Reading = new() { Continuous = new() { IlluminanceLx = 100 } };
        } },
        { "reading.flash", "CONFLICT", request =>
        {
            request.Source.Calibration = new() { LuminanceCdPerM2 = 1000 };
            request.Reading = Flash();
        } },
        { "reading.flash.receptor", "CONFLICT", request =>
        {
            request.Source.Calibration = Calibrated();
            request.Reading = Flash();
            request.Reading.Flash.Receptor = Receptor.Dome;
        } },
        { "reading.continuous.receptor", "CONFLICT", request =>
        {
            request.Source.Calibration = new() { LuminanceCdPerM2 = 1000 };
            request.Receiver = new() { Place = Origin(), SourceIndex = 0, Kind = ReceiverKind.Dome };
            request.Reading = new() { Continuous = new() { IlluminanceLx = 100 } };
        } },
        { "reading.flash.includes_ambient", "CONFLICT", request =>
        {
            request.Source.Calibration = Calibrated();
            request.Reading = Flash();
            request.Reading.Flash.IncludesAmbient = true;
        } },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Request_WithABadField_IsRefusedByName(string field, string reason, Action<SolveDistanceRequest> change)
    {
        var request = Examples.SolveDistance();
        change(request);
        Assert.Contains((field, reason), Calls.Refused(() => Calls.FillPlacement.SolveDistance(request)));
    }

    [Fact]
    public void Octabox_OneStopBrighter_StandsAtSixtyThreeCentimetres()
    {
        var answer = Calls.FillPlacement.SolveDistance(Examples.SolveDistance());
        var distance = Assert.Single(answer.Solution.Distances);
        Assert.Equal(626.969149, distance.DistanceMm, 1e-3);
        Assert.Equal(707.1068, distance.InverseSquareDistanceMm, 1e-4);
        Assert.Equal(-0.2341, distance.InverseSquareOverStops, 1e-4);
        Assert.Equal(1, answer.WantedChangeStops);
        Assert.Equal(2.507, answer.MostGainStops, 1e-3);
        Assert.False(answer.HasWantedExposureLxS || answer.HasWantedIlluminanceLx);
    }

    [Fact]
    public void Octabox_ThreeStopsBrighter_IsMoreThanMovingCanGain()
    {
        var request = Examples.SolveDistance();
        request.ChangeStops = 3;
        var answer = Calls.FillPlacement.SolveDistance(request);
        Assert.Equal(DistanceObstacle.MostLight, answer.NotReached.Obstacle);
        Assert.Equal(600, answer.NotReached.Nearest.DistanceMm);
        var power = Assert.Single(answer.NotReached.Remedies);
        Assert.Equal(DistanceRemedyKind.RaisePower, power.Kind);
        Assert.Equal(answer.NotReached.ShortfallStops, power.ChangeStops);
        Assert.Equal(0, power.Distance.OverWantedStops);
    }

    [Theory]
    [InlineData(1.5, DistanceObstacle.NearestDistance, DistanceRemedyKind.RaisePower, 600)]
    [InlineData(-2.5, DistanceObstacle.FarthestDistance, DistanceRemedyKind.LowerPower, 2000)]
    public void BeyondTheRange_RemediesSentBack_Serve(double change, DistanceObstacle obstacle, DistanceRemedyKind kind, double nearestMm)
    {
        var request = Examples.SolveDistance();
        request.ChangeStops = change;
        var answer = Calls.FillPlacement.SolveDistance(request).NotReached;
        Assert.Equal(obstacle, answer.Obstacle);
        Assert.Equal(nearestMm, answer.Nearest.DistanceMm);
        Assert.Equal([kind, DistanceRemedyKind.WidenRange], answer.Remedies.Select(remedy => remedy.Kind));
        var wider = answer.Remedies[1].Distance.DistanceMm;
        request.Distances.NearestMm = Math.Min(request.Distances.NearestMm, wider);
        request.Distances.FarthestMm = Math.Max(request.Distances.FarthestMm, wider);
        Assert.Equal(wider, Calls.FillPlacement.SolveDistance(request).Solution.Distances[0].DistanceMm, 1e-6);
        request.ChangeStops = change - answer.Remedies[0].ChangeStops;
        Assert.Equal(nearestMm, Calls.FillPlacement.SolveDistance(request).Solution.Distances[0].DistanceMm, 1e-6);
    }

    [Fact]
    public void Reading_OfAFlash_IsHeldAgainstItsCalibrationAndPower()
    {
        var request = Examples.SolveDistance();
        request.Source.Calibration = Calibrated();
        request.Source.Power = new() { Fraction = "1/4" };
        request.Reading = Flash();
        var answer = Calls.FillPlacement.SolveDistance(request);
        Assert.Equal(626.969149, Assert.Single(answer.Solution.Distances).DistanceMm, 1e-3);
        Assert.Equal(1, answer.WantedChangeStops, 1e-9);
        Assert.Equal(80, answer.WantedExposureLxS, 1e-9);
    }

    [Fact]
    public void Reading_OfLightThatStaysOn_IsTheIlluminanceOfTheFace()
    {
        var request = Examples.SolveDistance();
        request.Source.Calibration = new() { LuminanceCdPerM2 = 1000 };
        request.Reading = new() { Continuous = new() { IlluminanceLx = 552.66 } };
        var answer = Calls.FillPlacement.SolveDistance(request);
        Assert.Equal(552.66, answer.WantedIlluminanceLx, 1e-9);
        Assert.Equal(1000, answer.Solution.Distances[0].DistanceMm, 0.1);
    }

    [Fact]
    public void Reading_WhereTheSourceIsDarkNow_IsStillSolved()
    {
        var request = Examples.SolveDistance();
        request.Source.Calibration = new() { LuminanceCdPerM2 = 1000 };
        request.Source.Pose.Position = new() { XMm = 0, YMm = -100, ZMm = 0 };
        request.Receiver = new() { Place = new() { XMm = 0, YMm = -500, ZMm = 0 }, SourceIndex = 0 };
        request.Reading = new() { Continuous = new() { IlluminanceLx = 1000 } };
        request.IncludeWorking = true;
        var answer = Calls.FillPlacement.SolveDistance(request);
        var distance = Assert.Single(answer.Solution.Distances);
        Assert.True(distance.DistanceMm > 500);
        Assert.False(distance.HasInverseSquareDistanceMm || answer.HasWantedChangeStops || answer.HasMostGainStops);
    }

    [Fact]
    public void Receiver_ThatFacesAway_IsDarkAlongTheWholeLine()
    {
        var request = Examples.SolveDistance();
        request.Source.Calibration = new() { LuminanceCdPerM2 = 1000 };
        request.Reading = new() { Continuous = new() { IlluminanceLx = 1000 } };
        request.Receiver = new() { Place = Origin(), AimPoint = new() { XMm = 0, YMm = 866.0254037844386, ZMm = -500 } };
        var answer = Calls.FillPlacement.SolveDistance(request).NotReached;
        Assert.Equal(DistanceObstacle.Dark, answer.Obstacle);
        Assert.Null(answer.Nearest);
        Assert.False(answer.HasShortfallStops);
        Assert.Empty(answer.Remedies);
    }

    private static Point Origin() => new() { XMm = 0, YMm = 0, ZMm = 0 };

    private static Reading Flash() => new()
    {
        Flash = new() { Settings = new() { Aperture = new() { FNumber = 4 * Math.Sqrt(2) }, Iso = new() { Speed = 100 } } },
    };

    // f/5.6 at half power, where the source of the example stands.
    private static SourceCalibration Calibrated() => new()
    {
        Reading = new() { Place = Origin(), Reading = Flash(), Power = new() { Fraction = "1/2" } },
    };
}
