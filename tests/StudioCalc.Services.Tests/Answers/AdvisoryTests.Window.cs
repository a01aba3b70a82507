using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> WindowPairs = new()
    {
        [AdvisoryCode.SkyWithoutSun] = (
            () => Window(request => request.Sky = SkyKind.Uniform),
            () => Window(request => request.Sky = SkyKind.Overcast)),
        [AdvisoryCode.RoomLightCounts] = (
            () => Window(request => request.Places[1].DistanceMm = 2000),
            () => Window(request => request.Places[1].DistanceMm = 1900)),
        [AdvisoryCode.SkyDrifts] = (
            () => Window(request => request.Places.RemoveAt(2)),
            () => Window(request => request.Reading = null)),
        [AdvisoryCode.DomeSeesWider] = (
            () => Window(request => request.Places[0].Kind = ReceiverKind.Dome),
            () => Window(request => request.Places[0].Kind = ReceiverKind.Flat)),
        [AdvisoryCode.GroundTakenAsDark] = (
            () => Window(request => request.Window.SillHeightMm = 700),
            () => Window(request => (request.Window.SillHeightMm, request.Window.SkylineLuminanceShare) = (700, 0.2))),
        [AdvisoryCode.SunOnPlate] = (
            () => Sun(request => request.BearingDeg = 200),
            () => Sun(request => request.BearingDeg = 20)),
        [AdvisoryCode.SunBurns] = (
            () => Sun(request => request.DistanceMm = 1000),
            () => Sun(request => request.DistanceMm = 4000)),
    };

    private static TrackSunResponse Sun(Action<TrackSunRequest> change)
    {
        var request = Examples.Sun();
        change(request);
        return Calls.FillPlacement.TrackSun(request);
    }

    private static EvaluateWindowResponse Window(Action<EvaluateWindowRequest> change)
    {
        var request = Examples.Window();
        change(request);
        return Calls.FillPlacement.EvaluateWindow(request);
    }
}
