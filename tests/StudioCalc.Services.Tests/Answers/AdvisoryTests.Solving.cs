using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> SolvingPairs = new()
    {
        [AdvisoryCode.LossReadThroughLens] = (
            () => Solve(request => request.Light = new() { LuminanceCdPerM2 = 100 }),
            () => Solve(request => request.Light = new() { IlluminanceLx = 100 })),
        [AdvisoryCode.ListCut] = (
            () => Equivalents(request => request.Camera.HighestIso = new() { Mark = "102400" }),
            () => Equivalents(request => request.Camera.HighestIso = new() { Mark = "800" })),
        [AdvisoryCode.SurfaceClips] = (
            () => Headroom(request => request.LightOverSettingStops = 1.03),
            () => Headroom(request => request.LightOverSettingStops = 1.02)),
        [AdvisoryCode.HeadroomByDefinition] = (
            () => Headroom(request => request.LightOverSettingStops = 0),
            () => Headroom(request =>
            {
                request.ClearDefinition();
                request.MeasuredHeadroomStops = 3.5;
            })),
    };

    private static SolveExposureResponse Solve(Action<SolveExposureRequest> change)
    {
        var request = Examples.Solve();
        change(request);
        return Calls.Exposure.SolveExposure(request);
    }

    private static ListEquivalentSettingsResponse Equivalents(Action<ListEquivalentSettingsRequest> change)
    {
        var request = Examples.Equivalents();
        request.Motion = null;
        request.WithFlash = false;
        change(request);
        return Calls.Exposure.ListEquivalentSettings(request);
    }

    private static EvaluateHeadroomResponse Headroom(Action<EvaluateHeadroomRequest> change)
    {
        var request = Examples.Headroom();
        change(request);
        return Calls.Exposure.EvaluateHeadroom(request);
    }
}
