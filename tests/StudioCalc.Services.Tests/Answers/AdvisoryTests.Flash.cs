using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> FlashPairs = new()
    {
        [AdvisoryCode.SourceTooWide] = (
            () => Flash(request => request.Units[0].SourceWidthMm = 281),
            () => Flash(request => request.Units[0].SourceWidthMm = 280)),
        [AdvisoryCode.GuideNumberAsGiven] = (
            () => Flash(request => request.CompensationStops = 0),
            () => Flash(request =>
            {
                request.Units.RemoveAt(1);
                request.Unknown = FlashUnknown.GuideNumber;
                request.Units[0].ClearGuideNumberM();
                request.ClearPowerScale();
            })),
        [AdvisoryCode.SeveralPops] = (
            () => Flash(request => request.Pops = 2),
            () => Flash(request => request.Pops = 1)),
        [AdvisoryCode.FlashBlurUnknown] = (
            () => Freeze(request => request.FlashDurationKind = FlashDurationKind.T05),
            () => Freeze(request => request.FlashDurationKind = FlashDurationKind.T01)),
        [AdvisoryCode.FlashCutOff] = (
            () => Freeze(request => request.FlashDurationS = 0.0054),
            () => Freeze(request => request.FlashDurationS = 0.0050)),
        [AdvisoryCode.BlurBeyondPermitted] = (
            () => Freeze(request => request.ShutterSpeed = new() { TimeS = 0.000116 }),
            () => Freeze(request =>
            {
                request.ShutterSpeed = new() { TimeS = 0.000115 };
                request.FlashDurationS = 0.000115;
            })),
        [AdvisoryCode.FlashingLight] = (
            () => Recycling(request => (request.WantedIntervalS, request.RecycleTimeS) = (0.33, 1)),
            () => Recycling(request => (request.WantedIntervalS, request.RecycleTimeS) = (1 / 3.0, 1))),
        [AdvisoryCode.HeadOverheating] = (
            () => Recycling(request => (request.WantedIntervalS, request.Frames) = (0.45, 21)),
            () => Recycling(request => (request.WantedIntervalS, request.Frames) = (0.45, 20))),
        [AdvisoryCode.RecyclingSlower] = (
            () => Recycling(request => request.WantedIntervalS = 0.44),
            () => Recycling(request => request.WantedIntervalS = 0.45)),
        [AdvisoryCode.BandsVisible] = (
            () => Flicker(request => request.ShutterSpeed.Mark = "1/80"),
            () => Flicker(request => request.ShutterSpeed.Mark = "1/100")),
        [AdvisoryCode.NoMarkWithoutBands] = (
            () => Flicker(request => request.Camera.SlowestShutterSpeed = new() { Mark = "1/125" }),
            () => Flicker(request => request.Camera.SlowestShutterSpeed = new() { Mark = "1/100" })),
        [AdvisoryCode.ColourLeft] = (
            () => Colour(request => request.ToK = 2000),
            () => Colour(request => request.ToK = 2100)),
        [AdvisoryCode.GelOnHotLamp] = (
            () => Colour(request => request.FromK = 3600),
            () => Colour(request => request.FromK = 3700)),
    };

    private static SolveFlashResponse Flash(Action<SolveFlashRequest> change)
    {
        var request = Examples.Flash();
        change(request);
        return Calls.Exposure.SolveFlash(request);
    }

    private static FreezeMotionResponse Freeze(Action<FreezeMotionRequest> change)
    {
        var request = Examples.Freeze();
        change(request);
        return Calls.Exposure.FreezeMotion(request);
    }

    private static EstimateRecyclingResponse Recycling(Action<EstimateRecyclingRequest> change)
    {
        var request = Examples.Recycling();
        change(request);
        return Calls.Exposure.EstimateRecycling(request);
    }

    private static ListFlickerFreeSpeedsResponse Flicker(Action<ListFlickerFreeSpeedsRequest> change)
    {
        var request = Examples.Flicker();
        change(request);
        return Calls.Exposure.ListFlickerFreeSpeeds(request);
    }

    private static MatchColourResponse Colour(Action<MatchColourRequest> change)
    {
        var request = Examples.Colour();
        change(request);
        return Calls.Exposure.MatchColour(request);
    }
}
