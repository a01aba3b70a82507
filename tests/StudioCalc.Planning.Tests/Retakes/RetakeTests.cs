using CsCheck;
using MathNet.Numerics.Distributions;
using StudioCalc.Maths;
using Bin = MathNet.Numerics.Distributions.Binomial;

namespace StudioCalc.Planning.Tests;

public sealed class RetakeTests
{
    [Fact]
    public void Split_OfTries_IsThatOfALibrary() => Gen.Select(Gen.Int[1, 400], Gen.Double[0.001, 0.999]).Sample((n, p) =>
    {
        var k = n / 2;
        var (fewer, atLeast) = Binomial.Split(n, p, k);
        Assert.Equal(1, fewer + atLeast, 1e-12);
        Assert.Equal(k == 0 ? 0 : Bin.CDF(p, n, k - 1), fewer, 1e-9);
    });

    [Fact]
    public void Split_OfCertainTries_IsCertain()
    {
        Assert.Equal((0, 1), Binomial.Split(5, 1, 5));
        Assert.Equal((1, 0), Binomial.Split(5, 1, 6));
        Assert.Equal((1, 0), Binomial.Split(5, 0, 1));
        Assert.Equal((0, 1), Binomial.Split(5, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Binomial.Split(5, 1.5, 1));
    }

    [Fact]
    public void FewestTries_AreTheFewest() => Gen.Select(Gen.Double[0.05, 0.99], Gen.Int[1, 9], Gen.Double[0.05, 0.99]).Sample((p, k, confidence) =>
    {
        var tries = Binomial.FewestTries(p, k, confidence, 10_000)!.Value;
        Assert.True(Binomial.Split(tries, p, k).AtLeast >= confidence - 1e-11);
        Assert.True(tries == k || Binomial.Split(tries - 1, p, k).AtLeast < confidence);
        Assert.Equal(NegativeBinomial.CDF(k, p, tries - k), Binomial.Split(tries, p, k).AtLeast, 1e-9);
    });

    [Fact]
    public void FewestTries_BeyondTheMost_AreNotTold()
    {
        Assert.Null(Binomial.FewestTries(0.001, 1, 0.99, 100));
        Assert.Null(Binomial.FewestTries(0, 1, 0.5, 100));
        Assert.Equal(1, Binomial.FewestTries(1, 1, 0.99, 100));
        Assert.Equal(1, Binomial.FewestTries(0.9, 1, 0.9, 100));
    }

    [Fact]
    public void ExpectedTries_WithAFarLimit_AreThoseWithoutOne() => Gen.Select(Gen.Double[0.1, 1], Gen.Int[1, 5]).Sample((p, k) =>
    {
        var (free, capped) = (Odds(p, k, null), Odds(p, k, 5000));
        Assert.Equal(free.ExpectedTries, capped.ExpectedTries, 1e-8);
        Assert.Equal(free.TriesVariance, capped.TriesVariance, 1e-6);
        Assert.Equal(0, capped.GiveUpChance, 1e-9);
        Assert.Equal(free.TriesP90, capped.TriesP90);
    });

    [Fact]
    public void ExpectedTries_WithANearerLimit_AreFewerAndGiveUpMoreOften() =>
        Gen.Select(Gen.Double[0.05, 0.95], Gen.Int[1, 5], Gen.Int[1, 40]).Sample((p, k, most) =>
        {
            var (near, far) = (Odds(p, k, most), Odds(p, k, most + 1));
            Assert.True(near.ExpectedTries <= far.ExpectedTries + 1e-12);
            Assert.True(near.GiveUpChance >= far.GiveUpChance - 1e-12);
            Assert.True(near.ExpectedKeepers <= k + 1e-9);
            Assert.Equal(1, near.ExpectedFinished + near.GiveUpChance, 1e-12);
            Assert.True(near.TriesP90 <= most);
        });

    [Fact]
    public void OfBurst_OfFrames_IsTheChanceThatNotAllMiss()
    {
        Assert.Equal(0.875, RetakeOdds.OfBurst(0.5, 3), 1e-15);
        Assert.Equal(1, RetakeOdds.OfBurst(1, 3));
    }

    [Fact]
    public void Survival_WithLessTimeThanCarrying_IsNone()
    {
        var none = new NoTrail();
        var input = new PlateSurvivalInput { BudgetS = 30, CarryS = 25, SettleS = 5, FrameTimeS = 2, KeeperChance = 0.5 };
        Assert.Equal(new(1, 0.5), PlateSurvival.Evaluate(input, ref none));
        Assert.Equal(new(0, 0), PlateSurvival.Evaluate(input with { BudgetS = 29 }, ref none));
    }

    [Fact]
    public void Portions_OfADish_HaveSparesAndStandIns()
    {
        var none = new NoTrail();
        Assert.Equal(new Portions(1, 0, 2, 0.9), Round(Portions.Evaluate(new() { PlateChance = 0.9, Confidence = 0.9 }, ref none)!));
        Assert.Equal(new Portions(2, 1, 3, 0.96), Round(Portions.Evaluate(new() { PlateChance = 0.8, Confidence = 0.95 }, ref none)!));
        Assert.Equal(3, Portions.Evaluate(new() { PlateChance = 1, Confidence = 0.99, Pictures = 3, StandIns = 0 }, ref none)!.Plates);
        Assert.Null(Portions.Evaluate(new() { PlateChance = 0.0001, Confidence = 0.99 }, ref none));
        Assert.Throws<ArgumentOutOfRangeException>(() => Portions.Evaluate(new() { PlateChance = 0, Confidence = 0.99 }, ref none));
    }

    private static Portions Round(Portions portions) => portions with { Reached = Math.Round(portions.Reached, 12) };

    private static RetakeOdds Odds(double p, int k, int? most)
    {
        var none = new NoTrail();
        return RetakeOdds.Evaluate(new() { KeeperChance = p, Keepers = k, MostTries = most }, ref none);
    }
}
