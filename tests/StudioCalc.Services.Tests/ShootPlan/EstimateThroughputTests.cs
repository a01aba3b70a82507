using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EstimateThroughputTests
{
    public static TheoryData<string, string, DayChange> BadChanges => new()
    {
        { "changes[0].name", "REQUIRED", new() { Kind = DayChangeKind.StationMore } },
        { "changes[0].name", "CONFLICT", new() { Kind = DayChangeKind.StationMore, Name = "grill" } },
        { "changes[0].value", "CONFLICT", new() { Kind = DayChangeKind.StationMore, Name = "wok", Value = 2 } },
        { "changes[0].name", "CONFLICT", new() { Kind = DayChangeKind.AttributeShared, Name = "lens" } },
        { "changes[0].name", "CONFLICT", new() { Kind = DayChangeKind.StylistMore, Name = "wok" } },
        { "changes[0].value", "REQUIRED", new() { Kind = DayChangeKind.CookingFactor } },
        { "changes[0].name", "CONFLICT", new() { Kind = DayChangeKind.BudgetFactor, Value = 2, Name = "herbs" } },
        { "changes[0].value", "OUT_OF_RANGE", new() { Kind = DayChangeKind.KeepChance, Value = 1.01 } },
        { "changes[0].value", "OUT_OF_RANGE", new() { Kind = DayChangeKind.KeepChance, Value = 0.0009 } },
    };

    [Theory]
    [MemberData(nameof(BadChanges))]
    public void BadChange_IsNamed(string field, string reason, DayChange change)
    {
        var request = Runs.ThreeDishes();
        request.Changes.Add(change);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.ShootPlan.EstimateThroughput(request)));
    }

    [Fact]
    public void TooManyDraws_AreRefused_AndUnsetTheyAreFewer()
    {
        var request = Runs.ThreeDishes();
        (request.MostPlates, request.Replications) = (16, 100_000);
        Frames(request, 0.05, 1000, 1);
        Assert.Equal([("replications", "OUT_OF_RANGE")], Calls.Refused(() => Calls.ShootPlan.EstimateThroughput(request)));
        for (var i = 0; i < 10; i++)
        {
            request.Changes.Add(new DayChange { Kind = DayChangeKind.StylistMore });
        }

        Frames(request, 0.001, 1000, 100);
        Assert.Equal([("day.shots", "OUT_OF_RANGE")], Calls.Refused(() => Calls.ShootPlan.EstimateThroughput(request)));
        Frames(request, 1, 1, 1);
        request.ClearReplications();
        Assert.Equal(20_000_000 / ((6 + 3 * 4) * 16 * 11), (int)Calls.ShootPlan.EstimateThroughput(request).Replications);

        static void Frames(EstimateThroughputRequest request, double chance, uint tries, uint keepers)
        {
            foreach (var shot in request.Day.Shots)
            {
                (shot.Frames.KeepChance, shot.Frames.MostTries, shot.Frames.Keepers) = (chance, tries, keepers);
            }
        }
    }

    [Fact]
    public void CertainDay_EndsAsPlanned_InEveryReplication()
    {
        var answer = Calls.ShootPlan.EstimateThroughput(Runs.OneDish());
        Assert.All(
            new[] { answer.Finish.P10, answer.Finish.P50, answer.Finish.P90 },
            one => Assert.Equal((600, 600, 600), (Calls.Number(one.Value), Calls.Number(one.Low), Calls.Number(one.High))));
        Assert.Equal((600, 600, 600), (Calls.Number(answer.Finish.Mean), Calls.Number(answer.Bounds.PlannedFinish), Calls.Number(answer.Bounds.FinishBound)));
        Assert.Equal((6, 6, 6, 6), (answer.ShotsPerHour.P50.Value, answer.MeanShotsPerHour, answer.KeepersPerHour, answer.FramesPerHour));
        Assert.Equal((1, 0, 0), (answer.MeanFinishedShots, answer.MeanMissedShots, answer.OverHoursShare));
        Assert.Equal(("wok", 12), (answer.Bounds.Bottleneck, answer.Bounds.BottleneckShotsPerHour));
        Assert.Equal("wok", answer.Bottleneck);
        Assert.Equal([0.5, 0.1, 0.4], answer.Resources.Select(one => one.PathShare));
    }

    [Fact]
    public void FramesKeepersAndFinishedShots_AreCountedApart()
    {
        var answer = Calls.ShootPlan.EstimateThroughput(Runs.ThreeDishes());
        Assert.True(answer.MeanFinishedShots is > 2.5 and <= 3);
        Assert.True(answer.KeepersPerHour >= answer.MeanShotsPerHour);
        Assert.Equal(0.6, answer.KeepersPerHour / (answer.FramesPerHour / 5), 0.02);
        Assert.Equal((1 - Math.Pow(0.4, 4)) / 0.6, answer.Bounds.MeanTries, 1e-12);
        Assert.True(answer.MeanShotsPerHour < answer.Bounds.BottleneckShotsPerHour);
    }

    [Fact]
    public void DayToldInFull_TakesNoDefault_AndRestsOnItsBasis()
    {
        var request = Runs.ThreeDishes();
        var answer = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Empty(answer.Defaults);
        Assert.Equal(EstimateBasis.Measured, answer.Basis);
        request.Day.Shots[1].Frames = null;
        request.ClearPolicy();
        answer = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Equal(["policy", "day.shots.frames"], answer.Defaults.Select(one => one.Name));
        Assert.Equal("1 shots are finished with one try", answer.Defaults[1].Text);
        Assert.Equal(EstimateBasis.Assumption, answer.Basis);
    }

    [Fact]
    public void LittleTold_StatesWhatWasTaken() => Assert.Equal(
        ["policy", "most_plates", "day.crew.stylists", "day.crew.runners", "day.changes", "day.shots.frames", "day.shots.approval", "longest"],
        Calls.ShootPlan.EstimateThroughput(Runs.OneDish()).Defaults.Select(one => one.Name));

    [Fact]
    public void Changes_AreWorthWhatTheChangedDaySaves_OnTheSameDraws()
    {
        var request = Runs.ThreeDishes();
        request.Changes.Add(new DayChange { Kind = DayChangeKind.CookingFactor, Value = 0.5 });
        request.Changes.Add(new DayChange { Kind = DayChangeKind.BudgetFactor, Value = 1 });
        request.Changes.Add(new DayChange { Kind = DayChangeKind.KeepChance, Value = 1 });
        request.Changes.Add(new DayChange { Kind = DayChangeKind.SetupFactor, Value = 0 });
        request.Changes.Add(new DayChange { Kind = DayChangeKind.StationMore, Name = "wok" });
        var before = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Equal(request.Changes, before.Changes.Select(one => one.Change));
        Assert.All(before.Changes, one => Assert.True(one.SavedLowS <= one.MeanSavedS && one.MeanSavedS <= one.SavedHighS));
        Assert.Equal([false, true, false], before.Changes.Take(3).Select(one => one.BuysNothing));
        Assert.Equal(0, before.Changes[1].MeanSavedS);
        foreach (var plate in request.Day.Plates)
        {
            var time = plate.Stages[0].Time;
            (time.Likely.Seconds, time.Shortest.Seconds, time.Longest.Seconds) = (time.Likely.Seconds / 2, time.Shortest.Seconds / 2, time.Longest.Seconds / 2);
        }

        request.Changes.Clear();
        var after = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Equal(Calls.Number(before.Finish.Mean) - Calls.Number(after.Finish.Mean), before.Changes[0].MeanSavedS, 0.5);
    }

    [Fact]
    public void CallForPlates_BreaksFewerBudgets_AndWaitsForThem()
    {
        var request = Runs.ThreeDishes();
        var clock = Calls.ShootPlan.EstimateThroughput(request);
        request.Policy = FiringPolicy.Call;
        var call = Calls.ShootPlan.EstimateThroughput(request);
        Assert.True(call.Shots.Sum(one => one.BudgetBreakChance) < clock.Shots.Sum(one => one.BudgetBreakChance));
        Assert.True(Calls.Number(call.MeanIdle) > 0);
    }

    [Fact]
    public void BudgetThatNeverHolds_BreaksAlways_AndItsShotIsGivenUp()
    {
        var answer = Calls.ShootPlan.EstimateThroughput(Runs.OneDish(budgetS: 200));
        Assert.Equal((1, 1, 1, 0), (answer.Shots[0].BudgetBreakChance, answer.Shots[0].MeanMadeAgain, answer.Shots[0].MeanGivenUp, answer.MeanFinishedShots));
        Assert.InRange(answer.Shots[0].BudgetBreakChanceError, 0.001, 0.02);
    }

    [Fact]
    public void Idle_IsWaitingForPlates_NotForHours()
    {
        var request = Runs.OneDish();
        Assert.Equal(360, Calls.Number(Calls.ShootPlan.EstimateThroughput(request).MeanIdle));
        request.Day.Shots[0].Hours.Add(new OpenHours { From = Runs.S(200), Until = Runs.S(7200) });
        Assert.Equal(160, Calls.Number(Calls.ShootPlan.EstimateThroughput(request).MeanIdle));
        request.Day.Shots[0].Hours[0].From = Runs.S(3600);
        Assert.Equal(0, Calls.Number(Calls.ShootPlan.EstimateThroughput(request).MeanIdle));
    }

    [Fact]
    public void ShotThatFindsNoPlace_IsMissed()
    {
        var request = Runs.OneDish();
        request.Day.Shots[0].Hours.Add(new OpenHours { From = Runs.S(0), Until = Runs.S(100) });
        var answer = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Equal((1, 0, 0), (answer.MeanMissedShots, answer.MeanFinishedShots, answer.MeanShotsPerHour));
        Assert.Empty(answer.Shots);
    }

    [Fact]
    public void Order_IsThatOfTheSequence()
    {
        var request = Examples.Throughput();
        request.Replications = 100;
        request.Changes.Clear();
        var order = Calls.ShootPlan.SequenceShoot(new() { Day = request.Day });
        var answer = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Equal((order.Solution ?? order.NotReached.Nearest).Shots.Select(shot => shot.Name), answer.Shots.SelectMany(shot => shot.Names));
        Assert.Equal((order.Solution ?? order.NotReached.Nearest).Finish, answer.Bounds.PlannedFinish);
    }

    [Fact]
    public void Seed_GivesTheSameDraws_AnotherOneOthers()
    {
        var request = Runs.ThreeDishes();
        var first = Calls.ShootPlan.EstimateThroughput(request);
        Assert.Equal((1u, 2000u), (first.Seed, first.Replications));
        Assert.Equal(first, Calls.ShootPlan.EstimateThroughput(request));
        request.Seed = 2;
        Assert.NotEqual(first.Finish, Calls.ShootPlan.EstimateThroughput(request).Finish);
    }

    [Fact]
    public void Cancelled_InTheMiddle_StopsWithoutAnAnswer()
    {
        var request = Runs.ThreeDishes();
        request.Replications = 100_000;
        var source = Runs.CancelledSoon();
        var error = Assert.Throws<RpcException>(() => Calls.ShootPlan.EstimateThroughput(request, cancellationToken: source.Token));
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
    }
}
