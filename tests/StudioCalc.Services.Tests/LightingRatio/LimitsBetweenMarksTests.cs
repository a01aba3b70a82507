using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>A limit that lies between marks: no answer shows a mark beyond it.</summary>
public sealed class LimitsBetweenMarksTests
{
    [Fact]
    public async Task BalanceFill_SyncSpeedBetweenMarks_ShowsNoFasterMark()
    {
        var request = Examples.Balance();
        request.BackOverFillStops = -2;
        request.Camera.SyncSpeed = new() { TimeS = 1 / 190.0 };
        request.Preference.Clear();
        request.Preference.Add(BalanceVariable.ShutterSpeed);

        var answer = await new LightingRatioAdapter().BalanceFill(request, null!);

        var nearest = answer.Ways[0].NotReached.Nearest.ShutterSpeed;
        Assert.Equal(1 / 190.0, nearest.TimeS, 1e-12);
        Assert.False(nearest.HasMark);
    }

    [Fact]
    public async Task BalanceFill_WidestApertureBetweenMarks_ShowsNoWiderMark()
    {
        var request = Examples.Balance();
        request.Camera.WidestAperture = new() { FNumber = 5.7 };

        var answer = await new LightingRatioAdapter().BalanceFill(request, null!);

        var nearest = answer.Ways[0].NotReached.Nearest.Aperture;
        Assert.Equal(5.7, nearest.FNumber, 1e-12);
        Assert.False(nearest.HasMark);
    }
}
