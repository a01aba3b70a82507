using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>What a camera sees of a dish.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> ViewPairs = new()
    {
        [AdvisoryCode.CameraOverhead] = (
            () => View(request => request.Camera.Direction.ElevationDeg = 60),
            () => View(request => request.Camera.Direction.ElevationDeg = 59.9)),
        [AdvisoryCode.MainOutsideFrame] = (
            () => View(request => request.Camera.FieldWidthMm = 100),
            () => View(request => request.Camera.FieldWidthMm = 150)),
        [AdvisoryCode.MainHidden] = (
            () => View(request => request.Camera.Direction.AzimuthDeg = 180),
            () => View(_ => { })),
        [AdvisoryCode.ComponentUnseen] = (
            () => View(request => request.Camera.Direction.ElevationDeg = 5),
            () => View(request => request.Camera.Direction.ElevationDeg = 20)),
        [AdvisoryCode.CoarseSightLines] = (
            () => View(request => request.SightLines = 16),
            () => View(request => request.SightLines = 48)),
        [AdvisoryCode.ClearWallsBendLight] = (
            () => View(_ => { }),
            () => View(request => request.Scene.Vessels[1].ClearWalls = false)),
    };

    private static EvaluateViewResponse View(Action<EvaluateViewRequest> change)
    {
        var request = Examples.View();
        change(request);
        return Calls.PlateView.EvaluateView(request);
    }
}
