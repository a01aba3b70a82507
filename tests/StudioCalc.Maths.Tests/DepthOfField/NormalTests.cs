using CsCheck;
using MathNet.Numerics;
using NormalDistribution = MathNet.Numerics.Distributions.Normal;

namespace StudioCalc.Maths.Tests;

/// <summary>The normal distribution against a library and against its own symmetries.</summary>
public sealed class NormalTests
{
    [Fact]
    public void Below_AnyDeviation_IsWhatALibraryGives() => Gen.Double[-37, 37].Sample(z =>
    {
        var expected = SpecialFunctions.Erfc(-z / Math.Sqrt(2)) / 2;
        var rounded = 1e-14 + z * z * 4e-16;
        Assert.True(Math.Abs(Normal.Below(z) - expected) <= rounded * expected, $"{z}: {Normal.Below(z):R}, {expected:R}");
    });

    // 30-digit values of the normal integral, rounded.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(-0.5, 0.30853753872598690)]
    [InlineData(-1, 0.15865525393145705)]
    [InlineData(-2, 0.022750131948179207)]
    [InlineData(-5, 2.8665157187919391e-7)]
    [InlineData(-10, 7.6198530241605261e-24)]
    [InlineData(-20, 2.7536241186062337e-89)]
    [InlineData(1.959963984540054, 0.975)]
    public void Below_KnownDeviations_HasFifteenFigures(double z, double expected) =>
        Assert.InRange(Normal.Below(z) / expected, 1 - 3e-15, 1 + 3e-15);

    [Fact]
    public void Below_MirroredDeviations_SumToOne() =>
        Gen.Double[-8, 8].Sample(z => Assert.Equal(1, Normal.Below(z) + Normal.Below(-z), 1e-15));

    [Fact]
    public void Between_TwoParts_SumToTheWhole() => Gen.Double[-9, 9].Array[3].Sample(values =>
    {
        Array.Sort(values);
        var whole = Normal.Between(values[0], values[2]);
        Assert.Equal(whole, Normal.Between(values[0], values[1]) + Normal.Between(values[1], values[2]), 1e-15);
    });

    [Fact]
    public void Between_NarrowWidthFarOut_IsTheDensityTimesTheWidth()
    {
        foreach (var z in new[] { -12.0, -3, 0, 4, 15 })
        {
            var density = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
            Assert.Equal(1, Normal.Between(z - 5e-6, z + 5e-6) / (density * 1e-5), 1e-8);
        }
    }

    [Fact]
    public void Between_EverythingAndNothing_IsOneAndZero()
    {
        Assert.Equal(1, Normal.Between(double.NegativeInfinity, double.PositiveInfinity));
        Assert.Equal(0, Normal.Between(1, 1));
        Assert.Equal(0, Normal.Between(100, double.PositiveInfinity));
    }

    [Fact]
    public void HalfWidth_OfAnyShare_HoldsIt() => Gen.Double[1e-6, 1 - 1e-6].Sample(share =>
        Assert.Equal(share, Normal.Between(-Normal.HalfWidth(share), Normal.HalfWidth(share)), 1e-14));

    [Fact]
    public void HalfWidth_OfAnyShare_IsWhatALibraryGives() => Gen.Double[0.001, 0.999].Sample(share =>
        Assert.Equal(NormalDistribution.InvCDF(0, 1, (1 + share) / 2), Normal.HalfWidth(share), 1e-12));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void HalfWidth_OfNoneOrAll_Throws(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.HalfWidth(share));

    [Fact]
    public void HalfWidth_OfAlmostAll_StaysFinite() => Assert.InRange(Normal.HalfWidth(1 - 1e-15), 7.9, 8.1);
}
