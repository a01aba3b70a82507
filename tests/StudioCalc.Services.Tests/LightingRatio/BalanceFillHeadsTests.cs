using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Several fills, filters at hand, limits of the ISO, and the distance that takes up the rest.</summary>
public sealed class BalanceFillHeadsTests
{
    [Fact]
    public void FurtherFill_AsStrongAsTheFirst_AddsOneStopAndTurnsWithIt()
    {
        var request = Examples.Balance();
        var second = request.Fill.Clone();
        second.Power = new() { Fraction = "1/2" };
        request.FurtherFills.Add(second);
        var answer = Calls.LightingRatio.BalanceFill(request);
        Assert.Equal(0, answer.MeteredBackOverFillStops, 1e-12);
        var byPower = answer.Ways[0].Solution;
        Assert.Equal((-20, "1/32", "1/8"), (byPower.PowerSteps, byPower.Power.Fraction, Assert.Single(byPower.FurtherPowers).Fraction));
        Assert.Equal("f/4", byPower.FillMeters.Mark);
        var byShutter = answer.Ways[1].Solution;
        Assert.Equal(("1/30", "1/8", "1/2"), (byShutter.ShutterSpeed.Mark, byShutter.Power.Fraction, Assert.Single(byShutter.FurtherPowers).Fraction));
    }

    [Fact]
    public void FurtherFill_AtItsEnd_StopsAll()
    {
        var request = Examples.Balance();
        var second = request.Fill.Clone();
        (second.Power, second.LowestPower) = (new() { Fraction = "1/16" }, new() { Fraction = "1/32" });
        request.FurtherFills.Add(second);
        var way = Calls.LightingRatio.BalanceFill(request).Ways[0].NotReached;
        Assert.Equal((BalanceObstacle.LowestPower, "1/16", "1/32"), (way.Obstacle, way.Nearest.Power.Fraction, way.Nearest.FurtherPowers[0].Fraction));
        Assert.Equal(1, way.ShortfallStops, 1e-9);
    }

    [Fact]
    public void FurtherFill_HeadsOfTenthsAndThirds_TurnByWholeStops()
    {
        var request = Examples.Balance();
        request.BackOverFillStops = 2.4;
        var second = request.Fill.Clone();
        second.PowerScale = StopScale.Third;
        request.FurtherFills.Add(second);
        var solution = Calls.LightingRatio.BalanceFill(request).Ways[0].Solution;
        Assert.Equal((-20, -2.0), (solution.PowerSteps, Math.Round(solution.ChangeStops, 12)));
        Assert.Equal(0.4, solution.RestStops, 1e-9);
    }

    [Fact]
    public void FurtherFill_ThatIsNoFlashAlone_IsRefusedByItsPath()
    {
        var request = Examples.Balance();
        request.FurtherFills.Add(request.Fill.Clone());
        request.FurtherFills[0].Reading.Flash.IncludesAmbient = true;
        request.FurtherFills.Add(request.Fill.Clone());
        request.FurtherFills[1].Power = new() { Fraction = "1/3" };
        Assert.Equal(
            [("further_fills[0].reading.flash.includes_ambient", "CONFLICT"), ("further_fills[1].power.fraction", "UNKNOWN_MARK")],
            Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
    }

    [Fact]
    public void Filters_AtHand_TheWeakestThatIsEnoughIsPriced()
    {
        var request = FullPower();
        request.FiltersAtHand.Add(new Filter { Factor = 16 });
        request.FiltersAtHand.Add(new Filter { LossStops = 1 });
        request.FiltersAtHand.Add(new Filter { OpticalDensity = 0.9 });
        var dim = Dim(request);
        Assert.Equal((true, 2u), (dim.HasFilterIndex, dim.FilterIndex));
        Assert.Equal(-0.9 / Math.Log10(2), dim.ChangeStops, 1e-12);
        Assert.Equal(BalanceRemedy.ResultOneofCase.Solution, dim.ResultCase);
        Assert.Equal("1/2", dim.Solution.Power.Fraction);
    }

    [Fact]
    public void Filters_AllTooWeak_NoneIsNamedAndTheShortfallIsAsked()
    {
        var request = FullPower();
        request.FiltersAtHand.Add(new Filter { LossStops = 1.9 });
        var dim = Dim(request);
        Assert.False(dim.HasFilterIndex);
        Assert.Equal(-2, dim.ChangeStops, 1e-9);
    }

    [Fact]
    public void Iso_HeldBeyondTheCamera_IsRefused()
    {
        var request = Examples.Balance();
        request.Camera.LowestIso = new() { Mark = "200" };
        Assert.Equal([("camera.lowest_iso", "CONFLICT")], Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
        (request.Camera.LowestIso, request.Camera.HighestIso) = (null, new() { Mark = "64" });
        Assert.Equal([("camera.highest_iso", "CONFLICT")], Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
        request.Camera.HighestIso = new() { Mark = "100" };
        Assert.Empty(Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
    }

    [Fact]
    public void FastestShutterSpeed_SlowerThanTheSyncSpeed_IsRefused()
    {
        var request = Examples.Balance();
        request.Camera.FastestShutterSpeed = new() { Mark = "1/160" };
        Assert.Equal([("camera.fastest_shutter_speed", "CONFLICT")], Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
    }

    [Fact]
    public void WidestAperture_IsoRemedyGoesAsFarAsTheCamera()
    {
        var request = Examples.Balance();
        request.Camera.WidestAperture = new() { Mark = "f/11" };
        request.Camera.HighestIso = new() { Mark = "200" };
        var way = Calls.LightingRatio.BalanceFill(request).Ways[0].NotReached;
        Assert.Equal((BalanceObstacle.WidestAperture, 2.0), (way.Obstacle, Math.Round(way.ShortfallStops, 9)));
        var iso = Assert.Single(way.Remedies);
        Assert.Equal((BalanceRemedyKind.RaiseIso, 1.0, 1.0), (iso.Kind, iso.ChangeStops, Math.Round(iso.ShortfallStops, 9)));
    }

    [Fact]
    public void Rest_WorthAMove_IsToldAsADistance()
    {
        var request = Examples.Balance();
        request.Fill.PowerScale = StopScale.Whole;
        request.Fill.DistanceMm = 1000;
        request.BackOverFillStops = 2.3;
        var solution = Calls.LightingRatio.BalanceFill(request).Ways[0].Solution;
        Assert.Equal((-1, 0.3), (solution.PowerSteps, Math.Round(solution.RestStops, 9)));
        Assert.Equal(Math.Pow(2, 0.15), solution.RestDistanceFactor, 1e-9);
        Assert.Equal(1109.569472, solution.RestDistanceMm, 1e-6);
        request.BackOverFillStops = 2.04;
        solution = Calls.LightingRatio.BalanceFill(request).Ways[0].Solution;
        Assert.False(solution.HasRestDistanceFactor || solution.HasRestDistanceMm);
    }

    private static BalanceFillRequest FullPower()
    {
        var request = Examples.Balance();
        request.BackOverFillStops = -4;
        return request;
    }

    private static BalanceRemedy Dim(BalanceFillRequest request) => Calls.LightingRatio.BalanceFill(request).Ways[0].NotReached.Remedies
        .Single(remedy => remedy.Kind == BalanceRemedyKind.DimBackLight);
}
