using CsCheck;

namespace StudioCalc.Planning.Tests;

/// <summary>Fixed orders against all constraints at once.</summary>
public sealed class ScheduleTests
{
    private static readonly Gen<(ShootDay Day, int[] Order)> Days =
        from seed in Gen.Int[1, int.MaxValue - 1]
        from blocks in Gen.Int[1, 5]
        from order in Gen.Shuffle(Enumerable.Range(0, blocks).ToArray())
        select (RandomDay.Of(seed, blocks, Has.Everything), order);

    [Fact]
    public void Of_AnyOrder_HasTheLeastStartsThatKeepEveryConstraint() => Days.Sample(one =>
    {
        var schedule = Schedule.Of(one.Day, one.Order);
        if (schedule.LeftOut.Count > 0 || !IsKeptAlone(schedule, one.Day))
        {
            return;
        }

        var reference = Reference(one.Day, schedule);
        Assert.True(reference.Solve());
        Assert.Equal(reference.Finish, schedule.FinishMs);
        Assert.All(schedule.Earliest, at => Assert.Equal(reference.Starts[at.Operation], at.StartMs));
    }, iter: 3000);

    [Fact]
    public void Of_AnyOrder_HasLatestStartsThatKeepTheFinishAndNoneLater() => Days.Sample(one =>
    {
        var schedule = Schedule.Of(one.Day, one.Order);
        if (schedule.LeftOut.Count > 0)
        {
            return;
        }

        var latest = schedule.Latest.ToDictionary(at => at.Operation, at => at.StartMs);
        var kept = Reference(one.Day, schedule, latest);
        Assert.True(kept.Solve());
        Assert.All(latest, at => Assert.Equal(at.Value, kept.Starts[at.Key]));
        Assert.Equal(schedule.FinishMs, kept.Finish);
        var units = one.Day.Resources.Any(resource => resource.Capacity > 1);
        foreach (var (operation, start) in latest.Where(at => !units && at.Key.Kind is not (OperationKind.Approve or OperationKind.Setup)))
        {
            var later = Reference(one.Day, schedule, new() { [operation] = start + 1 });
            Assert.True(!later.Solve() || later.Finish > schedule.FinishMs, $"{operation} could start later.");
        }
    }, iter: 1000);

    [Fact]
    public void Of_AnyOrder_FireTimesAreBetweenEarliestAndLatest() => Days.Sample(one =>
    {
        var schedule = Schedule.Of(one.Day, one.Order);
        Assert.All(schedule.Earliest.Zip(schedule.Latest), pair => Assert.True(pair.First.StartMs <= pair.Second.StartMs));
        Assert.Equal(one.Order.Length, schedule.Order.Count + schedule.LeftOut.Count);
    }, iter: 2000);

    [Fact]
    public void Of_TheKnownPlate_FiresAtTheKnownTime()
    {
        var one = Case.Of("fire-time-01");
        var (cook, plate, carry) = ((long)one.Inputs["cook"]!, (long)one.Inputs["plate"]!, (long)one.Inputs["carry"]!);
        var shoot = (long)TimeSpan.Parse((string)one.Inputs["shoot_start"]!, System.Globalization.CultureInfo.InvariantCulture).TotalSeconds;
        var schedule = Schedule.Of(
            new()
            {
                Resources = [new() { Id = "set" }, new() { Id = "stove" }, new() { Id = "stylist" }],
                Set = 0,
                Blocks =
                [
                    new()
                    {
                        Id = "dish",
                        Plates = [new() { Id = "fresh", Stages = [new() { Resource = 1, DurationMs = cook }, new() { Resource = 2, DurationMs = plate }, new() { DurationMs = carry }] }],
                        Shots = [new() { Id = "shot", ShootMs = 60, Open = [new(shoot, 2 * shoot)] }],
                    },
                ],
            },
            [0]);
        var fire = schedule.Latest.Single(at => at.Operation == Operation.Stage(0, 0, 0)).StartMs;
        Assert.Equal((string)one.Expected["fire"]!, TimeSpan.FromSeconds(fire).ToString());
    }

    // Whether every block kept what it keeps alone, so that the least starts are those of the constraints.
    private static bool IsKeptAlone(Schedule schedule, ShootDay day) =>
        new OrderTimer(new(day)) is var timer && timer.Starts(schedule.Order).All(block => block.Timer.LimitMs
            .Select((limit, b) => block.Timer.Elapsed(b, block.Starts) <= limit).All(kept => kept) && !block.Timer.IsTraded);

    private static ReferenceTiming Reference(ShootDay day, Schedule schedule, Dictionary<Operation, long>? least = null)
    {
        var starts = new OrderTimer(new(day)).Starts(schedule.Order);
        return new(day, [.. schedule.Order])
        {
            Least = least ?? [],
            Limit = (block, plate, budget) =>
            {
                var (timer, x) = starts.Single(one => one.Timer.Shape.Index == block);
                var b = Array.FindIndex(timer.Shape.Budgets, one => one.Plate == plate && ReferenceEquals(one.Budget, budget));
                return least is null ? timer.LimitMs[b] : Math.Max(budget.LimitMs, timer.Elapsed(b, x));
            },
        };
    }
}
