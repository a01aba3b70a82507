using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class FollowTests
{
    private static readonly FollowInput Example = new()
    {
        First = new(13),
        Now = new(12),
        ShutterSpeedS = 1 / 128.0,
        SyncSpeedS = Math.Pow(2, -23 / 3.0),
        SlowestShutterSpeedS = 1 / 32.0,
    };

    private static readonly Gen<FollowInput> Any =
        from first in Gen.Double[8, 16]
        from change in Gen.OneOf<double>(Gen.Double[-5, 5], Gen.Int[-5, 5].Select(stops => (double)stops))
        from flash in Gen.Double[-2, 2]
        from time in Gen.Double[-8, -2]
        from scale in Gen.OneOf(Enum.GetValues<StopScale>())
        select Example with { First = new(first), Now = new(first + change), FlashStops = flash, ShutterSpeedS = Math.Pow(2, time), Scale = scale };

    private static NoTrail none;

    [Fact]
    public void Solve_OneStopDarker_TakesTwiceTheTime()
    {
        var outcome = Follow.Solve(Example, ref none);
        Assert.Equal(new FollowOutcome(BalanceObstacle.None, 0, 1 / 64.0, 0), outcome);
    }

    [Fact]
    public void Solve_AsTheBalanceDoes_KeepsTheRatioOfTheFirstReading() => Any.Sample(input =>
    {
        var outcome = Follow.Solve(input, ref none);
        const double flash = 5;
        var before = input.First.ExposureValueIso100Stops + Math.Log2(input.ShutterSpeedS) - flash;
        var after = input.Now.ExposureValueIso100Stops + Math.Log2(outcome.ShutterSpeedS) - flash - input.FlashStops;
        Assert.Equal(outcome.RestStops, after - before, 1e-9);
        if (outcome.Obstacle == BalanceObstacle.None)
        {
            var steps = (input.Scale == StopScale.Tenth ? StopScale.Third : input.Scale).StepsPerStop();
            Assert.InRange(outcome.RestStops, -0.5 / steps - 1e-9, 0.5 / steps + 1e-9);
        }
    });

    [Fact]
    public void Solve_AnyChange_KeepsToTheLimits() => Any.Sample(input =>
    {
        var outcome = Follow.Solve(input, ref none);
        Assert.InRange(outcome.ShutterSpeedS, input.SyncSpeedS, input.SlowestShutterSpeedS);
        Assert.True(outcome.Obstacle == BalanceObstacle.None ? outcome.ShortfallStops == 0 : outcome.ShortfallStops > 0);
    });

    [Fact]
    public void Remedies_OfAnyObstacle_ReachItAndChangeAsTheirKindSays() => Any.Sample(input =>
    {
        var outcome = Follow.Solve(input, ref none);
        var remedies = Follow.RemediesFor(input, outcome);
        Assert.Equal(outcome.Obstacle == BalanceObstacle.None ? 0 : 2, remedies.Count);
        foreach (var remedy in remedies)
        {
            Assert.Equal(BalanceObstacle.None, remedy.Outcome.Obstacle);
            Assert.Equal(remedy.Kind is BalanceRemedyKind.BrightenBackLight or BalanceRemedyKind.RaiseFlashPower, remedy.ChangeStops > 0);
            Assert.Equal(outcome.ShortfallStops, Math.Abs(remedy.ChangeStops), 1e-12);
        }
    });

    [Fact]
    public void Drift_OfReadingsOnALine_IsItsSlope() => Gen.Select(Gen.Double[-3, 3], Gen.Double[5, 15], Gen.Double[0.01, 2].Array[2, 100]).Sample((slope, start, gaps) =>
    {
        var hours = 0.0;
        var readings = Array.ConvertAll(gaps, gap => new TimedLight(hours += gap, new(start + slope * hours)));
        var drift = Drift.Of(readings, ref none);
        Assert.Equal(slope, drift.PerHourStops, 1e-6);
        Assert.Equal(0, drift.SpreadStops, 1e-6);
        Assert.Equal(slope * (readings[^1].OffsetH - readings[0].OffsetH), drift.ChangeStops, 1e-6);
    });

    [Fact]
    public void Drift_OfAnyReadings_NoOtherSlopeLiesNearer() => Gen.Select(Gen.Double[5, 15].Array[3, 20], Gen.Double[-0.5, 0.5]).Sample((levels, other) =>
    {
        var readings = levels.Select((level, i) => new TimedLight(i, new(level))).ToArray();
        var slope = Drift.Of(readings, ref none).PerHourStops;
        Assert.True(Squares(slope) <= Squares(slope + other) + 1e-9);

        double Squares(double tried)
        {
            var rest = readings.Average(reading => reading.Level.ExposureValueIso100Stops - tried * reading.OffsetH);
            return readings.Sum(reading => Math.Pow(reading.Level.ExposureValueIso100Stops - tried * reading.OffsetH - rest, 2));
        }
    });

    [Theory]
    [InlineData(-0.5, -0.1, 0.3, 0.4)]
    [InlineData(0.5, -0.1, 0.3, 0.8)]
    [InlineData(-0.5, -0.3, 0.3, 0)]
    [InlineData(0.5, -0.3, 0.3, 1.2)]
    [InlineData(0.5, -0.4, 0.3, 0)]
    [InlineData(0, 0.2, 0.3, double.PositiveInfinity)]
    public void Drift_OnItsWay_LeavesTheToleranceWhenTheLineDoes(double perHour, double change, double tolerance, double hours) =>
        Assert.Equal(hours, new Drift { PerHourStops = perHour, ChangeStops = change, SpreadStops = 0 }.HoursWithin(tolerance), 1e-9);
}
