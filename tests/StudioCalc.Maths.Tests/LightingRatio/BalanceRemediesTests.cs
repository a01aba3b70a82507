using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class BalanceRemediesTests
{
    private static NoTrail none;

    [Fact]
    public void For_AnyObstacle_EveryOutcomeIsTheChangedInputSolvedAgain() => Remedies((_, variable, _, remedy) =>
        Assert.Equal(Balance.Solve(remedy.Input, variable, ref none), remedy.Outcome));

    [Fact]
    public void For_AnyObstacle_TheKindSaysWhichWayTheLightGoes() => Remedies((_, _, _, remedy) =>
    {
        var more = remedy.Kind is BalanceRemedyKind.RaiseFlashPower or BalanceRemedyKind.MoveFlashCloser
            or BalanceRemedyKind.BrightenBackLight or BalanceRemedyKind.SlowerShutterSpeed or BalanceRemedyKind.RaiseIso
            or BalanceRemedyKind.UnfilterLens;
        Assert.True(more ? remedy.ChangeStops > 0 : remedy.ChangeStops < 0, $"{remedy.Kind} {remedy.ChangeStops}");
    });

    [Fact]
    public void For_AnyObstacle_NoRemedyMakesTheSameObstacleWorse() => Remedies((_, _, outcome, remedy) =>
    {
        if (remedy.Outcome.Obstacle == outcome.Obstacle)
        {
            Assert.InRange(remedy.Outcome.ShortfallStops, 0, outcome.ShortfallStops + 1e-9);
        }
    });

    [Fact]
    public void For_AnyObstacle_NoInputLeavesItsOwnLimits() => Remedies((_, _, _, remedy) =>
    {
        Assert.InRange(remedy.Input.PowerBelowFullStops, 0, remedy.Input.LowestPowerBelowFullStops + 1e-9);
        Assert.InRange(remedy.Input.LensLossStops, -1e-9, double.MaxValue);
    });

    [Fact]
    public void For_FlashThatMoves_DistanceFollowsTheInverseSquare() => Remedies((_, _, _, remedy) =>
    {
        if (remedy.DistanceFactor is { } factor)
        {
            Assert.Equal(remedy.ChangeStops, -2 * Math.Log2(factor), 1e-9);
        }
        else
        {
            Assert.False(remedy.Kind is BalanceRemedyKind.MoveFlashCloser or BalanceRemedyKind.MoveFlashAway);
        }
    });

    [Fact]
    public void For_AReachedRatio_AreNone() => Assert.Empty(BalanceRemedies.For(
        Inputs.Example, BalanceVariable.FlashPower, Balance.Solve(Inputs.Example, BalanceVariable.FlashPower, ref none)));

    [Fact]
    public void For_EveryObstacle_ThereIsARemedyInTheSample()
    {
        var helped = new System.Collections.Concurrent.ConcurrentDictionary<BalanceObstacle, bool>();
        Remedies((_, _, outcome, _) => helped.TryAdd(outcome.Obstacle, true));
        Assert.Equal(
            Enum.GetValues<BalanceObstacle>().Where(obstacle => obstacle != BalanceObstacle.None).Order(), helped.Keys.Order());
    }

    private static void Remedies(Action<BalanceInput, BalanceVariable, BalanceOutcome, BalanceRemedy> check) =>
        Gen.Select(Inputs.Any, Inputs.AnyVariable).Sample(
            (input, variable) =>
            {
                var outcome = Balance.Solve(input, variable, ref none);
                foreach (var remedy in BalanceRemedies.For(input, variable, outcome))
                {
                    check(input, variable, outcome, remedy);
                }
            },
            iter: 10_000);
}
