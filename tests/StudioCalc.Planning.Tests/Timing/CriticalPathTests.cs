using CsCheck;

namespace StudioCalc.Planning.Tests;

/// <summary>The chain that fixes the finish.</summary>
public sealed class CriticalPathTests
{
    [Fact]
    public void Of_AnyDay_LeadsFromSomethingFixedToTheFinish() => Gen.Int[1, int.MaxValue - 1].Select(Gen.Int[1, 5]).Sample(
        (seed, blocks) =>
        {
            var schedule = Schedule.Of(RandomDay.Of(seed, blocks, Has.Everything), Enumerable.Range(0, blocks));
            if (schedule.Order.Count == 0)
            {
                return;
            }

            var path = CriticalPath.Of(schedule.Network);
            Assert.Equal(schedule.FinishMs, path[^1].Operation.EndMs);
            Assert.Contains(path[0].Why, new[] { Binding.NotBefore, Binding.Opening });
            Assert.All(path.Skip(1), step => Assert.Contains(step.Why, new[] { Binding.Route, Binding.Resource, Binding.Budget }));
            Assert.Equal(path.Count, path.Select(step => step.Operation.Operation).Distinct().Count());
        },
        iter: 1000);

    [Fact]
    public void ByResource_KitchenBoundDay_IsTheKitchen()
    {
        var day = FlowShop.Day([[50, 5], [60, 5], [70, 5]]);
        var schedule = ShootOrder.Find(day).Schedule;
        Assert.Equal([180, 5], CriticalPath.ByResource(CriticalPath.Of(schedule.Network), 2));
    }
}
