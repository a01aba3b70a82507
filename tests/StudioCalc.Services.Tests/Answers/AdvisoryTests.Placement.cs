using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Where lights stand.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> PlacementPairs = new()
    {
        [AdvisoryCode.PointHasNoSize] = (
            () => Light(request => request.Sources[1].Point = new()),
            () => Light(request => request.Sources[1].Disc = new() { DiameterMm = 50 })),
        [AdvisoryCode.LightOverhead] = (
            () => Light(request => request.Sources[1].Pose.Position = new() { XMm = 0, YMm = -480, ZMm = 850 }),
            () => Light(request => request.Sources[1].Pose.Position = new() { XMm = 0, YMm = -500, ZMm = 850 })),
        [AdvisoryCode.FaceBelowTable] = (
            () => Light(request => request.Sources[0].Pose.Position.ZMm = 740),
            () => Light(request => request.Sources[0].Pose.Position.ZMm = 760)),
    };

    private static EvaluateLightResponse Light(Action<EvaluateLightRequest> change)
    {
        var request = Examples.Light();
        request.Sources[0].Pose.AimPoint.ZMm = 750;
        change(request);
        return Calls.FillPlacement.EvaluateLight(request);
    }
}
