using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class FourWaysTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    public static TheoryData<Way> Ways => [.. Enum.GetValues<Way>()];

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task Exposure_SampleRequest_GivesTheAnswerOfAnInvariantCulture(Way way)
    {
        var answer = await Exposure(way).EvaluateExposureAsync(Requests.Exposure());

        Assert.Equal(await UnderInvariantCulture(() => Exposure(Way.InProcess).EvaluateExposureAsync(Requests.Exposure())), Normal(answer));
        Assert.Equal(1, answer.LightOverSettingStops, 12);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task Balance_SampleRequest_GivesTheAnswerOfAnInvariantCulture(Way way)
    {
        var answer = await Ratio(way).BalanceFillAsync(Requests.Balance());

        Assert.Equal(await UnderInvariantCulture(() => Ratio(Way.InProcess).BalanceFillAsync(Requests.Balance())), Normal(answer));
        Assert.Equal(2, answer.Ways.Count);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task Capabilities_AnyWay_ListTheServices(Way way)
    {
        var answer = await new CapabilitiesService.CapabilitiesServiceClient(fixture.Host.Invoker(way)).GetCapabilitiesAsync(new());

        Assert.Contains("studiocalc.v1.ExposureService", answer.Services);
        Assert.Equal(1024u * 1024u, answer.Limits.MaxRequestBytes);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Exposure_FNumberOutOfRange_IsRefused(Way way) => RefusesAsync(
        way, Requests.Exposure(request => request.Settings.Aperture.FNumber = 0.1), "settings.aperture.f_number OUT_OF_RANGE");

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Exposure_MarkOfAnotherScale_IsRefused(Way way) => RefusesAsync(
        way, Requests.Exposure(request => request.Settings.Aperture.Mark = "f/5.7"), "settings.aperture.mark UNKNOWN_MARK");

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Exposure_NegativeShutterSpeed_IsRefused(Way way) => RefusesAsync(
        way, Requests.Exposure(request => request.Settings.ShutterSpeed.TimeS = -0.01), "settings.shutter_speed.time_s OUT_OF_RANGE");

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Exposure_NothingGiven_IsRefused(Way way) => RefusesAsync(way, new EvaluateExposureRequest(), "settings REQUIRED");

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Exposure_UnknownEnumNumber_IsRefused(Way way) => RefusesAsync(
        way, Requests.Exposure(request => request.Scale = (StopScale)9), "scale UNKNOWN_VALUE");

    // JSON has no number for them; it writes them as texts.
    [Theory]
    [InlineData(Way.Grpc, double.NaN, "OUT_OF_RANGE")]
    [InlineData(Way.GrpcWeb, double.NaN, "OUT_OF_RANGE")]
    [InlineData(Way.Json, double.NaN, "OUT_OF_RANGE")]
    [InlineData(Way.InProcess, double.NaN, "OUT_OF_RANGE")]
    [InlineData(Way.Grpc, double.PositiveInfinity, "OUT_OF_RANGE")]
    [InlineData(Way.GrpcWeb, double.PositiveInfinity, "OUT_OF_RANGE")]
    [InlineData(Way.Json, double.PositiveInfinity, "OUT_OF_RANGE")]
    [InlineData(Way.InProcess, double.PositiveInfinity, "OUT_OF_RANGE")]
    public Task Exposure_NotFinite_IsRefused(Way way, double value, string reason) => RefusesAsync(
        way, Requests.Exposure(request => request.LensLossStops = value), "lens_loss_stops " + reason);

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task Exposure_SeveralBadFields_AreAllNamed(Way way)
    {
        var request = Requests.Exposure(request =>
        {
            request.Settings.Iso = null;
            request.Settings.Aperture.FNumber = 1000;
            request.IncidentConstant = 1;
        });

        await RefusesAsync(
            way, request, "settings.aperture.f_number OUT_OF_RANGE", "settings.iso REQUIRED", "incident_constant OUT_OF_RANGE");
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Balance_ReadingMissing_IsRefused(Way way) =>
        RefusesAsync(way, Requests.Balance(request => request.Fill.Reading = null), "fill.reading REQUIRED");

    [Theory]
    [MemberData(nameof(Ways))]
    public Task Balance_BackLightGivenAsFlash_IsRefused(Way way) => RefusesAsync(
        way, Requests.Balance(request => request.BackLight = request.Fill.Reading.Clone()),
        "back_light.flash CONFLICT");

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task Exposure_FiveMegabytes_AreRefusedForTheirSize(Way way)
    {
        var request = Requests.Exposure(request => request.Settings.Aperture.Mark = new string('5', 5_000_000));

        var refused = await Refused.ByAsync(Exposure(way).EvaluateExposureAsync(request));

        Refused.Same(new(Code.ResourceExhausted, "REQUEST_TOO_LARGE", []), refused);
    }

    [Theory]
    [InlineData(Way.Grpc, 9)]
    [InlineData(Way.GrpcWeb, 9)]
    [InlineData(Way.Json, 9)]
    [InlineData(Way.Grpc, 40)]
    [InlineData(Way.GrpcWeb, 40)]
    [InlineData(Way.Json, 40)]
    public async Task Exposure_BeyondTheHardLimit_IsRefusedForItsSize(Way way, int megabytes)
    {
        var request = Requests.Exposure(request => request.Settings.Aperture.Mark = new string('5', megabytes * 1_000_000));

        Assert.Equal(Code.ResourceExhausted, (await Refused.ByAsync(Exposure(way).EvaluateExposureAsync(request))).Code);
    }

    private async Task RefusesAsync(Way way, EvaluateExposureRequest request, params string[] fields) => Refused.Same(
        new(Code.InvalidArgument, "INVALID_FIELDS", fields), await Refused.ByAsync(Exposure(way).EvaluateExposureAsync(request)));

    private async Task RefusesAsync(Way way, BalanceFillRequest request, params string[] fields) => Refused.Same(
        new(Code.InvalidArgument, "INVALID_FIELDS", fields), await Refused.ByAsync(Ratio(way).BalanceFillAsync(request)));

    private static async Task<T> UnderInvariantCulture<T>(Func<AsyncUnaryCall<T>> call)
        where T : IMessage<T>, new()
    {
        System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.InvariantCulture;
        return Normal(await call());
    }

    // The wire drops minus zero where zero is not written; messages tell the two apart.
    private static T Normal<T>(T message)
        where T : IMessage<T>, new() => new MessageParser<T>(() => new()).ParseFrom(message.ToByteString());

    private ExposureService.ExposureServiceClient Exposure(Way way) => new(fixture.Host.Invoker(way));

    private LightingRatioService.LightingRatioServiceClient Ratio(Way way) => new(fixture.Host.Invoker(way));
}
