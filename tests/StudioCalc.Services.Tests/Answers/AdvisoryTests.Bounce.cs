using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> BouncePairs = new()
    {
        [AdvisoryCode.OneReflection] = (
            () => Bounce(request => request.Surface.Reflectance = 0.5),
            () => Bounce(request => request.Surface.Reflectance = 0.49)),
        [AdvisoryCode.CardInTheWay] = (
            () => Bounce(request => request.Surface.Pose.Position.YMm = 300),
            () => Bounce(request => (request.Surface.Pose.Position.YMm, request.DirectLightBlocked) = (300, true))),
        [AdvisoryCode.CrumpledSilver] = (
            () => Bounce(request => request.Surface.Surface = SurfaceKind.Mirror),
            () => Bounce(request => request.Surface.Surface = SurfaceKind.WhiteCard)),
        [AdvisoryCode.CardNearLamp] = (
            () => BounceFrom(-5),
            () => BounceFrom(5)),
        [AdvisoryCode.CoarseCells] = (
            () => Shadow(request => request.Cells = 8),
            () => Shadow(request => request.Cells = 64)),
    };

    // The card stands 300 mm before the plate's middle.
    private static EvaluateBounceResponse BounceFrom(double awayMm) => Bounce(request =>
    {
        request.Sources[0].Calibration = null;
        request.Sources[0].Pose.Position = new() { XMm = 0, YMm = awayMm, ZMm = 175 };
    });

    private static EvaluateShadowResponse Shadow(Action<EvaluateShadowRequest> change)
    {
        var request = Examples.Shadow();
        change(request);
        return Calls.FillPlacement.EvaluateShadow(request);
    }

    private static EvaluateBounceResponse Bounce(Action<EvaluateBounceRequest> change)
    {
        var request = Examples.Bounce();
        change(request);
        return Calls.FillPlacement.EvaluateBounce(request);
    }
}
