namespace StudioCalc.Planning.Tests;

/// <summary>A search that is stopped.</summary>
public sealed class CancellationTests
{
    [Fact]
    public void Find_StoppedBefore_Throws() =>
        Assert.Throws<OperationCanceledException>(() => ShootOrder.Find(Dish.Day(Dish.Draw(1000003, 4, 1)), default, new(canceled: true)));

    // Neither would end in hours.
    [Theory]
    [InlineData(int.MaxValue, 0)]
    [InlineData(null, int.MaxValue)]
    public void Find_StoppedInTheMiddle_Throws(int? width, int rounds)
    {
        using var source = new CancellationTokenSource(300);
        Assert.Throws<OperationCanceledException>(() => ShootOrder.Find(Dish.Day(Dish.Draw(1000003, 24, 1)), new(width, rounds), source.Token));
    }

    [Fact]
    public void Find_LongDayStoppedInTheMiddle_Throws()
    {
        using var source = new CancellationTokenSource(300);
        Assert.Throws<OperationCanceledException>(() => ShootOrder.Find(Dish.Day(Dish.Draw(1000003, 200, 3)), new(null, int.MaxValue), source.Token));
    }
}
