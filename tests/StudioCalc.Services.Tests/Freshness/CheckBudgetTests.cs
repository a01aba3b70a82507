using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class CheckBudgetTests
{
    public static TheoryData<string, string, Action<CheckBudgetRequest>> Bad => new()
    {
        { "steps[0].shortest", "CONFLICT", request => request.Steps[0].Shortest = S(26) },
        { "steps[0].longest", "CONFLICT", request => request.Steps[0].Longest = S(24) },
        { "steps[0].longest", "CONFLICT", request => (request.Steps[0].Spread, request.Steps[0].Longest) = (StepSpread.LogNormal, S(2501)) },
        { "steps[2].refresh.component_indices[0]", "OUT_OF_RANGE", request => request.Steps[2].Refresh.ComponentIndices[0] = 6 },
        { "steps[2].refresh.component_indices[1]", "CONFLICT", request => request.Steps[2].Refresh.ComponentIndices.Add(1) },
        { "steps[2].refresh.component_indices[1]", "CONFLICT", request => request.Steps[2].Refresh.ComponentIndices.Add(3) },
        { "steps[2].refresh.component_indices[0]", "CONFLICT", request => request.Components[1].ClearMostRefreshes() },
        { "steps[3].refresh.component_indices[0]", "CONFLICT", request => request.Steps[3].Refresh = new() { ComponentIndices = { 1 } } },
        { "components[0].clock_starts.step_index", "OUT_OF_RANGE", request => request.Components[0].ClockStarts.StepIndex = 7 },
        { "components[0].needed_until", "CONFLICT", request => (request.Components[0].ClockStarts, request.Components[0].NeededUntil) = (At(4), At(3)) },
        { "components[0].needed_from", "CONFLICT", request => (request.Components[0].ClockStarts, request.Components[0].NeededFrom) = (At(4), At(3)) },
        { "components[0].needed_from", "CONFLICT", request => (request.Components[0].NeededFrom, request.Components[0].NeededUntil) = (At(5), At(4)) },
        { "components[4].item.profile_id", "CONFLICT", request => request.Components[4].Item.ProfileId = "sliced-rare-meat-pinks" },
        { "components[4].item.decay.profile_id", "CONFLICT", request => request.Components[4].Item.Decay = new() { ProfileId = "raw-beef-bloom" } },
        { "components[0].ends_at", "REQUIRED", request => request.Components[0].EndsAt = null },
        { "frames.step_index", "OUT_OF_RANGE", request => request.Frames.StepIndex = 7 },
        { "draws", "OUT_OF_RANGE", request => request.Draws = 384616 },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<CheckBudgetRequest> spoil)
    {
        var request = Examples.Budget();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.Freshness.CheckBudget(request)));
    }

    [Fact]
    public void MissingAir_IsRefusedOnce()
    {
        var request = Examples.Budget();
        request.Air = null;
        Assert.Equal([("air", "REQUIRED")], Calls.Refused(() => Calls.Freshness.CheckBudget(request)));
    }

    [Fact]
    public void ServedBowl_TellsWindowsWithTheirKinds_AndWhenHerbsGoOn()
    {
        var answer = Calls.Freshness.CheckBudget(Examples.Budget());
        Assert.Equal(
            [SourceKind.Computed, SourceKind.Practice, SourceKind.Computed, SourceKind.Given, SourceKind.Practice],
            answer.Components.Take(5).Select(component => component.Window.SourceKind));
        var herbs = answer.Components[5];
        Assert.Equal(91, herbs.LatestStartS, 1e-9);
        Assert.Equal(166 - herbs.Window.Span.Likely.ToTimeSpan().TotalSeconds, herbs.EarliestStartS, 1e-6);
        Assert.True(answer.AllHoldLikely);
        Assert.InRange(answer.AllHoldChance, 0.5, 0.9999);
        Assert.True(answer.AllHoldChance <= answer.Components.Min(component => component.HoldChance));
    }

    [Fact]
    public void SharedSteps_TwoLikeComponents_HoldTogetherOrNotAtAll()
    {
        var one = OneStep(window: 30);
        var two = one.Clone();
        two.Components.Add(two.Components[0].Clone());
        var (alone, together) = (Calls.Freshness.CheckBudget(one), Calls.Freshness.CheckBudget(two));
        Assert.InRange(alone.AllHoldChance, 0.3, 0.8);
        Assert.Equal(alone.AllHoldChance, together.AllHoldChance);
    }

    [Fact]
    public void Cuts_AreWhatTheBudgetWouldBeWithStepsOfNoTime_TheMostHelpfulFirst()
    {
        var request = Examples.Budget();
        foreach (var step in request.Steps)
        {
            step.MayBeCut = step.Refresh is null;
        }

        var cuts = Calls.Freshness.CheckBudget(request).Cuts;
        Assert.Equal(6, cuts.Count);
        Assert.Equal(cuts.OrderByDescending(cut => cut.AllHoldChance), cuts);
        foreach (var cut in cuts)
        {
            var without = request.Clone();
            var step = without.Steps[(int)cut.StepIndex];
            Assert.Equal(step.Name, cut.Name);
            (step.Likely, step.Shortest, step.Longest) = (S(0), null, null);
            Assert.Equal(Calls.Freshness.CheckBudget(without).AllHoldChance, cut.AllHoldChance);
        }
    }

    [Fact]
    public void CutOfARefresh_TakesTheRefreshAway()
    {
        var request = Examples.Budget();
        request.Components[1].Item = new() { OwnWindow = new() { Likely = S(130) } };
        request.Steps[2].MayBeCut = true;
        var answer = Calls.Freshness.CheckBudget(request);
        var cut = Assert.Single(answer.Cuts, cut => cut.StepIndex == 2);
        Assert.True(cut.AllHoldChance < answer.AllHoldChance);
    }

    [Fact]
    public void Refresh_BetweenFrames_SplitsTheNeed()
    {
        var request = new CheckBudgetRequest
        {
            Steps = { Step("frames", 100), Step("mist", 10), Step("more frames", 100) },
            Components = { Component(window: 100, from: 0, until: 2) },
        };
        request.Steps[1].Refresh = new() { ComponentIndices = { 0 } };
        request.Components[0].NeededFrom = At(0);
        request.Components[0].MostRefreshes = 1;
        var component = Calls.Freshness.CheckBudget(request).Components[0];
        Assert.Equal((1, 0, S(110), 0), (component.HoldChance, component.SlackS, component.ClockRestarts, component.EarliestStartS));
        request.Steps[0].Likely = S(101);
        component = Calls.Freshness.CheckBudget(request).Components[0];
        Assert.Equal((0, -1), (component.HoldChance, component.SlackS));
    }

    [Fact]
    public void Settling_TooShort_DoesNotHold_ThoughTimeIsLeft()
    {
        var request = new CheckBudgetRequest
        {
            Steps = { Step("wait", 20), Step("frames", 30) },
            Components = { Component(window: 500, from: 0, until: 1) },
        };
        request.Components[0].Settling = S(20);
        Assert.Equal(1, Calls.Freshness.CheckBudget(request).AllHoldChance);
        request.Components[0].Settling = S(21);
        var answer = Calls.Freshness.CheckBudget(request);
        Assert.Equal((0, false, -1, 450), (answer.AllHoldChance, answer.AllHoldLikely, answer.Components[0].LatestStartS, answer.Components[0].SlackS));
    }

    [Fact]
    public void LookThatDoesNotEnd_HoldsInEveryDraw_AndTellsWhy()
    {
        var request = OneStep(window: 1);
        request.Components[0].Item = new() { Glass = new() { SurfaceCelsius = 20 } };
        request.Air = new() { TemperatureCelsius = 22, RelativeHumidity = 0.4 };
        var answer = Calls.Freshness.CheckBudget(request);
        Assert.Equal((1, ""), (answer.AllHoldChance, answer.TightestComponent));
        Assert.Equal(HoldsOnReason.NoDew, answer.Components[0].HoldsOn.Reason);
        Assert.False(answer.Components[0].HasSlackS || answer.Components[0].HasEarliestStartS);
    }

    [Theory]
    [InlineData(90, 2.0, null, 46, null)]
    [InlineData(90, 0.1, null, 901, null)]
    [InlineData(3, 0.3, 4, 11, 2)]
    [InlineData(1, 2.0, 3, 1, 0)]
    public void Frames_AreOneMoreThanIntervals(int seconds, double interval, int? inStack, uint frames, int? stacks)
    {
        var request = new CheckBudgetRequest { Steps = { Step("frames", seconds) }, Components = { Component(window: 500, from: 0, until: 0) } };
        request.Frames = new() { StepIndex = 0, IntervalS = interval };
        if (inStack is { } count)
        {
            request.Frames.FramesInStack = (uint)count;
        }

        var answer = Calls.Freshness.CheckBudget(request);
        Assert.Equal(frames, answer.FramesThatFit);
        Assert.Equal(stacks, answer.HasStacksThatFit ? (int)answer.StacksThatFit : null);
    }

    [Fact]
    public void Seed_GivesTheSameDraws_AnotherOneOthers()
    {
        var request = OneStep(window: 30);
        var first = Calls.Freshness.CheckBudget(request);
        Assert.Equal((1u, 20000u), (first.Seed, first.Draws));
        request.Seed = 1;
        Assert.Equal(first, Calls.Freshness.CheckBudget(request));
        request.Seed = 2;
        var second = Calls.Freshness.CheckBudget(request);
        Assert.NotEqual(first.AllHoldChance, second.AllHoldChance);
        Assert.Equal(first.AllHoldChance, second.AllHoldChance, 5 * first.AllHoldChanceError);
    }

    [Fact]
    public void Cancelled_InTheMiddle_StopsWithoutAnAnswer()
    {
        var request = OneStep(window: 30);
        request.Draws = 1_000_000;
        request.Steps[0].MayBeCut = true;
        using var source = new CancellationTokenSource();
        // A thread of its own, as a timer waits for one of the pool, all of which other tests may hold.
        var canceller = new Thread(() =>
        {
            Thread.Sleep(20);
            source.Cancel();
        });
        canceller.Start();
        var error = Assert.Throws<RpcException>(() => Calls.Freshness.CheckBudget(request, cancellationToken: source.Token));
        canceller.Join();
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
    }

    private static CheckBudgetRequest OneStep(int window)
    {
        var request = new CheckBudgetRequest { Steps = { Step("frames", 28) }, Components = { Component(window, from: 0, until: 0) } };
        (request.Steps[0].Shortest, request.Steps[0].Longest) = (S(10), S(60));
        return request;
    }

    private static BudgetStep Step(string name, int seconds) => new() { Name = name, Likely = S(seconds) };

    private static BudgetComponent Component(int window, uint from, uint until) => new()
    {
        Name = "noodles",
        Item = new() { OwnWindow = new() { Likely = S(window) } },
        ClockStarts = At(from),
        NeededUntil = new() { StepIndex = until, AtEnd = true },
    };

    private static StepMoment At(uint step) => new() { StepIndex = step };

    private static Duration S(long seconds) => new() { Seconds = seconds };
}
