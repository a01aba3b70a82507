using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class BalanceTests
{
    private static NoTrail none;

    [Fact]
    public void Solve_ExampleByPower_TurnsTheHeadDownOneStop()
    {
        var outcome = Balance.Solve(Inputs.Example, BalanceVariable.FlashPower, ref none);
        Assert.Equal((BalanceObstacle.None, -10, 4.0), (outcome.Obstacle, outcome.PowerSteps, outcome.PowerBelowFullStops));
        Assert.Equal(1, outcome.BackOverSettingStops, 1e-12);
        Assert.Equal(-1, outcome.FillOverSettingStops, 1e-12);
    }

    [Fact]
    public void Solve_ReachedByAnyVariable_IsWithinHalfAStepOfTheAskedRatio() => Solved((input, variable, outcome) =>
    {
        if (outcome.Obstacle is BalanceObstacle.SyncSpeed or BalanceObstacle.SlowestShutterSpeed
            or BalanceObstacle.FullPower or BalanceObstacle.LowestPower)
        {
            return;
        }

        var perStop = variable == BalanceVariable.FlashPower ? input.PowerScale.StepsPerStop()
            : (input.Scale == StopScale.Tenth ? StopScale.Third : input.Scale).StepsPerStop();
        Assert.InRange(outcome.RestStops, -0.5 / perStop - 1e-9, 0.5 / perStop + 1e-9);
    });

    [Fact]
    public void Solve_AnyInput_FiguresFollowFromTheSettings() => Solved((input, variable, outcome) =>
    {
        var k = input.Back.ExposureValueIso100Stops + Math.Log2(outcome.ShutterSpeedS) - outcome.Fill.FlashValueIso100Stops;
        Assert.Equal(k, outcome.BackOverFillStops, 1e-9);
        Assert.Equal(k, outcome.BackOverSettingStops - outcome.FillOverSettingStops, 1e-9);
        Assert.Equal(input.BackOverFillStops - k, outcome.RestStops, 1e-9);
        Assert.Equal(Math.Pow(2, k), outcome.Ratio.KeyToFill, 1e-9 * Math.Pow(2, Math.Abs(k)));
        Assert.Equal(outcome.Ratio.KeyToFill + 1, outcome.Ratio.KeyPlusFillToFill);
        Assert.Equal(
            Math.Pow(2, outcome.BothOverSettingStops),
            Math.Pow(2, outcome.BackOverSettingStops) + Math.Pow(2, outcome.FillOverSettingStops),
            1e-6 * Math.Pow(2, outcome.BothOverSettingStops));
    });

    [Fact]
    public void Solve_AnyInput_NeverExceedsALimit() => Solved((input, variable, outcome) =>
    {
        Assert.InRange(Math.Log2(outcome.ShutterSpeedS / input.SyncSpeedS), -1e-9, double.MaxValue);
        Assert.InRange(Math.Log2(input.SlowestShutterSpeedS / outcome.ShutterSpeedS), -1e-9, double.PositiveInfinity);
        Assert.InRange(outcome.PowerBelowFullStops, 0, input.LowestPowerBelowFullStops + 1e-9);
        Assert.InRange(outcome.FNumber, input.WidestFNumber, input.SmallestFNumber);
        var set = Math.Pow(2, (outcome.Fill.FlashValueIso100Stops - input.LensLossStops - outcome.FillOverSettingStops) / 2);
        Assert.InRange(set, input.WidestFNumber * (1 - 1e-9), input.SmallestFNumber * (1 + 1e-9));
    });

    [Fact]
    public void Solve_AnyInput_ShortfallIsPositiveExactlyWhenSomethingStandsInTheWay() => Solved((input, variable, outcome) =>
        Assert.True(
            outcome.Obstacle == BalanceObstacle.None ? outcome.ShortfallStops == 0 : outcome.ShortfallStops > 0,
            $"{outcome.Obstacle} {outcome.ShortfallStops}"));

    [Fact]
    public void Solve_ALensLoss_NeverChangesTheRatio() => Gen.Select(Inputs.Any, Inputs.AnyVariable, Gen.Double[0, 10]).Sample(
        (input, variable, more) =>
        {
            var with = Balance.Solve(input with { LensLossStops = input.LensLossStops + more }, variable, ref none);
            var without = Balance.Solve(input, variable, ref none);
            Assert.Equal(without.BackOverFillStops, with.BackOverFillStops);
            Assert.Equal(without.ShutterSpeedS, with.ShutterSpeedS);
            Assert.Equal(without.PowerSteps, with.PowerSteps);
        });

    [Fact]
    public void Solve_AStrongerFlash_EqualsAskingThatMuchLess() => Gen.Select(Inputs.Any, Gen.Double[-3, 3]).Sample((input, x) =>
    {
        var stronger = Balance.Solve(input with { Fill = new(input.Fill.FlashValueIso100Stops + x) }, BalanceVariable.ShutterSpeed, ref none);
        var asked = Balance.Solve(input with { BackOverFillStops = input.BackOverFillStops + x }, BalanceVariable.ShutterSpeed, ref none);
        if (Tie(input, stronger) || Tie(input, asked))
        {
            return;
        }

        Assert.Equal(asked.ShutterSpeedS, stronger.ShutterSpeedS, 1e-9 * asked.ShutterSpeedS);
        Assert.Equal(asked.RestStops, stronger.RestStops, 1e-9);
        Assert.Equal(asked.BackOverFillStops - x, stronger.BackOverFillStops, 1e-9);
    });

    [Fact]
    public void Solve_AskingMoreBackLight_NeverTurnsTheFlashUpNorTheShutterFaster() =>
        Gen.Select(Inputs.Any, Gen.Double[0, 3]).Sample((input, more) =>
        {
            var higher = input with { BackOverFillStops = input.BackOverFillStops + more };
            Assert.True(
                Balance.Solve(higher, BalanceVariable.FlashPower, ref none).PowerSteps
                <= Balance.Solve(input, BalanceVariable.FlashPower, ref none).PowerSteps);
            Assert.True(
                Balance.Solve(higher, BalanceVariable.ShutterSpeed, ref none).ShutterSpeedS
                >= Balance.Solve(input, BalanceVariable.ShutterSpeed, ref none).ShutterSpeedS);
        });

    [Fact]
    public void Solve_WithoutATrail_AllocatesTheOutcomeAlone()
    {
        var trail = StepTrail.Start();
        Balance.Solve(Inputs.Example, BalanceVariable.FlashPower, ref trail);
        const int calls = 1000;
        Measure(calls);
        var each = Measure(calls) / calls;
        var before = GC.GetAllocatedBytesForCurrentThread();
        Balance.Solve(Inputs.Example, BalanceVariable.FlashPower, ref trail);
        var withTrail = GC.GetAllocatedBytesForCurrentThread() - before;

        // An outcome is a header, 13 figures of up to 8 bytes and a ratio of 16; marks are records of the series.
        Assert.InRange(each, 1, 320);
        Assert.True(withTrail > 4 * each, $"{withTrail} with a trail, {each} without");
    }

    private static long Measure(int calls)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < calls; i++)
        {
            Balance.Solve(Inputs.Example, BalanceVariable.FlashPower, ref none);
        }

        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    // Halfway between two marks, the last bit of a sum decides.
    private static bool Tie(BalanceInput input, BalanceOutcome outcome)
    {
        var steps = outcome.RestStops * (input.Scale == StopScale.Tenth ? StopScale.Third : input.Scale).StepsPerStop();
        return Math.Abs(Math.Abs(steps) - 0.5) < 1e-6;
    }

    private static void Solved(Action<BalanceInput, BalanceVariable, BalanceOutcome> check) =>
        Gen.Select(Inputs.Any, Inputs.AnyVariable).Sample(
            (input, variable) => check(input, variable, Balance.Solve(input, variable, ref none)), iter: 20_000);
}
