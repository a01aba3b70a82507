using Grpc.Core;
using Grpc.Core.Interceptors;
using StudioCalc.Client.Embedded;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

public sealed class RemoteAndEmbeddedTests : IAsyncLifetime
{
    private readonly StudioCalcClient _embedded = EmbeddedStudioCalc.Create();
    private TestHost _host = null!;
    private StudioCalcClient _remote = null!;

    public async Task InitializeAsync()
    {
        _host = await TestHost.StartAsync();
        _remote = _host.Connect();
    }

    public async Task DisposeAsync()
    {
        await _remote.DisposeAsync();
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task EvaluateExposure_OfTheExample_IsTheSameOnBothWays()
    {
        var request = Samples.Read<EvaluateExposureRequest>("evaluate-exposure.json");
        var answer = await _remote.Exposure.EvaluateExposureAsync(request);
        Assert.Equal(1, answer.LightOverSettingStops, 1e-9);
        Assert.NotEmpty(answer.Working);
        Assert.Equal(await _embedded.Exposure.EvaluateExposureAsync(request), answer);
    }

    [Fact]
    public async Task BalanceFill_OfTheExample_IsTheSameOnBothWays()
    {
        var request = Samples.Read<BalanceFillRequest>("balance-fill.json");
        var answer = await _remote.LightingRatio.BalanceFillAsync(request);
        Assert.Equal(2, answer.Ways.Count);
        Assert.Equal(await _embedded.LightingRatio.BalanceFillAsync(request), answer);
    }

    [Fact]
    public async Task GetCapabilities_OnBothWays_IsTheSame()
    {
        var answer = await _remote.Capabilities.GetCapabilitiesAsync(new());
        Assert.Contains(ExposureService.Descriptor.FullName, answer.Services);
        Assert.Equal(await _embedded.Capabilities.GetCapabilitiesAsync(new()), answer);
    }

    [Fact]
    public async Task Call_WithBadFields_NamesThemAllOnBothWays()
    {
        FieldViolation[] expected =
        [
            new("settings.shutter_speed.time_s", RefusalReason.OutOfRange, ""),
            new("settings.iso", RefusalReason.Required, ""),
            new("reflected_constant", RefusalReason.OutOfRange, ""),
        ];
        var errors = new List<InvalidRequestException>();
        foreach (var client in new[] { _remote, _embedded })
        {
            errors.Add(await Assert.ThrowsAsync<InvalidRequestException>(
                () => client.Exposure.EvaluateExposureAsync(Samples.BadExposure())));
        }

        Assert.All(errors, error =>
        {
            Assert.Equal(expected, error.Violations.Select(violation => violation with { Description = "" }));
            Assert.Equal(StatusCode.InvalidArgument, error.Code);
            Assert.Equal(RefusalReason.InvalidFields, error.Reason);
            Assert.IsType<RpcException>(error.InnerException);
            Assert.All(error.Violations, violation =>
                Assert.Contains($"{violation.Field}: {violation.Description}", error.Message, StringComparison.Ordinal));
        });
        Assert.Equal(errors[0].Violations, errors[1].Violations);
        Assert.Equal(errors[0].Message, errors[1].Message);
    }

    [Fact]
    public async Task Call_FromManyThreads_IsAnsweredForEach()
    {
        var answers = await Task.WhenAll(Enumerable.Range(0, 250).Select(_ => _remote.Exposure.EvaluateExposureAsync(Samples.Exposure())));
        var expected = await _embedded.Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.All(answers, answer => Assert.Equal(expected, answer));
    }

    [Fact]
    public async Task Call_WithoutARequest_Throws()
    {
        await Assert.ThrowsAsync<ArgumentNullException>(() => _remote.Exposure.EvaluateExposureAsync(null!));
        await Assert.ThrowsAsync<ArgumentNullException>(() => _embedded.Exposure.EvaluateExposureAsync(null!));
    }

    [Fact]
    public async Task Embedded_WithTimeOver_TellsTheTimeout()
    {
        using var client = new StudioCalcClient(new InProcessCallInvoker().Intercept(new Dawdler()), TimeSpan.FromMilliseconds(2));
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(StatusCode.DeadlineExceeded, error.Code);
        Assert.Equal(RefusalReason.DeadlineExceeded, error.Reason);
        Assert.Contains("timeout of 0.002 s", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Embedded_WithACancelledToken_IsCancelled()
    {
        var error = await Assert.ThrowsAnyAsync<OperationCanceledException>(
            () => _embedded.Exposure.EvaluateExposureAsync(Samples.Exposure(), new CancellationToken(canceled: true)));
        Assert.True(error.CancellationToken.IsCancellationRequested);
    }

    private sealed class Dawdler : Interceptor
    {
        public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
            TRequest request,
            ClientInterceptorContext<TRequest, TResponse> context,
            AsyncUnaryCallContinuation<TRequest, TResponse> continuation)
        {
            SpinWait.SpinUntil(() => TimeProvider.System.GetUtcNow().UtcDateTime > context.Options.Deadline);
            return continuation(request, context);
        }
    }
}
