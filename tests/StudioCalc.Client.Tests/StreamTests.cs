using Grpc.Core;
using StudioCalc.Client.Embedded;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

/// <summary>A call that answers with a stream fails with the same exceptions as every other.</summary>
public sealed class StreamTests
{
    private static readonly StreamPlanResponse[] Messages =
    [
        new() { Progress = new() { Step = PlanStep.Order, DoneShare = 0.4 } },
        new() { Plan = new() { Title = "day one" } },
    ];

    private readonly FakeStudioCalc _fake = new();

    [Fact]
    public async Task Messages_ComeInTheirOrder()
    {
        _fake.AnswerStream((StreamPlanRequest _) => Messages);
        Assert.Equal(Messages, await _fake.Client.ShootPlan.StreamPlanAsync(new()).ToListAsync());
        Assert.Equal(Messages, await _fake.Client.StreamAsync(Method, new StreamPlanRequest()).ToListAsync());
    }

    [Fact]
    public async Task Answer_OfOneMessage_IsAStreamOfOne()
    {
        _fake.Answer((StreamPlanRequest _) => Messages[1]);
        Assert.Equal([Messages[1]], await _fake.Client.ShootPlan.StreamPlanAsync(new()).ToListAsync());
    }

    [Fact]
    public void AnswerStream_OfACallWithOneAnswer_Throws() => Assert.Throws<ArgumentException>(
        () => _fake.AnswerStream((PlanShootRequest _) => Array.Empty<PlanShootResponse>()));

    [Fact]
    public async Task Refusal_NamesItsFields()
    {
        _fake.Refuse<StreamPlanRequest>("plan.day", RefusalReason.Required, "Must be given.");
        var error = await Assert.ThrowsAsync<InvalidRequestException>(() => _fake.Client.ShootPlan.StreamPlanAsync(new()).ToListAsync().AsTask());
        Assert.Equal("plan.day", Assert.Single(error.Violations).Field);
    }

    [Fact]
    public async Task Failure_AfterTheFirstMessage_IsTold()
    {
        _fake.AnswerStream((StreamPlanRequest _) => Broken());
        var seen = 0;
        var error = await Assert.ThrowsAsync<StudioCalcException>(async () =>
        {
            await foreach (var _ in _fake.Client.ShootPlan.StreamPlanAsync(new()))
            {
                seen++;
            }
        });
        Assert.Equal((1, StatusCode.Unavailable), (seen, error.Code));

        static IEnumerable<StreamPlanResponse> Broken()
        {
            yield return Messages[0];
            throw new RpcException(new(StatusCode.Unavailable, "gone"));
        }
    }

    [Fact]
    public async Task Cancellation_BetweenMessages_Throws()
    {
        _fake.AnswerStream((StreamPlanRequest _) => Messages);
        using var stop = new CancellationTokenSource();
        await Assert.ThrowsAsync<OperationCanceledException>(async () =>
        {
            await foreach (var _ in _fake.Client.ShootPlan.StreamPlanAsync(new(), stop.Token))
            {
                await stop.CancelAsync();
            }
        });
    }

    [Fact]
    public async Task Embedded_RefusesAsAHostDoes()
    {
        using var client = EmbeddedStudioCalc.Create();
        var error = await Assert.ThrowsAsync<InvalidRequestException>(() => client.ShootPlan.StreamPlanAsync(new()).ToListAsync().AsTask());
        Assert.Equal("plan", Assert.Single(error.Violations).Field);
    }

    [Fact]
    public async Task CallOfTheOtherKind_Throws()
    {
        await Assert.ThrowsAsync<ArgumentException>(() => _fake.Client.CallAsync(Method, new StreamPlanRequest()));
        var unary = ShootPlanReflection.Descriptor.Services[0].Methods.Single(method => method.Name == "PlanShoot");
        Assert.Throws<ArgumentException>(() => _fake.Client.StreamAsync(unary, new PlanShootRequest()));
    }

    private static Google.Protobuf.Reflection.MethodDescriptor Method =>
        ShootPlanReflection.Descriptor.Services[0].Methods.Single(method => method.Name == "StreamPlan");
}
