using CsCheck;

namespace StudioCalc.Planning.Tests;

public sealed class CircuitReliefTests
{
    [Fact]
    public void Within_NothingGoes() => Assert.Equal([0, 0], CircuitRelief.TakeOff([(100, 2), (300, 1)], 500));

    [Fact]
    public void OneIsEnough_TheSmallestSuchGoes() => Assert.Equal([0, 1, 0], CircuitRelief.TakeOff([(50, 1), (120, 2), (900, 1)], 1100));

    [Fact]
    public void NothingMayStay_AllThatDrawsGoes() => Assert.Equal([2, 0, 1], CircuitRelief.TakeOff([(50, 2), (0, 3), (1, 1)], 0));

    [Fact]
    public void TakenOff_AreTheFewest() => Gen.Select(Gen.Int[0, 20].Array[1, 7], Gen.Int[0, 60]).Sample((powers, usable) =>
    {
        var off = CircuitRelief.TakeOff([.. powers.Select(power => ((double)power, 1))], usable);
        var fewest = Enumerable.Range(0, 1 << powers.Length)
            .Where(set => powers.Where((_, i) => (set >> i & 1) == 0).Sum() <= usable)
            .Min(set => System.Numerics.BitOperations.PopCount((uint)set));
        Assert.Equal(fewest, off.Sum());
        Assert.True(powers.Where((_, i) => off[i] == 0).Sum() <= usable);
    });
}
