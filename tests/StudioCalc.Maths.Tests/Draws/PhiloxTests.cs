namespace StudioCalc.Maths.Tests;

public sealed class PhiloxTests
{
    // Known answers of the paper's own implementation, Random123, from memory.
    [Fact]
    public void Words_AreThoseOfThePaper()
    {
        Assert.Equal((0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u), Philox.Words((0, 0), (0, 0, 0, 0)));
        const uint all = uint.MaxValue;
        Assert.Equal((0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu), Philox.Words((all, all), (all, all, all, all)));
        Assert.Equal(
            (0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u),
            Philox.Words((0xa4093822, 0x299f31d0), (0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344)));
    }

    [Theory]
    [InlineData(Spread.Pert)]
    [InlineData(Spread.Triangle)]
    [InlineData(Spread.LogNormal)]
    public void Draws_HaveTheMeanAndVarianceOfTheirSpread(Spread spread)
    {
        var time = new ThreePoint(10, 20, 45, spread);
        const int draws = 200_000;
        var values = Enumerable.Range(0, draws).Select(i => time.Draw((7, 1), (uint)i, 3)).ToList();
        var mean = values.Average();
        Assert.Equal(time.Mean, mean, 5 * Math.Sqrt(time.Variance / draws));
        Assert.Equal(1, values.Average(value => (value - mean) * (value - mean)) / time.Variance, 0.05);
    }

    // Beta-PERT and triangle of 10, 20 and 45 s: computed once from the closed forms.
    [Fact]
    public void Moments_AreThoseOfTheFormulas()
    {
        Assert.Equal(22.5, new ThreePoint(10, 20, 45, Spread.Pert).Mean, 1e-12);
        Assert.Equal(40.17857, new ThreePoint(10, 20, 45, Spread.Pert).Variance, 1e-4);
        Assert.Equal(25, new ThreePoint(10, 20, 45, Spread.Triangle).Mean, 1e-12);
        Assert.Equal(54.16667, new ThreePoint(10, 20, 45, Spread.Triangle).Variance, 1e-4);
    }

    [Fact]
    public void Draw_OfACertainTime_IsThatTime()
    {
        foreach (var spread in Enum.GetValues<Spread>())
        {
            Assert.Equal(30, new ThreePoint(30, 30, 30, spread).Draw((1, 1), 5, 2));
        }
    }
}
