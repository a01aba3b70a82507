using CsCheck;
using MathNet.Numerics.Distributions;

namespace StudioCalc.Maths.Tests;

/// <summary>Frames for keepers against a library, plain sums and simulation.</summary>
public sealed class KeeperCountTests
{
    private static readonly Gen<KeepChance> Chances =
        Gen.OneOf<double>(Gen.Double[0.001, 0.999], Gen.Double[-9, -0.01].Select(Math.Exp)).Select(keep => new KeepChance(keep, 1 - keep));

    [Fact]
    public void ChanceOfFewer_AnyChance_IsWhatALibraryGives() =>
        Gen.Select(Chances, Gen.Int[1, 3000], Gen.Int[1, 60]).Where((_, frames, keepers) => frames >= keepers).Sample((chance, frames, keepers) =>
        {
            var expected = Binomial.CDF(chance.Keep, frames, keepers - 1);
            Assert.Equal(expected, KeeperCount.ChanceOfFewer(chance, frames, keepers), 1e-9);
        });

    [Fact]
    public void ChanceOfFewer_ManyFrames_LosesNothing()
    {
        // Mean 500, deviation 22.3: the normal distribution with half a frame of correction is near to a thousandth.
        var chance = new KeepChance(0.005, 0.995);
        var z = (520 - 0.5 - 500) / Math.Sqrt(500 * 0.995);
        Assert.Equal(Normal.Below(z), KeeperCount.ChanceOfFewer(chance, 100000, 520), 2e-3);
        Assert.Equal(0, KeeperCount.ChanceOfFewer(new(0.5, 0.5), 100000, 1000));
        Assert.Equal(1, KeeperCount.ChanceOfFewer(new(1e-9, 1 - 1e-9), 100000, 1000));
    }

    [Fact]
    public void ForSeveral_AnyChance_IsTheLeastNumberThatDoes() =>
        Gen.Select(Chances, Gen.Double[0.01, 0.99999], Gen.Int[1, 40]).Sample((chance, confidence, keepers) =>
        {
            if (KeeperCount.ForSeveral(chance, confidence, keepers) is { } frames)
            {
                Assert.True(KeeperCount.ChanceOfFewer(chance, frames, keepers) <= (1 - confidence) * (1 + 1e-8));
                Assert.True(frames == keepers || KeeperCount.ChanceOfFewer(chance, frames - 1, keepers) > 1 - confidence);
            }
            else
            {
                Assert.True(KeeperCount.ChanceOfFewer(chance, KeeperCount.MostFrames, keepers) > 1 - confidence);
            }
        });

    [Fact]
    public void ForOne_AnyChance_AgreesWithTheSumForOneKeeper() => Gen.Select(Chances, Gen.Double[0.01, 0.99999]).Sample((chance, confidence) =>
    {
        var none = default(NoTrail);
        Assert.Equal(KeeperCount.ForSeveral(chance, confidence, 1), KeeperCount.ForOne(chance, confidence, ref none));
    });

    [Theory]
    [InlineData(0.5, 0.75, 2)]
    [InlineData(0.5, 0.875, 3)]
    [InlineData(0.9, 0.99, 2)]
    [InlineData(0.1, 0.9, 22)]
    public void ForOne_ExactPowers_AreNotRoundedUp(double keep, double confidence, int frames)
    {
        var none = default(NoTrail);
        Assert.Equal(frames, KeeperCount.ForOne(new(keep, 1 - keep), confidence, ref none));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-300)]
    [InlineData(1e-6)]
    public void ForOne_HopelessChance_IsNone(double keep)
    {
        var none = default(NoTrail);
        Assert.Null(KeeperCount.ForOne(new(keep, 1 - keep), 0.95, ref none));
    }

    [Fact]
    public void ForOne_TinyChance_UsesAllItsFigures()
    {
        var none = default(NoTrail);
        var frames = KeeperCount.ForOne(new(0.0000300001, 1 - 0.0000300001), 0.9, ref none);
        Assert.Equal((int)Math.Ceiling(Math.Log(10) / (0.0000300001 + 0.0000300001 * 0.0000300001 / 2)), frames);
    }

    [Fact]
    public void Chance_OfRandomFocus_IsItsShareInASimulation()
    {
        // A fixed seed: the same draws in every run.
        var random = new Random(20260101);
        var error = new FocusError(5, 2);
        var hits = Enumerable.Range(0, 200_000).Count(_ =>
        {
            var at = 2 + 5 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            return at is > -3 and < 4;
        });
        Assert.Equal(hits / 200_000.0, KeepChance.Of(3, 4, error).Keep, 0.004);
    }

    [Fact]
    public void Chance_AnyZone_KeepAndMissMakeOne() =>
        Gen.Select(Gen.Double[0.01, 50], Gen.Double[0.01, 50], Gen.Double[0.1, 20], Gen.Double[-30, 30]).Sample((near, far, spread, bias) =>
        {
            var chance = KeepChance.Of(near, far, new(spread, bias));
            Assert.Equal(1, chance.Keep + chance.Miss, 1e-14);
            Assert.Equal(chance.Keep, KeepChance.Of(far, near, new(spread, -bias)).Keep, 1e-14);
            Assert.True(KeepChance.Of(near * 1.1, far, new(spread, bias)).Keep >= chance.Keep);
        });

    [Fact]
    public void LackingDepth_AddedInProportion_GivesTheConfidence() =>
        Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.1, 5], Gen.Double[1, 20], Gen.Double[-10, 10], Gen.Double[0.3, 0.99])
            .Sample((near, far, spread, bias, confidence) =>
            {
                var error = new FocusError(spread, bias);
                var lacking = KeepChance.LackingDepthMm(near, far, error, confidence);
                var factor = 1 + lacking / (near + far);
                var reached = KeepChance.Of(near * factor, far * factor, error).Keep;
                Assert.True(lacking == 0 ? reached >= confidence : Math.Abs(reached - confidence) < 1e-9);
            });

    [Fact]
    public void BracketFrames_OneErrorForAll_OneIsSharpWithTheConfidence() =>
        Gen.Select(Gen.Double[0.5, 5], Gen.Double[0.5, 5], Gen.Double[1, 20], Gen.Double[0.5, 0.99]).Sample((near, far, spread, confidence) =>
        {
            var none = default(NoTrail);
            var frames = KeepChance.BracketFrames(near, far, spread, confidence, ref none);
            var span = (near + far) * (1 + (frames - 1) * 0.8);
            Assert.True(Normal.Between(-span / 2 / spread, span / 2 / spread) >= confidence - 1e-8);
            var fewer = (near + far) * (1 + (frames - 2) * 0.8);
            Assert.True(frames == 1 || Normal.Between(-fewer / 2 / spread, fewer / 2 / spread) < confidence + 1e-8);
        });

    [Fact]
    public void SpreadFromKeepRate_SentBack_GivesTheRate() => Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.1, 50]).Sample((share, half) =>
    {
        var none = default(NoTrail);
        var spread = FocusError.SpreadFromKeepRateMm(share, half, ref none);
        Assert.Equal(share, KeepChance.Of(half, half, new(spread, 0)).Keep, 1e-13);
    });
}
