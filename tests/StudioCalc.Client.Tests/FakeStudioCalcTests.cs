using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

public class FakeStudioCalcTests
{
    private readonly FakeStudioCalc _fake = new();

    [Fact]
    public async Task Answer_FromTheRequest_ComesBack()
    {
        _fake.Answer((EvaluateExposureRequest request) => new EvaluateExposureResponse { ModelRevision = request.Settings.Iso.Mark });
        Assert.Equal("100", (await _fake.Client.Exposure.EvaluateExposureAsync(Samples.Exposure())).ModelRevision);
    }

    [Fact]
    public async Task Answer_ThatIsOneObject_IsCopiedForEachCall()
    {
        var answer = new EvaluateExposureResponse { ModelRevision = "a" };
        _fake.Answer((EvaluateExposureRequest _) => answer);
        var received = await _fake.Client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        answer.ModelRevision = "b";
        Assert.Equal("a", received.ModelRevision);
    }

    [Fact]
    public void Answer_OfAnotherCall_Throws() => Assert.Throws<ArgumentException>(
        () => _fake.Answer((EvaluateExposureRequest _) => new BalanceFillResponse()));

    [Fact]
    public async Task Answer_ThatThrows_LetsTheErrorThrough()
    {
        _fake.Answer<EvaluateExposureRequest, EvaluateExposureResponse>(_ => throw new FormatException());
        await Assert.ThrowsAsync<FormatException>(() => _fake.Client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
    }

    [Fact]
    public async Task Refuse_WithAField_ThrowsAsAHostWould()
    {
        _fake.Refuse<EvaluateExposureRequest>("settings.iso.mark", RefusalReason.UnknownMark, "Not a mark.");
        var error = await Assert.ThrowsAsync<InvalidRequestException>(
            () => _fake.Client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal([new("settings.iso.mark", RefusalReason.UnknownMark, "Not a mark.")], error.Violations);
        Assert.Equal(RefusalReason.InvalidFields, error.Reason);
    }

    [Fact]
    public async Task Refuse_WithSeveralFields_NamesThemAll()
    {
        FieldViolation[] violations = [new("a", RefusalReason.Required, "A."), new("b", RefusalReason.OutOfRange, "B.")];
        _fake.Refuse<EvaluateExposureRequest>(violations);
        var error = await Assert.ThrowsAsync<InvalidRequestException>(
            () => _fake.Client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(violations, error.Violations);
    }

    [Theory]
    [InlineData(StatusCode.Unavailable)]
    [InlineData(StatusCode.DeadlineExceeded)]
    [InlineData(StatusCode.Cancelled)]
    public async Task Fail_WithACode_ThrowsIt(StatusCode code)
    {
        _fake.Fail<EvaluateExposureRequest>(code);
        var error = await Assert.ThrowsAsync<StudioCalcException>(
            () => _fake.Client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(code, error.Code);
    }

    [Fact]
    public async Task Requests_AfterCalls_AreCopiesInOrder()
    {
        _fake.Answer((EvaluateExposureRequest _) => new EvaluateExposureResponse());
        var sent = Samples.Exposure();
        await _fake.Client.Exposure.EvaluateExposureAsync(sent);
        sent.Settings.Iso = Iso.At("200");
        await _fake.Client.Exposure.EvaluateExposureAsync(sent);
        Assert.Equal(["100", "200"], _fake.Requests.Cast<EvaluateExposureRequest>().Select(request => request.Settings.Iso.Mark));
    }

    [Fact]
    public async Task Call_WithoutAnAnswer_NamesTheCall()
    {
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => _fake.Client.LightingRatio.BalanceFillAsync(new()));
        Assert.Equal(StatusCode.Unimplemented, error.Code);
        Assert.Contains("BalanceFill", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Double_OfASubject_AnswersWhatItOverridesOnly()
    {
        var client = new DoubledClient();
        Assert.Equal("double", (await client.Exposure.EvaluateExposureAsync(new())).ModelRevision);
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Capabilities.GetCapabilitiesAsync(new()));
        Assert.Equal(StatusCode.Unimplemented, error.Code);
    }

    private sealed class DoubledClient : StudioCalcClient
    {
        public override ExposureClient Exposure { get; } = new DoubledExposure();
    }

    private sealed class DoubledExposure : ExposureClient
    {
        public override Task<EvaluateExposureResponse> EvaluateExposureAsync(
            EvaluateExposureRequest request, CancellationToken cancellationToken = default) =>
            Task.FromResult(new EvaluateExposureResponse { ModelRevision = "double" });
    }
}
