using CsCheck;
using MathNet.Numerics.Distributions;

namespace StudioCalc.Maths.Tests;

public sealed class ThreePointTests
{
    private static readonly Gen<ThreePoint> Times =
        Gen.Select(Gen.Double[0, 50], Gen.Double[0.5, 100], Gen.Double[0.5, 100], Gen.Enum<Spread>()).Select((low, rise, fall, spread) =>
            new ThreePoint(low, low + rise, low + rise + fall, spread));

    [Fact]
    public void Quantile_OfAPertTime_IsThatOfALibrary() => Gen.Select(Gen.Double[0, 1], Gen.Double[0.001, 0.999]).Sample((peak, share) =>
    {
        var found = new ThreePoint(0, peak, 1, Spread.Pert).Quantile(share);
        Assert.Equal(share, Beta.CDF(1 + 4 * peak, 5 - 4 * peak, found), 1e-9);
    });

    [Theory]
    [InlineData(0)]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(0.75)]
    [InlineData(1)]
    public void Quantile_OfAPeakAtAWholeQuarter_IsThatOfALibrary(double peak)
    {
        var found = new ThreePoint(0, peak, 1, Spread.Pert).Quantile(0.9);
        Assert.Equal(0.9, Beta.CDF(1 + 4 * peak, 5 - 4 * peak, found), 1e-12);
    }

    [Fact]
    public void Quantile_RisesWithItsShare() => Gen.Select(Times, Gen.Double[0.001, 0.99], Gen.Double[0, 0.009]).Sample((time, share, more) =>
        Assert.True(time.Quantile(share + more) >= time.Quantile(share)));

    [Fact]
    public void Draws_StayUnderAQuantileAsOftenAsItTells() => Gen.Select(Times, Gen.Double[0.05, 0.95], Gen.UInt).Sample(
        (time, share, seed) =>
        {
            var limit = 1000 * time.Quantile(share);
            const int draws = 4000;
            var under = Enumerable.Range(0, draws).Count(i => time.DrawMs((seed, 0), (uint)i, 1, 2) <= limit);
            Assert.Equal(share, (double)under / draws, 6 * Math.Sqrt(share * (1 - share) / draws));
        },
        iter: 30);

    [Fact]
    public void DrawMs_OfOtherAddresses_IsAnotherTime()
    {
        var time = new ThreePoint(10, 20, 45, Spread.Pert);
        var all = new[] { time.DrawMs((1, 1), 0, 0, 0), time.DrawMs((1, 1), 1, 0, 0), time.DrawMs((1, 1), 0, 1, 0), time.DrawMs((1, 1), 0, 0, 1), time.DrawMs((2, 1), 0, 0, 0) };
        Assert.Equal(all.Length, all.Distinct().Count());
        Assert.Equal(Math.Floor(1000 * time.Draw((1, 1), 5, 6) + 0.5), time.DrawMs((1, 1), 5, 6, 0));
    }

    [Fact]
    public void Quantile_OfNoShare_IsRefused()
    {
        var time = new ThreePoint(10, 20, 45, Spread.Triangle);
        Assert.Throws<ArgumentOutOfRangeException>(() => time.Quantile(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => time.Quantile(1));
        Assert.Equal(20, new ThreePoint(20, 20, 20, Spread.Pert).Quantile(0.9));
    }
}
