using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>The streaming twin tells its progress and then the same plan.</summary>
public sealed class StreamPlanTests
{
    [Fact]
    public async Task Stream_TellsProgressThatNeverFalls_ThenThePlan()
    {
        var messages = await AllAsync(Calls.ShootPlan.StreamPlan(Examples.StreamedPlan()));
        var progress = messages.SkipLast(1).Select(message => message.Progress).ToList();
        Assert.DoesNotContain(null, progress);
        Assert.Equal(progress.OrderBy(one => one.DoneShare), progress);
        Assert.Equal(Enum.GetValues<PlanStep>().Skip(1), progress.Select(one => one.Step).Distinct());
        Assert.Equal((0, 1), (progress[0].DoneShare, progress[^1].DoneShare));
        Assert.Equal(Calls.ShootPlan.PlanShoot(Examples.Plan()), messages[^1].Plan);
    }

    [Fact]
    public async Task BadField_IsRefusedUnderItsPath()
    {
        var request = new StreamPlanRequest { Plan = SmallDay.Plan() };
        request.Plan.Start.TimeZone = "Noodle/Bowl";
        var error = await Assert.ThrowsAsync<RpcException>(() => AllAsync(Calls.ShootPlan.StreamPlan(request)));
        Assert.Equal([("plan.start.time_zone", "UNKNOWN_MARK")], Calls.Fields(error));
    }

    [Fact]
    public async Task MissingField_IsRefusedByTheChecks()
    {
        var error = await Assert.ThrowsAsync<RpcException>(() => AllAsync(Calls.ShootPlan.StreamPlan(new())));
        Assert.Equal([("plan", "REQUIRED")], Calls.Fields(error));
    }

    [Fact]
    public async Task DeadlineThatIsOver_IsExceeded()
    {
        var error = await Assert.ThrowsAsync<RpcException>(
            () => AllAsync(Calls.ShootPlan.StreamPlan(Examples.StreamedPlan(), deadline: DateTime.UnixEpoch.ToUniversalTime())));
        Assert.Equal(StatusCode.DeadlineExceeded, error.StatusCode);
    }

    [Theory]
    [InlineData(PlanStep.Setups)]
    [InlineData(PlanStep.Shots)]
    [InlineData(PlanStep.Order)]
    [InlineData(PlanStep.Simulation)]
    public async Task Cancel_AtAnyStep_EndsTheStream(PlanStep step)
    {
        using var stop = new CancellationTokenSource();
        using var call = Calls.ShootPlan.StreamPlan(Examples.StreamedPlan(), cancellationToken: stop.Token);
        var error = await Assert.ThrowsAsync<RpcException>(async () =>
        {
            while (await call.ResponseStream.MoveNext(CancellationToken.None))
            {
                var message = call.ResponseStream.Current;
                Assert.NotEqual(StreamPlanResponse.MessageOneofCase.Plan, message.MessageCase);
                if (message.Progress.Step == step)
                {
                    await stop.CancelAsync();
                }
            }
        });
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
        Assert.Equal(StatusCode.Cancelled, call.GetStatus().StatusCode);
    }

    private static async Task<List<StreamPlanResponse>> AllAsync(AsyncServerStreamingCall<StreamPlanResponse> call)
    {
        var all = new List<StreamPlanResponse>();
        using (call)
        {
            while (await call.ResponseStream.MoveNext(CancellationToken.None))
            {
                all.Add(call.ResponseStream.Current);
            }
        }

        return all;
    }
}
