using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class PlanFillTests
{
    public static TheoryData<string, string, Action<PlanFillRequest>> Bad => new()
    {
        { "source.calibration", "REQUIRED", request => request.Source.Calibration = null },
        { "source.calibration.luminance_cd_per_m2", "CONFLICT", request => request.Source.Calibration = new() { LuminanceCdPerM2 = 100 } },
        { "source.calibration.reading.reading.continuous", "CONFLICT", request =>
        {
            request.Source.Calibration.Reading.Reading = new() { Continuous = new() { IlluminanceLx = 100 } };
            request.Source.Calibration.Reading.Power = null;
        } },
        { "source.calibration.reading.power", "REQUIRED", request => request.Source.Calibration.Reading.Power = null },
        { "source.calibration.reading.power.fraction", "UNKNOWN_MARK", request => request.Source.Calibration.Reading.Power.Fraction = "1/3" },
        { "power_steps.highest_power", "CONFLICT", request => request.PowerSteps.HighestPower = new() { Fraction = "1/32" } },
        { "power_steps.lowest_power", "CONFLICT", request =>
        {
            request.PowerSteps.LowestPower = new() { BelowFullStops = 1.9 };
            request.PowerSteps.HighestPower = new() { BelowFullStops = 1.1 };
        } },
        { "power_list.powers[1].fraction", "UNKNOWN_MARK", request => request.PowerList = new()
        {
            Powers = { new FlashPower { Fraction = "1/2" }, new FlashPower { Fraction = "2" } },
        } },
        { "distances.farthest_mm", "OUT_OF_RANGE", request => request.Distances.FarthestMm = 599 },
        { "reading.continuous", "CONFLICT", request => request.Reading = new() { Continuous = new() { IlluminanceLx = 100 } } },
        { "under.shutter_speed", "REQUIRED", request => request.Under.Reading = new() { Continuous = new() { IlluminanceLx = 100 } } },
        { "under.shutter_speed", "CONFLICT", request =>
        {
            request.Under.Reading = Flash(8);
            request.Under.ShutterSpeed = new() { Mark = "1/60" };
        } },
        { "under.reading.flash.receptor", "CONFLICT", request =>
        {
            request.Under.Reading = Flash(8);
            request.Under.Reading.Flash.Receptor = Receptor.Dome;
        } },
        { "under.reading.continuous.receptor", "CONFLICT", request => request.Under.Reading.Continuous.Receptor = Receptor.Reflected },
        { "receiver.source_index", "OUT_OF_RANGE", request => request.Receiver = new() { Place = new() { XMm = 0, YMm = 0, ZMm = 0 }, SourceIndex = 2 } },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Request_WithABadField_IsRefusedByName(string field, string reason, Action<PlanFillRequest> change) =>
        Assert.Contains((field, reason), Calls.Refused(() => Plan(change)));

    [Fact]
    public void PublishedExample_HasTwoWays_AndThreePowersTooFarAway()
    {
        var answer = Plan(_ => { });
        Assert.Equal([("1/16", 1000.0), ("1/8", 1487.9)], answer.Plan.Ways.Select(way => (way.Power.Fraction, Math.Round(way.Place.DistanceMm, 1))));
        Assert.Equal(["1/1", "1/2", "1/4"], answer.LeftOut.Select(pair => pair.Way.Power.Fraction));
        Assert.All(answer.LeftOut, pair => Assert.Equal(FillObstacle.FarthestDistance, pair.Obstacle));
        Check(answer.Plan.Ways[0], 1000, 1000, 958, 1043, 48.5, 0.574, 0.862);
        Check(answer.Plan.Ways[1], 1488, 1414, 1432, 1545, 33.7, 0.428, 0.643);
        Check(answer.LeftOut[2].Way, 2155, 2000, 2078, 2234, 23.6, 0.310, 0.465);
        Assert.Equal(0.13, answer.Plan.Ways[1].Place.InverseSquareOverStops, 0.005);
        Assert.Equal(40, answer.TargetLxS, 1e-9);
        Assert.Equal("f/4", answer.TargetMeters.Mark);
        Assert.Equal(0, answer.TargetMeters.RestStops, 1e-9);

        static void Check(FillWay way, double distance, double inverse, double near, double far, double subtense, double aimed, double flat)
        {
            Assert.Equal(distance, way.Place.DistanceMm, 0.5);
            Assert.Equal(inverse, way.Place.InverseSquareDistanceMm, 0.5);
            Assert.Equal(near, way.Place.BandNearMm, 0.51);
            Assert.Equal(far, way.Place.BandFarMm, 0.5);
            Assert.Equal(subtense, way.SubtenseAcrossDeg, 0.05);
            Assert.Equal(subtense, way.SubtenseUpDeg, 0.05);
            Assert.Equal(aimed, way.FallOffAimedStops, 0.0005);
            Assert.Equal(flat, way.FallOffFlatStops, 0.00051);
            Assert.Equal(0, way.FallOffSidewaysStops, 1e-12);
        }
    }

    [Fact]
    public void PublishedExample_WithOneThirtySecond_AlsoFitsAtSixtyThreeCentimetres()
    {
        var answer = Plan(request => request.PowerSteps.LowestPower.Fraction = "1/32");
        Assert.Equal(3, answer.Plan.Ways.Count);
        Assert.Equal("1/32", answer.Plan.Ways[0].Power.Fraction);
        Assert.Equal(626.969, answer.Plan.Ways[0].Place.DistanceMm, 1e-3);
        Assert.True(answer.Plan.Ways[0].LowestMm < 0);
        Assert.Equal("plan.ways[0]", Assert.Single(answer.Advisories, advisory => advisory.Code == AdvisoryCode.FaceBelowTable).Field);
    }

    [Theory]
    [InlineData(FillPreference.Softer, "1/16")]
    [InlineData(FillPreference.MoreEven, "1/8")]
    [InlineData(FillPreference.LeastMovement, "1/16")]
    public void Preference_OrdersTheWays(FillPreference preference, string first) =>
        Assert.Equal(first, Plan(request => request.Preference = preference).Plan.Ways[0].Power.Fraction);

    [Fact]
    public void Ties_GoToTheLowerPower()
    {
        var answer = Plan(request =>
        {
            request.DistanceList = new() { DistancesMm = { 1000 } };
            request.BandStops = 1.05;
        });
        Assert.Equal(["1/16", "1/8"], answer.Plan.Ways.Select(way => way.Power.Fraction).Order(StringComparer.Ordinal));
        Assert.Equal("1/16", answer.Plan.Ways[0].Power.Fraction);
        Assert.Equal(1, answer.Plan.Ways[1].Place.OverWantedStops, 1e-9);
    }

    [Fact]
    public void ListedDistances_ServeWithinTheBand_AndTellTheRest()
    {
        var answer = Plan(request => request.DistanceList = new() { DistancesMm = { 1030, 1500, 1700, 1500 } });
        Assert.Equal([("1/16", 1030.0), ("1/8", 1500.0)], answer.Plan.Ways.Select(way => (way.Power.Fraction, way.Place.DistanceMm)));
        Assert.All(answer.Plan.Ways, way => Assert.InRange(way.Place.OverWantedStops, -0.1, 0));
        Assert.All(answer.LeftOut, pair => Assert.Equal(FillObstacle.ListedDistances, pair.Obstacle));
        Assert.Equal(3, answer.LeftOut.Count);
    }

    [Fact]
    public void Directions_EachGetTheirWays()
    {
        var answer = Plan(request =>
        {
            request.Directions.Add(new FillDirection { ElevationDeg = 30 });
            request.Directions.Add(new FillDirection { ElevationDeg = 45, AzimuthDeg = -90 });
            request.Preference = FillPreference.LeastMovement;
        });
        Assert.Equal([(30.0, 0.0), (30, 0), (45, -90), (45, -90)], answer.Plan.Ways.Select(way => (Math.Round(way.ElevationDeg, 6), Math.Round(way.AzimuthDeg, 6))).Order());
        Assert.Equal(0, answer.Plan.Ways[0].MovementMm, 1e-6);
        var left = answer.Plan.Ways.First(way => way.AzimuthDeg < -1);
        Assert.True(left.Place.Position.XMm < 0);
        Assert.True(left.FallOffSidewaysStops < -0.1);
        Assert.Equal(0, left.FallOffFlatStops, 1e-9);
    }

    [Fact]
    public void Limits_LeaveOutWhatMissesThem()
    {
        var small = Plan(request => request.LeastSubtenseDeg = 40);
        Assert.Equal("1/16", Assert.Single(small.Plan.Ways).Power.Fraction);
        Assert.Equal(FillObstacle.Subtense, small.LeftOut.Single(pair => pair.Way.Power.Fraction == "1/8").Obstacle);
        var steep = Plan(request => request.LargestFallOffStops = 0.7);
        Assert.Equal("1/8", Assert.Single(steep.Plan.Ways).Power.Fraction);
        Assert.Equal(FillObstacle.FallOff, steep.LeftOut.Single(pair => pair.Way.Power.Fraction == "1/16").Obstacle);
    }

    [Fact]
    public void NothingKeepsTheLimit_IsNotReached_AndEasingItServes()
    {
        var answer = Plan(request => request.LargestFallOffStops = 0.6).NotReached;
        Assert.Equal(FillObstacle.FallOff, answer.Obstacle);
        Assert.Equal(0, answer.ShortfallStops);
        Assert.Equal("1/16", answer.Nearest.Power.Fraction);
        var remedy = answer.Remedies.Single(one => one.Kind == FillRemedyKind.EaseLimit);
        Assert.Equal(1000, remedy.Way.Place.DistanceMm, 1e-6);

        // A quarter of the power further away would keep the limit.
        Assert.Equal("1/4", answer.Remedies.Single(one => one.Kind == FillRemedyKind.AllowFurther).Way.Power.Fraction);
    }

    [Fact]
    public void TooBrightEverywhere_IsNotReached_AndEachRemedyServes()
    {
        var answer = Plan(OnlyEighth);
        Assert.Equal(FillObstacle.FarthestDistance, answer.NotReached.Obstacle);
        Assert.Equal(1400, answer.NotReached.Nearest.Place.DistanceMm);
        Assert.Equal(0.1594, answer.NotReached.ShortfallStops, 1e-3);
        Assert.Equal([FillRemedyKind.AllowFurther, FillRemedyKind.DiffuseFlash], answer.NotReached.Remedies.Select(remedy => remedy.Kind));
        Assert.Equal(1487.9346, answer.NotReached.Remedies[0].Way.Place.DistanceMm, 1e-3);
        Assert.Equal(-answer.NotReached.ShortfallStops, answer.NotReached.Remedies[1].ChangeStops, 1e-6);
        Assert.Equal(1400, answer.NotReached.Remedies[1].Way.Place.DistanceMm, 1e-3);
        var again = Plan(request =>
        {
            OnlyEighth(request);
            request.Distances.FarthestMm = answer.NotReached.Remedies[0].Way.Place.DistanceMm;
        });
        Assert.Equal("1/8", again.Plan.Ways[0].Power.Fraction);

        static void OnlyEighth(PlanFillRequest request)
        {
            request.PowerList = new() { Powers = { new FlashPower { Fraction = "1/8" } } };
            request.Distances.FarthestMm = 1400;
        }
    }

    [Fact]
    public void TooDarkEverywhere_IsNotReached_AndAHigherIsoServes()
    {
        var answer = Plan(request =>
        {
            request.PowerList = new() { Powers = { new FlashPower { Fraction = "1/64" }, new FlashPower { Fraction = "1/128" } } };
            request.Under.UnderStops = 0;
        });
        Assert.Equal(FillObstacle.HighestPower, answer.NotReached.Obstacle);
        Assert.Equal(600, answer.NotReached.Nearest.Place.DistanceMm);
        Assert.Equal("1/64", answer.NotReached.Nearest.Power.Fraction);
        var iso = Assert.Single(answer.NotReached.Remedies);
        Assert.Equal(FillRemedyKind.RaiseIso, iso.Kind);
        Assert.Equal(-answer.NotReached.ShortfallStops, iso.ChangeStops, 1e-6);
    }

    [Fact]
    public void LowestPowerTooBrightAtAnyDistance_NamesTheLowestPower()
    {
        var answer = Plan(request =>
        {
            request.PowerSteps = new() { Scale = StopScale.Whole, LowestPower = new() { BelowFullStops = 0 } };
            request.Reading = Flash(0.1);
        });
        Assert.Equal(FillObstacle.LowestPower, answer.NotReached.Obstacle);
        Assert.Equal(1800, answer.NotReached.Nearest.Place.DistanceMm);
    }

    [Fact]
    public void ReceiverThatFacesAway_IsDark()
    {
        var answer = Plan(request =>
        {
            request.Receiver = new() { Place = new() { XMm = 0, YMm = 0, ZMm = 0 }, AimPoint = new() { XMm = 0, YMm = 866.0254037844386, ZMm = -500 } };
        });
        Assert.Equal(FillObstacle.Dark, answer.NotReached.Obstacle);
        Assert.Null(answer.NotReached.Nearest);
        Assert.Empty(answer.NotReached.Remedies);
        Assert.Equal("target_lx_s", answer.Working[^1].AnswerField);
    }

    [Theory]
    [InlineData("1/60", 40)]
    [InlineData("1/30", 80)]
    public void Under_AtAnotherShutterSpeed_FollowsTheDaylight(string mark, double targetLxS) =>
        Assert.Equal(targetLxS, Plan(request => request.Under.ShutterSpeed = new() { Mark = mark }).TargetLxS, 1e-9);

    [Fact]
    public void Under_IlluminanceOrFlash_IsTheSameTarget()
    {
        var exact = Plan(request =>
        {
            request.Under.Reading = new() { Continuous = new() { IlluminanceLx = 160 * 64 } };
            request.Under.ShutterSpeed = new() { TimeS = 1 / 64.0 };
        });
        Assert.Equal(40, exact.TargetLxS, 1e-9);
        Assert.Equal(40, Plan(request => request.Under.Reading = Flash(8)).TargetLxS, 1e-9);
    }

    [Fact]
    public void Meters_AreToldAtTheIsoOfTheCalibration()
    {
        var answer = Plan(request => request.Source.Calibration.Reading.Reading.Flash.Settings.Iso.Mark = "400");
        Assert.Equal(8, answer.TargetMeters.FNumber, 1e-9);
    }

    private static PlanFillResponse Plan(Action<PlanFillRequest> change)
    {
        var request = Examples.PlanFill();
        change(request);
        return Calls.FillPlacement.PlanFill(request);
    }

    private static Reading Flash(double fNumber) => new()
    {
        Flash = new() { Settings = new() { Aperture = new() { FNumber = Math.Max(fNumber, 0.5) }, Iso = new() { Speed = fNumber < 0.5 ? 100000 : 100 } } },
    };
}
