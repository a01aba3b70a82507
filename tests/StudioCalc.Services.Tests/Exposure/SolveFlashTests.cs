using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SolveFlashTests
{
    [Fact]
    public void Power_BeyondFull_IsNotReachedAndEveryRemedyCoversIt()
    {
        var request = One(FlashUnknown.Power, guideNumberM: 8, distanceMm: 2000, "f/8");
        var answer = Calls.Exposure.SolveFlash(request).NotReached;
        Assert.Equal((FlashObstacle.FullPower, "1/1"), (answer.Obstacle, answer.Nearest.Power.Fraction));
        Assert.Equal(2, answer.ShortfallStops, 1e-9);
        Assert.Equal(-2, answer.Nearest.RestStops, 1e-9);
        Assert.Equal(
            [FlashRemedyKind.MoveCloser, FlashRemedyKind.MorePops, FlashRemedyKind.OpenAperture, FlashRemedyKind.RaiseIso],
            answer.Remedies.Select(remedy => remedy.Kind));
        Assert.All(answer.Remedies, remedy => Assert.Equal(FlashRemedy.ResultOneofCase.Solution, remedy.ResultCase));
        Assert.Equal(1000, answer.Remedies[0].Solution.DistanceMm, 1e-6);
        Assert.Equal(4u, answer.Remedies[1].Solution.Pops);
        Assert.Equal(("f/4", "400"), (answer.Remedies[2].Solution.Aperture.Mark, answer.Remedies[3].Solution.Iso.Mark));
    }

    [Fact]
    public void Power_BelowLowest_IsNotReachedAndNamesWhatDims()
    {
        var request = One(FlashUnknown.Power, guideNumberM: 64, distanceMm: 500, "f/4");
        var answer = Calls.Exposure.SolveFlash(request).NotReached;
        Assert.Equal((FlashObstacle.LowestPower, "1/128"), (answer.Obstacle, answer.Nearest.Power.Fraction));
        Assert.Equal(3, answer.ShortfallStops, 1e-9);
        Assert.Contains(answer.Remedies, remedy => remedy.Kind == FlashRemedyKind.FilterFlash && Math.Abs(remedy.ChangeStops + 3) < 1e-9);
        Assert.Contains(answer.Remedies, remedy => remedy.Kind == FlashRemedyKind.CloseAperture && remedy.Solution.Aperture.Mark == "f/11");
    }

    [Fact]
    public void Power_ListedPowers_GivesTheNearestOfThem()
    {
        var request = One(FlashUnknown.Power, guideNumberM: 16, distanceMm: 1000, "f/6.3");
        request.Powers.Add([new() { Fraction = "1/4" }, new() { Fraction = "1/16" }, new() { Fraction = "1/1" }]);
        var solution = Calls.Exposure.SolveFlash(request).Solution;
        Assert.Equal("1/4", solution.Power.Fraction);
        Assert.Equal(2 / 3.0, solution.RestStops, 1e-9);
    }

    [Theory]
    [InlineData(FlashUnknown.Distance)]
    [InlineData(FlashUnknown.Power)]
    [InlineData(FlashUnknown.GuideNumber)]
    public void OtherUnitsGiveTooMuch_FirstIsSwitchedOffAndTheOthersAreToBeTurnedDown(FlashUnknown unknown)
    {
        var request = One(unknown, guideNumberM: 16, distanceMm: 1000, "f/8");
        request.Units.Add(new FlashUnit { GuideNumberM = 16, DistanceMm = 1000 });
        var answer = Calls.Exposure.SolveFlash(request).NotReached;
        Assert.Equal(FlashObstacle.OtherUnits, answer.Obstacle);
        Assert.Equal(2, answer.ShortfallStops, 1e-9);
        Assert.False(answer.Nearest.HasDistanceMm || answer.Nearest.HasGuideNumberM || answer.Nearest.Power is not null);
        Assert.Equal(2, answer.Nearest.RestStops, 1e-9);
        var remedy = answer.Remedies[0];
        Assert.Equal((FlashRemedyKind.LowerOtherUnits, FlashRemedy.ResultOneofCase.Solution), (remedy.Kind, remedy.ResultCase));
        Assert.Equal(-3, remedy.ChangeStops, 1e-9);
        Assert.Equal(0, remedy.Solution.RestStops, 1e-9);
    }

    [Fact]
    public void Aperture_BeyondTheLens_IsNotReached()
    {
        var request = One(FlashUnknown.Aperture, guideNumberM: 64, distanceMm: 1000, null);
        request.Camera = new() { SmallestAperture = new() { Mark = "f/32" } };
        var answer = Calls.Exposure.SolveFlash(request).NotReached;
        Assert.Equal((FlashObstacle.SmallestAperture, "f/32"), (answer.Obstacle, answer.Nearest.Aperture.Mark));
        Assert.Equal(2, answer.ShortfallStops, 1e-9);
        Assert.Equal("1/4", answer.Remedies.Single(remedy => remedy.Kind == FlashRemedyKind.LowerPower).Solution.Power.Fraction);
    }

    [Fact]
    public void Iso_BeyondTheCamera_IsNotReached()
    {
        var request = One(FlashUnknown.Iso, guideNumberM: 8, distanceMm: 8000, "f/8");
        request.Camera = new() { HighestIso = new() { Mark = "1600" }, LowestIso = new() { Mark = "50" } };
        var answer = Calls.Exposure.SolveFlash(request).NotReached;
        Assert.Equal((FlashObstacle.HighestIso, "1600"), (answer.Obstacle, answer.Nearest.Iso.Mark));
        Assert.Equal(2, answer.ShortfallStops, 1e-9);
        request.Units[0].DistanceMm = 250;
        Assert.Equal(FlashObstacle.LowestIso, Calls.Exposure.SolveFlash(request).NotReached.Obstacle);
    }

    [Fact]
    public void Pops_TooManyOrLessThanHalfAPop_IsNotReached()
    {
        var request = One(FlashUnknown.Pops, guideNumberM: 8, distanceMm: 32000, "f/8");
        Assert.Equal(FlashObstacle.MostPops, Calls.Exposure.SolveFlash(request).NotReached.Obstacle);
        request.Units[0].DistanceMm = 500;
        var answer = Calls.Exposure.SolveFlash(request).NotReached;
        Assert.Equal((FlashObstacle.OnePop, 1u), (answer.Obstacle, answer.Nearest.Pops));
        Assert.Equal(2, answer.ShortfallStops, 1e-9);
    }

    [Fact]
    public void Request_WithTheSolvedFieldOrWithoutANeededOne_IsRefusedByField()
    {
        var request = One(FlashUnknown.Distance, guideNumberM: 16, distanceMm: 1000, "f/8");
        request.Units[0].DistanceMm = 1000;
        request.Units.Add(new FlashUnit());
        request.Iso = null;
        request.PowerScale = StopScale.Third;
        Assert.Equal(
            [
                ("power_scale", "CONFLICT"),
                ("units[0].distance_mm", "CONFLICT"),
                ("units[1].guide_number_m", "REQUIRED"),
                ("units[1].distance_mm", "REQUIRED"),
                ("iso", "REQUIRED"),
            ],
            Calls.Refused(() => Calls.Exposure.SolveFlash(request)));
    }

    [Fact]
    public void Request_PowerOutsideTheUnitsRange_IsRefused()
    {
        var request = One(FlashUnknown.Aperture, guideNumberM: 16, distanceMm: 1000, null);
        request.Units[0].Power = new() { BelowFullStops = 7.1 };
        Assert.Equal([("units[0].power", "CONFLICT")], Calls.Refused(() => Calls.Exposure.SolveFlash(request)));
        request.LowestPower = new() { BelowFullStops = 8 };
        Assert.Empty(Calls.Refused(() => Calls.Exposure.SolveFlash(request)));
    }

    private static SolveFlashRequest One(FlashUnknown unknown, double guideNumberM, double distanceMm, string? aperture)
    {
        var unit = new FlashUnit();
        if (unknown != FlashUnknown.GuideNumber)
        {
            unit.GuideNumberM = guideNumberM;
        }

        if (unknown != FlashUnknown.Distance)
        {
            unit.DistanceMm = distanceMm;
        }

        var request = new SolveFlashRequest { Unknown = unknown, Units = { unit } };
        request.Aperture = aperture is null ? null : new() { Mark = aperture };
        request.Iso = unknown == FlashUnknown.Iso ? null : new() { Mark = "100" };
        return request;
    }
}
