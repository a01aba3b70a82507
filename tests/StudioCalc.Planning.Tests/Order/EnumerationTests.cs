using CsCheck;

namespace StudioCalc.Planning.Tests;

/// <summary>The search against all orders of small days.</summary>
public sealed class EnumerationTests
{
    public static TheoryData<int> Features =>
    [
        .. Enumerable.Range(0, 13).Select(bit => 1 << bit), (int)Has.Nothing, (int)Has.Everything,
        (int)(Has.TwoPlates | Has.TwoShots | Has.Approval | Has.PlateWaitsForSetup | Has.Runner),
        (int)(Has.OpenTimes | Has.Daylight), (int)(Has.OpenTimes | Has.Units), (int)(Has.Matrix | Has.PlateWaitsForSetup | Has.Positions),
    ];

    [Theory]
    [MemberData(nameof(Features))]
    public void Find_SmallDay_IsTheBestOfAllOrders(int features)
    {
        var proved = 0;
        Gen.Int[1, int.MaxValue - 1].Select(Gen.Int[1, 6]).Sample(
            (seed, blocks) =>
            {
                var day = RandomDay.Of(seed, blocks, (Has)features);
                var found = ShootOrder.Find(day);
                var best = new Enumeration(day).Best;
                Assert.True(found.Schedule.Cost.LeftOut >= best.LeftOut);
                Assert.True(found.Bound <= best, $"bound {found.Bound}, best {best}");
                if (found.IsProved)
                {
                    Interlocked.Increment(ref proved);
                    Assert.Equal(best, found.Schedule.Cost);
                }
                else
                {
                    var shape = new DayShape(day);
                    Assert.True(shape.HasOpenTimes || shape.IsTraded, "Only open times, or budgets against each other, leave a small day without a proof.");
                }
            },
            iter: 300);
        Assert.True(proved > 50, $"{proved} proved");
    }

    [Fact]
    public void Find_EightBlocks_IsTheBestOfAllOrders() => Gen.Int[1, int.MaxValue - 1].Sample(
        seed =>
        {
            var day = RandomDay.Of(seed, 8, Has.Everything & ~(Has.Positions | Has.Daylight));
            var found = ShootOrder.Find(day);
            var best = new Enumeration(day).Best;
            Assert.True(found.Bound <= best);
            Assert.True(!found.IsProved || best == found.Schedule.Cost);
        },
        iter: 12);

    [Fact]
    public void Find_NarrowWidth_SaysWhatItKnows() => Gen.Int[1, int.MaxValue - 1].Sample(
        seed =>
        {
            var day = RandomDay.Of(seed, 6, Has.TwoPlates | Has.Approval | Has.Runner);
            var narrow = ShootOrder.Find(day, new(Width: 1, Rounds: 0));
            var best = ShootOrder.Find(day).Schedule.Cost;
            Assert.True(narrow.Bound <= best && best <= narrow.Schedule.Cost);
            Assert.True(!narrow.IsProved || narrow.Schedule.Cost == best);
            Assert.True(narrow.IsProved || narrow.WidthWasCut);
        },
        iter: 300);
}
