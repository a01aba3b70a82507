using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Each advisory has one request that raises it and one close by that does not.</summary>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> Pairs = new()
    {
        [AdvisoryCode.AmbiguousMark] = (
            () => Exposure(request => request.Settings.Aperture.Mark = "f/13", StopScale.Unspecified),
            () => Exposure(request => request.Settings.Aperture.Mark = "f/13", StopScale.Third)),
        [AdvisoryCode.UnusualCalibration] = (
            () => Exposure(request => request.Light.Continuous = new() { LuminanceCdPerM2 = 100, CalibrationConstant = 14 }),
            () => Exposure(request => request.Light.Continuous = new() { LuminanceCdPerM2 = 100, CalibrationConstant = 13.4 })),
        [AdvisoryCode.ReceptorsDiffer] = (
            () => Balance(request => request.Fill.Reading.Flash.Receptor = Receptor.Dome),
            () => Balance(request =>
                request.Fill.Reading.Flash.Receptor = request.BackLight.Continuous.Receptor = Receptor.Dome)),
        [AdvisoryCode.RoundedRatio] = (
            () => Balance(request => request.BackOverFillStops = 2.15),
            () => Balance(request => request.BackOverFillStops = 2.09)),
        [AdvisoryCode.SyncMargin] = (
            () => Balance(request => request.ShutterSpeed = new() { Mark = "1/200" }),
            () => Balance(request => request.ShutterSpeed = new() { Mark = "1/160" })),
        [AdvisoryCode.LensFilterKeepsRatio] = (
            () => Balance(request => request.BackOverFillStops = -2.1),
            () => Balance(request => request.BackOverFillStops = 1.5)),
        [AdvisoryCode.InverseSquareAssumed] = (
            () => Balance(request => request.BackOverFillStops = -2.1),
            () => Balance(request => request.Camera.SyncSpeed = new() { Mark = "1/100" })),
        [AdvisoryCode.MovingLights] = (
            () => Balance(request => request.BackOverFillStops = -2.1),
            () => Balance(request => request.Camera.SyncSpeed = new() { Mark = "1/100" })),
        [AdvisoryCode.KeyWeakerThanFill] = (
            () => Compare(request => request.Key.Continuous.Settings.Aperture.Mark = "f/2.8"),
            () => Compare(request => request.Key.Continuous.Settings.Aperture.Mark = "f/4")),
        [AdvisoryCode.SeparationUncertain] = (
            () => Separate(request => request.TotalAperture = new() { Mark = "f/5.6", Tenths = 9 }),
            () => Separate(request => request.TotalAperture = new() { Mark = "f/8", Tenths = 9 })),
        [AdvisoryCode.DriftUnsteady] = (
            () => Follow(request => request.Readings[1].Reading.Settings.Aperture = new() { Mark = "f/5.6" }),
            () => Follow(request => request.Readings[1].Reading.Settings.Aperture = new() { Mark = "f/5.6", Tenths = 7 })),
    };

    private static IEnumerable<Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)>> AllPairs =>
    [
        Pairs,
        SolvingPairs,
        FlashPairs,
        FocusPairs,
        ZonePairs,
        FramesPairs,
        PlacementPairs,
        SafetyPairs,
        FallOffPairs,
        DistancePairs,
        WindowPairs,
        BouncePairs,
        ViewPairs,
        RankingPairs,
        HoldingPairs,
        BudgetPairs,
        SightPairs,
        MirrorPairs,
        ShootRatePairs,
        OrderPairs,
        PlanPairs,
    ];

    public static TheoryData<AdvisoryCode> Codes => [.. Enum.GetValues<AdvisoryCode>().Where(code => code != AdvisoryCode.Unspecified)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void EveryCode_HasAPair_ThatRaisesItAndDoesNot(AdvisoryCode code)
    {
        var pair = Assert.Single(AllPairs, pairs => pairs.ContainsKey(code))[code];
        var raised = Assert.Single(Advisories(pair.Raises()).Where(advisory => advisory.Code == code).DistinctBy(advisory => advisory.Text));
        Assert.NotEqual(AdvisorySeverity.Unspecified, raised.Severity);
        Assert.NotEmpty(raised.Text);
        Assert.DoesNotContain(Advisories(pair.Quiet()), advisory => advisory.Code == code);
    }

    [Fact]
    public void AmbiguousMark_NamesItsFieldAndValue()
    {
        var advisory = Advisories(Pairs[AdvisoryCode.AmbiguousMark].Raises()).Single(raised => raised.Code == AdvisoryCode.AmbiguousMark);
        Assert.Equal("settings.aperture.mark", advisory.Field);
        Assert.Equal(12.699208, advisory.Values["value"], 5e-7);
    }

    private static IEnumerable<Advisory> Advisories(IMessage answer)
    {
        var own = (IEnumerable<Advisory>)answer.Descriptor.FindFieldByName("advisories").Accessor.GetValue(answer);
        return answer is BalanceFillResponse balance ? own.Concat(balance.Ways.SelectMany(way => way.Advisories)) : own;
    }

    private static EvaluateExposureResponse Exposure(Action<EvaluateExposureRequest> change, StopScale scale = StopScale.Third)
    {
        var request = Examples.Exposure();
        change(request);
        request.ClearScale();
        if (scale != StopScale.Unspecified)
        {
            request.Scale = scale;
        }

        return Calls.Exposure.EvaluateExposure(request);
    }

    private static CompareReadingsResponse Compare(Action<CompareReadingsRequest> change)
    {
        var request = Examples.Compare();
        change(request);
        return Calls.LightingRatio.CompareReadings(request);
    }

    private static SeparateFlashResponse Separate(Action<SeparateFlashRequest> change)
    {
        var request = Examples.Separate();
        change(request);
        return Calls.LightingRatio.SeparateFlash(request);
    }

    private static FollowBackLightResponse Follow(Action<FollowBackLightRequest> change)
    {
        var request = Examples.Follow();
        change(request);
        return Calls.LightingRatio.FollowBackLight(request);
    }

    private static BalanceFillResponse Balance(Action<BalanceFillRequest> change)
    {
        var request = Examples.Balance();
        change(request);
        return Calls.LightingRatio.BalanceFill(request);
    }
}
