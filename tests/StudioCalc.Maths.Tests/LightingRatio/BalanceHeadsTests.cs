using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Several heads, filters at hand, limits of the ISO, and heads of coarse steps.</summary>
public sealed class BalanceHeadsTests
{
    private static readonly Gen<FlashHead> AnyHead =
        from power in Gen.Double[0, 7]
        from room in Gen.Double[0, 3]
        from scale in Gen.OneOf(Enum.GetValues<StopScale>())
        select new FlashHead(power, power + room, scale);

    private static NoTrail none;

    [Theory]
    [InlineData(StopScale.Whole, 2.3, -1, 0.3)]
    [InlineData(StopScale.Third, 2.3, -4, -1 / 30.0)]
    [InlineData(StopScale.Half, 2.3, -3, -0.2)]
    [InlineData(StopScale.Tenth, 2.3, -13, 0)]
    public void Solve_HeadOfCoarseSteps_GoesToTheNearestAndTellsTheRest(StopScale scale, double asked, int steps, double rest)
    {
        var outcome = Balance.Solve(Inputs.Example with { PowerScale = scale, BackOverFillStops = asked }, BalanceVariable.FlashPower, ref none);
        Assert.Equal((BalanceObstacle.None, steps), (outcome.Obstacle, outcome.PowerSteps));
        Assert.Equal(rest, outcome.RestStops, 1e-9);
        Assert.Equal(Math.Abs(rest) >= 0.05 ? Math.Pow(2, rest / 2) : 0, outcome.RestDistanceFactor ?? 0, 1e-9);
    }

    [Fact]
    public void Solve_AtTheRestDistance_NothingIsLeft() => Gen.Select(Inputs.Any, Inputs.AnyVariable).Sample((input, variable) =>
    {
        var outcome = Balance.Solve(input, variable, ref none);
        Assert.Equal(outcome.Obstacle == BalanceObstacle.None && Math.Abs(outcome.RestStops) >= 0.05, outcome.RestDistanceFactor is not null);
        if (outcome.RestDistanceFactor is { } factor)
        {
            var moved = outcome.Fill.FlashValueIso100Stops - 2 * Math.Log2(factor);
            Assert.Equal(input.BackOverFillStops, input.Back.ExposureValueIso100Stops + Math.Log2(outcome.ShutterSpeedS) - moved, 1e-9);
        }
    });

    [Fact]
    public void Solve_SeveralHeads_AllTurnAlikeWithinTheirEndsBySharedSteps() => Gen.Select(Inputs.Any, AnyHead.Array[1, 7]).Sample((input, heads) =>
    {
        var outcome = Balance.Solve(input with { FurtherHeads = heads }, BalanceVariable.FlashPower, ref none);
        var first = new FlashHead(input.PowerBelowFullStops, input.LowestPowerBelowFullStops, input.PowerScale);
        foreach (var head in heads.Append(first))
        {
            Assert.InRange(head.PowerBelowFullStops - outcome.PowerChangeStops, -1e-9, head.LowestPowerBelowFullStops + 1e-9);
            var steps = outcome.PowerChangeStops * head.PowerScale.StepsPerStop();
            Assert.Equal(Math.Round(steps), steps, 1e-9);
        }

        Assert.Equal(Math.Round(outcome.PowerChangeStops * input.PowerScale.StepsPerStop()), outcome.PowerSteps);
    });

    [Fact]
    public void Solve_ASecondHeadAtFull_StandsInTheWayOfMorePower()
    {
        var input = Inputs.Example with { BackOverFillStops = 0, FurtherHeads = [new(0, 7, StopScale.Tenth)] };
        var outcome = Balance.Solve(input, BalanceVariable.FlashPower, ref none);
        Assert.Equal((BalanceObstacle.FullPower, 1.0, 0.0), (outcome.Obstacle, outcome.ShortfallStops, outcome.PowerChangeStops));
        Assert.Equal(BalanceObstacle.None, Balance.Solve(input with { FurtherHeads = [new(1, 7, StopScale.Tenth)] }, BalanceVariable.FlashPower, ref none).Obstacle);
    }

