using CsCheck;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class QueueTests
{
    [Fact]
    public void OneServer_OfExponentialTimes_IsThatOfErlang() => Gen.Select(Gen.Double[0.01, 2], Gen.Double[0.01, 0.99]).Sample((service, load) =>
    {
        var none = new NoTrail();
        var (any, erlang) = (QueueTimes.OneServer(load / service, service, service * service, ref none)!, QueueTimes.Servers(load / service, service, 1, ref none)!);
        Assert.Equal(erlang.WaitS, any.WaitS, 1e-9 * Math.Max(1, erlang.WaitS));
        Assert.Equal(load / (1 - load), erlang.Present, 1e-9 / (1 - load));
    });

    [Fact]
    public void Servers_OfTheSameLoad_WaitLessTheMoreThereAre() => Gen.Select(Gen.Double[0.1, 0.95], Gen.Int[1, 20]).Sample((load, servers) =>
    {
        var none = new NoTrail();
        var (few, more) = (QueueTimes.Servers(load * servers, 1, servers, ref none)!, QueueTimes.Servers(load * (servers + 1), 1, servers + 1, ref none)!);
        Assert.True(more.WaitS < few.WaitS);
    });

    [Fact]
    public void Queue_ThatCannotKeepUp_IsNotTold()
    {
        var none = new NoTrail();
        Assert.Null(QueueTimes.Servers(3, 1, 3, ref none));
        Assert.Null(QueueTimes.OneServer(1, 1, 0, ref none));
        Assert.NotNull(QueueTimes.Servers(2.99, 1, 3, ref none));
    }

    // Another route: customers one after another (Lindley), with service times of the same spread that days are simulated with.
    [Fact]
    public void OneServer_WithPertTimes_WaitsAsSimulated()
    {
        var service = new ThreePoint(20, 40, 110, Spread.Pert);
        const double arrivals = 0.7;
        var (wait, sum, count) = (0.0, 0.0, 400_000u);
        for (var i = 0u; i < count; i++)
        {
            sum += wait;
            var between = -Math.Log(1 - Philox.Uniform((9, 9), (i, 0, 0, 0)).First) * service.Mean / arrivals;
            wait = Math.Max(0, wait + service.DrawMs((9, 9), i, 1, 0) / 1000.0 - between);
        }

        var none = new NoTrail();
        var expected = QueueTimes.OneServer(arrivals / service.Mean, service.Mean, service.Variance, ref none)!;
        Assert.Equal(1, sum / count / expected.WaitS, 0.04);
    }

    [Fact]
    public void PairWithoutBuffer_LosesAgainstTheSlowerStage() => Gen.Select(Gen.Double[0.1, 9], Gen.Double[0.1, 9]).Sample((first, second) =>
    {
        var none = new NoTrail();
        var x = ShotRate.PairWithoutBuffer(first, second, ref none);
        Assert.True(x < Math.Min(first, second) && x >= Math.Min(first, second) * 2 / 3 - 1e-9);
        Assert.Equal(3600 / Math.Max(first, second), ShotRate.UpperBound([(first, 1), (second, 1)]), 1e-9 * 36000);
    });

    [Fact]
    public void MergeBias_OfEqualTimes_IsHalfADeviationAndMore()
    {
        var (mean, variance) = MergeBias.Later((10, 2), (10, 2), 0);
        Assert.Equal(10 + 2 / Math.Sqrt(Math.PI), mean, 1e-12);
        Assert.Equal(4 * (1 - 1 / Math.PI), variance, 1e-12);
        Assert.Equal((12, 9), MergeBias.Later((12, 3), (10, 3), 1));
    }

    [Fact]
    public void EarliestFire_OfARisk_HasThatRisk() => Gen.Select(Gen.Double[1, 300], Gen.Double[1, 300], Gen.Double[0.01, 0.99]).Sample((ready, lead, risk) =>
    {
        var none = new NoTrail();
        var input = new NormalWaitInput { ReadyS = 3600, ReadyDeviationS = ready, LeadS = 900, LeadDeviationS = lead, BudgetS = 240 };
        var wait = NormalWait.Evaluate(input, NormalWait.EarliestFireS(input, risk), ref none);
        Assert.Equal(risk, wait.BreakChance, 1e-9);
        Assert.True(wait.WaitS >= 0 && wait.IdleS >= -1e-9);
    });

    [Fact]
    public void Wait_OfCertainTimes_IsCertain()
    {
        var none = new NoTrail();
        var input = new NormalWaitInput { ReadyS = 100, ReadyDeviationS = 0, LeadS = 30, LeadDeviationS = 0, BudgetS = 10 };
        Assert.Equal(new(1, 20, 0), NormalWait.Evaluate(input, 50, ref none));
        Assert.Equal(new(0, 0, 5), NormalWait.Evaluate(input, 75, ref none));
    }

    [Fact]
    public void Lead_ForDearerIdleTime_IsLonger()
    {
        var none = new NoTrail();
        Assert.Equal(1080, FireLead.LeadS(1080, 1440, 1, 1, ref none), 1e-9);
        Assert.True(FireLead.LeadS(1080, 1440, 2, 1, ref none) > 1080);
        Assert.True(FireLead.LeadS(1080, 1440, 1, 2, ref none) < 1080);
    }

    [Fact]
    public void Ranks_OfFewValues_AreNone()
    {
        Assert.Null(QuantileRanks.Of(20, 0.9));
        Assert.NotNull(QuantileRanks.Of(40, 0.9));
        var few = Percentiles.Of([3, 1, 2]);
        Assert.Equal((1, 2, 3), (few.P10.Value, few.P50.Value, few.P90.Value));
        Assert.Null(few.P90.Upper);
    }

    [Fact]
    public void Ranks_CoverWhatTheyPromise() => Gen.Select(Gen.Int[50, 3000], Gen.Double[0.1, 0.9]).Sample((n, quantile) =>
    {
        var ranks = QuantileRanks.Of(n, quantile)!;
        Assert.True(ranks.Coverage >= 0.95 - 1e-12 && ranks.Coverage < 0.99);
        Assert.True(ranks.Lower <= quantile * n + 1 && ranks.Upper >= quantile * n);
    });
}
