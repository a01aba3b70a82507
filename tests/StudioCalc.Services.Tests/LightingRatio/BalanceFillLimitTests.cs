using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class BalanceFillLimitTests
{
    [Fact]
    public void PowerWay_HeldShutterSpeedSlowerThanAllowed_IsNotReached()
    {
        var request = Examples.Balance();
        request.Camera.SlowestShutterSpeed = new() { Mark = "1/160" };
        var way = Calls.LightingRatio.BalanceFill(request).Ways[0].NotReached;
        Assert.Equal(BalanceObstacle.SlowestShutterSpeed, way.Obstacle);
        Assert.Equal(1 / 3.0, way.ShortfallStops, 1e-9);
        Assert.Equal("1/160", way.Nearest.ShutterSpeed.Mark);
        var remedy = Assert.Single(way.Remedies);
        Assert.Equal((BalanceRemedyKind.FasterShutterSpeed, "1/160"), (remedy.Kind, remedy.Solution.ShutterSpeed.Mark));
    }

    [Fact]
    public void ShutterWay_SyncSpeedBetweenMarks_IsNoObstacleToASlowerWish()
    {
        var request = Examples.Balance();
        request.Camera.SyncSpeed = new() { TimeS = 1 / 63.0 };
        var solution = Calls.LightingRatio.BalanceFill(request).Ways[1];
        Assert.Equal(BalanceWay.ResultOneofCase.NotReached, solution.ResultCase);
        request.BackOverFillStops += 0.03;
        solution = Calls.LightingRatio.BalanceFill(request).Ways[1];
        Assert.Equal(1 / 63.0, solution.Solution.ShutterSpeed.TimeS);
    }

    [Fact]
    public void FullPower_RemediesAreNamedAndPriced()
    {
        var request = Examples.Balance();
        request.BackOverFillStops = -4;
        request.Fill.DistanceMm = 1000;
        request.Preference.Clear();
        request.Preference.Add(BalanceVariable.FlashPower);
        var way = Calls.LightingRatio.BalanceFill(request).Ways[0].NotReached;
        Assert.Equal((BalanceObstacle.FullPower, "1/1"), (way.Obstacle, way.Nearest.Power.Fraction));
        Assert.Equal(2, way.ShortfallStops, 1e-9);
        Assert.Equal(
            [BalanceRemedyKind.FasterShutterSpeed, BalanceRemedyKind.MoveFlashCloser, BalanceRemedyKind.DimBackLight],
            way.Remedies.Select(remedy => remedy.Kind));
        Assert.Equal(4 / 3.0, way.Remedies[0].ShortfallStops, 1e-9);
        Assert.Equal((500.0, 0.5), (Math.Round(way.Remedies[1].DistanceMm, 6), Math.Round(way.Remedies[1].DistanceFactor, 9)));
        Assert.Equal(0, way.Remedies[1].Solution.RestStops, 1e-9);
        Assert.Equal(0, way.Remedies[2].Solution.RestStops, 1e-9);
    }
}
