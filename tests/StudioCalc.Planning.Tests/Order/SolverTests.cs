using CsCheck;

namespace StudioCalc.Planning.Tests;

/// <summary>The search against a constraint solver that chooses order and times freely; proved values only.</summary>
public sealed class SolverTests
{
    public static TheoryData<int> Features =>
    [
        (int)Has.Nothing, (int)(Has.TwoPlates | Has.TwoShots | Has.Approval | Has.PlateWaitsForSetup | Has.Runner | Has.Waits),
        (int)(Has.OpenTimes | Has.Daylight), (int)(Has.Units | Has.NotBefore), (int)(Has.Matrix | Has.Positions | Has.PlateWaitsForSetup),
        (int)Has.Everything,
    ];

    [Theory]
    [MemberData(nameof(Features))]
    public void Find_SmallDay_IsTheSolversBest(int features)
    {
        var compared = 0;
        Gen.Int[1, int.MaxValue - 1].Select(Gen.Int[2, 5]).Sample(
            (seed, blocks) =>
            {
                var day = RandomDay.Of(seed, blocks, (Has)features);
                var (isSolved, best) = new Solver(day).Solve();
                if (!isSolved)
                {
                    return;
                }

                var found = ShootOrder.Find(day);
                if (best is null)
                {
                    Assert.True(found.Schedule.LeftOut.Count > 0);
                    return;
                }

                Assert.True(found.Schedule.Cost >= best);
                Assert.True(found.Bound <= best, $"bound {found.Bound}, best {best}");
                if (found.IsProved)
                {
                    Interlocked.Increment(ref compared);
                    Assert.Equal(best, found.Schedule.Cost);
                }
            },
            iter: 60);
        Assert.True(compared > 10, $"{compared} compared");
    }

    [Fact]
    public void Of_BlockAlone_HasTheSolversLeastExcess()
    {
        var (compared, over) = (0, 0);
        Gen.Int[1, int.MaxValue - 1].Sample(
            seed =>
            {
                var day = RandomDay.Of(seed, 1, Has.Everything & ~Has.Positions);
                var alone = AloneCheck.Of(day).Single();
                var (isSolved, best) = new Solver(day).Solve();
                if (isSolved)
                {
                    Interlocked.Increment(ref compared);
                    Assert.Equal(best is not null, alone.HasPlace);
                    var (least, found) = (best?.ExcessMs ?? 0, alone.HasPlace ? alone.NeverKept.Sum(never => never.ExcessMs) : 0);
                    Assert.True(found >= least, $"{found} found, {least} there is");
                    if (alone.NeverKept.All(never => never.ReachedMs == never.LeastMs))
                    {
                        Assert.Equal(least, found);
                    }
                    else if (found > least)
                    {
                        Interlocked.Increment(ref over);
                    }
                }
            },
            iter: 600);
        Assert.True(compared > 500, $"{compared} compared");
        Assert.True(over <= compared / 100, $"{over} of {compared} over the least");
    }
}
