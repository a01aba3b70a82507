using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>The sample of the documentation: a window at f/8, a fill at f/5.6, two stops wanted.</summary>
public sealed class BalanceFillExampleTests
{
    private static readonly BalanceFillResponse Answer = Calls.LightingRatio.BalanceFill(Examples.Balance());

    [Fact]
    public void AsMetered_TheBackLightIsOneStopOver() => Assert.Equal(1, Answer.MeteredBackOverFillStops, 1e-12);

    [Fact]
    public void PowerWay_TurnsTheHeadDownOneStop()
    {
        var way = Answer.Ways[0];
        var solution = way.Solution;
        Assert.Equal(BalanceVariable.FlashPower, way.Variable);
        Assert.Equal((-10, "1/16", 4.0, 0.0), (solution.PowerSteps, solution.Power.Fraction, solution.Power.BelowFullStops, solution.Power.OffsetStops));
        Assert.Equal(-1, solution.ChangeStops, 1e-12);
        Assert.Equal("f/4", solution.FillMeters.Mark);
        Assert.Equal(("f/5.6", "1/125", "100"), (solution.Aperture.Mark, solution.ShutterSpeed.Mark, solution.Iso.Mark));
        Figures(solution);
    }

    [Fact]
    public void ShutterWay_SlowsItOneStop()
    {
        var way = Answer.Ways[1];
        var solution = way.Solution;
        Assert.Equal(BalanceVariable.ShutterSpeed, way.Variable);
        Assert.Equal(("f/8", "1/60", "100"), (solution.Aperture.Mark, solution.ShutterSpeed.Mark, solution.Iso.Mark));
        Assert.Equal((0, "1/8", "f/5.6"), (solution.PowerSteps, solution.Power.Fraction, solution.FillMeters.Mark));
        Assert.Equal(1, solution.ChangeStops, 1e-12);
        Figures(solution);
    }

    private static void Figures(BalanceSolution solution)
    {
        Assert.Equal(1, solution.BackOverSettingStops, 1e-12);
        Assert.Equal(-1, solution.FillOverSettingStops, 1e-12);
        Assert.Equal(1.3219, solution.BothOverSettingStops, 5e-5);
        Assert.Equal(2, solution.BackOverFillStops, 1e-12);
        Assert.Equal(0, solution.RestStops, 1e-12);
        Assert.Equal(4, solution.Ratio.KeyToFill, 1e-12);
        Assert.Equal(5, solution.Ratio.KeyPlusFillToFill, 1e-12);
    }
}
