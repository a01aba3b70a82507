using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class ContractInterceptorTests
{
    private static readonly ContractInterceptor Interceptor = new();

    public static TheoryData<double> NotFinite => [double.NaN, double.PositiveInfinity, double.NegativeInfinity];

    [Fact]
    public void BuildChecks_TheContract_HasNoUnknownRule() => ContractInterceptor.BuildChecks();

    [Theory]
    [MemberData(nameof(NotFinite))]
    public async Task AnswerThatIsNotFinite_AnywhereInside_IsOutOfRange(double bad)
    {
        EvaluateExposureResponse[] answers =
        [
            new() { LightOverSettingStops = bad },
            new() { Settings = new() { Aperture = new() { FNumber = bad } } },
            new() { Working = { new WorkingStep(), new WorkingStep { Value = bad } } },
            new() { Advisories = { new Advisory { Values = { ["a"] = 1, ["b"] = bad } } } },
        ];
        foreach (var answer in answers)
        {
            var error = await Assert.ThrowsAsync<RpcException>(() => Call(new EvaluateExposureRequest(), _ => answer));
            Assert.Equal(StatusCode.OutOfRange, error.StatusCode);
            Assert.Equal("ANSWER_NOT_FINITE", Reason(error));
        }
    }

    [Fact]
    public async Task AnswerThatIsFinite_Passes()
    {
        var answer = new EvaluateExposureResponse { LightOverSettingStops = 1 };
        Assert.Same(answer, await Call(new EvaluateExposureRequest(), _ => answer));
    }

    [Fact]
    public async Task RequestWithABadField_NeverReachesTheAdapter()
    {
        var reached = false;
        var request = new EvaluateExposureRequest { LensLossStops = double.NaN };
        var error = await Assert.ThrowsAsync<RpcException>(() => Call(request, _ =>
        {
            reached = true;
            return new EvaluateExposureResponse();
        }));
        Assert.False(reached);
        Assert.Equal([("lens_loss_stops", "OUT_OF_RANGE")], Calls.Fields(error));
        Assert.Equal("INVALID_FIELDS", Reason(error));
    }

    [Fact]
    public async Task RequestOverTheSizeLimit_IsResourceExhausted()
    {
        var settings = new CameraSettings { Aperture = new() { Mark = new string('8', ContractInterceptor.MaxRequestBytes) } };
        var error = await Assert.ThrowsAsync<RpcException>(() => Call(new EvaluateExposureRequest { Settings = settings }, _ => new EvaluateExposureResponse()));
        Assert.Equal((StatusCode.ResourceExhausted, "REQUEST_TOO_LARGE"), (error.StatusCode, Reason(error)));
        Assert.True(Calls.StatusOf(error).CalculateSize() < Refusal.MaxBytes);
    }

    [Fact]
    public void CallAfterItsDeadline_IsDeadlineExceeded()
    {
        var error = Assert.Throws<RpcException>(
            () => Calls.Exposure.EvaluateExposure(Examples.Exposure(), deadline: DateTime.UnixEpoch.ToUniversalTime()));
        Assert.Equal((StatusCode.DeadlineExceeded, "DEADLINE_EXCEEDED"), (error.StatusCode, Reason(error)));
    }

    [Fact]
    public void CancelledCall_IsCancelled()
    {
        var error = Assert.Throws<RpcException>(
            () => Calls.Exposure.EvaluateExposure(Examples.Exposure(), cancellationToken: new CancellationToken(canceled: true)));
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
    }

    [Fact]
    public async Task StreamedAnswerThatIsNotFinite_DoesNotLeave()
    {
        var sent = new List<StreamPlanResponse>();
        var error = await Assert.ThrowsAsync<RpcException>(() => Stream(SmallDay.Plan(), sent, async stream =>
        {
            await stream.WriteAsync(new() { Progress = new() { DoneShare = 0.5 } });
            await stream.WriteAsync(new() { Progress = new() { DoneShare = double.NaN } });
        }));
        Assert.Equal((StatusCode.OutOfRange, "ANSWER_NOT_FINITE"), (error.StatusCode, Reason(error)));
        Assert.Equal(0.5, Assert.Single(sent).Progress.DoneShare);
    }

    [Fact]
    public async Task StreamedRequestWithABadField_NeverReachesTheAdapter()
    {
        var reached = false;
        var plan = SmallDay.Plan();
        plan.Replications = 1;
        var error = await Assert.ThrowsAsync<RpcException>(() => Stream(plan, [], _ =>
        {
            reached = true;
            return Task.CompletedTask;
        }));
        Assert.False(reached);
        Assert.Equal([("plan.replications", "OUT_OF_RANGE")], Calls.Fields(error));
    }

    private static async Task Stream(PlanShootRequest plan, List<StreamPlanResponse> sent, Func<IServerStreamWriter<StreamPlanResponse>, Task> adapter)
    {
        using var context = new InProcessCallContext("/test", null, null, CancellationToken.None);
        await Interceptor.ServerStreamingServerHandler(
            new StreamPlanRequest { Plan = plan }, new Sent(sent), context, (_, stream, _) => adapter(stream));
    }

    private sealed class Sent(List<StreamPlanResponse> sent) : IServerStreamWriter<StreamPlanResponse>
    {
        public WriteOptions? WriteOptions { get; set; }

        public Task WriteAsync(StreamPlanResponse message)
        {
            sent.Add(message);
            return Task.CompletedTask;
        }
    }

    private static async Task<EvaluateExposureResponse> Call(
        EvaluateExposureRequest request, Func<EvaluateExposureRequest, EvaluateExposureResponse> adapter)
    {
        using var context = new InProcessCallContext("/test", null, null, CancellationToken.None);
        return await Interceptor.UnaryServerHandler(request, context, (asked, _) => Task.FromResult(adapter(asked)));
    }

    private static string Reason(RpcException error) => Calls.StatusOf(error).Details[0].Unpack<Google.Rpc.ErrorInfo>().Reason;
}