    [Fact]
    public void Remedies_OfSeveralHeads_LeaveEveryHeadWithinItsEnds() => Gen.Select(Inputs.Any, Inputs.AnyVariable, AnyHead.Array[1, 7]).Sample((input, variable, heads) =>
    {
        var several = input with { FurtherHeads = heads };
        foreach (var remedy in BalanceRemedies.For(several, variable, Balance.Solve(several, variable, ref none)))
        {
            foreach (var (before, after) in heads.Zip(remedy.Input.FurtherHeads))
            {
                Assert.InRange(after.PowerBelowFullStops, 0, after.LowestPowerBelowFullStops + 1e-9);
                Assert.Equal(
                    remedy.Input.PowerBelowFullStops - input.PowerBelowFullStops, after.PowerBelowFullStops - before.PowerBelowFullStops, 1e-9);
            }
        }
    });

    [Fact]
    public void Remedies_WithFilters_TakeTheWeakestThatIsEnoughAndAllThatItTakes() =>
        Gen.Select(Inputs.Any, Inputs.AnyVariable, Gen.Double[0, 6].Array[0, 6]).Sample((input, variable, filters) =>
        {
            var outcome = Balance.Solve(input, variable, ref none);
            var remedies = BalanceRemedies.For(input with { FiltersAtHandStops = filters }, variable, outcome);
            foreach (var remedy in remedies)
            {
                var enough = filters.Where(taken => taken >= outcome.ShortfallStops - 1e-9).ToList();
                if (remedy.Kind is not (BalanceRemedyKind.FilterLens or BalanceRemedyKind.DiffuseFlash or BalanceRemedyKind.DimBackLight))
                {
                    Assert.Null(remedy.FilterIndex);
                }
                else if (enough.Count == 0)
                {
                    Assert.Null(remedy.FilterIndex);
                    Assert.Equal(-outcome.ShortfallStops, remedy.ChangeStops);
                }
                else
                {
                    Assert.Equal(enough.Min(), filters[remedy.FilterIndex!.Value]);
                    Assert.Equal(-enough.Min(), remedy.ChangeStops);
                    Assert.Equal(Balance.Solve(remedy.Input, variable, ref none), remedy.Outcome);
                }
            }
        });

    [Fact]
    public void Remedies_ByIso_StayWithinTheCamera() => Gen.Select(Inputs.Any, Inputs.AnyVariable, Gen.Double[0, 3], Gen.Double[0, 3]).Sample((input, variable, down, up) =>
    {
        var limited = input with { LowestIso = input.Iso * Math.Pow(2, -down), HighestIso = input.Iso * Math.Pow(2, up) };
        foreach (var remedy in BalanceRemedies.For(limited, variable, Balance.Solve(limited, variable, ref none)))
        {
            Assert.InRange(remedy.Input.Iso, limited.LowestIso, limited.HighestIso);
        }
    });

    [Fact]
    public void Remedies_IsoAtItsEnd_IsNotOffered()
    {
        var input = Inputs.Example with { Back = new(19), BackOverFillStops = 2, Fill = new(11), LowestIso = 100 };
        var outcome = Balance.Solve(input, BalanceVariable.FlashPower, ref none);
        Assert.Equal(BalanceObstacle.SmallestAperture, outcome.Obstacle);
        Assert.Equal([BalanceRemedyKind.FilterLens], BalanceRemedies.For(input, BalanceVariable.FlashPower, outcome).Select(remedy => remedy.Kind));
        Assert.Equal(
            [BalanceRemedyKind.LowerIso, BalanceRemedyKind.FilterLens],
            BalanceRemedies.For(input with { LowestIso = 50 }, BalanceVariable.FlashPower, outcome).Select(remedy => remedy.Kind));
    }
}
