using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> MirrorPairs = new()
    {
        [AdvisoryCode.GlareFromCameraSide] = (
            () => Soup(behindMm: -300),
            () => Soup(behindMm: 500)),
        [AdvisoryCode.CardBeforeLens] = (
            () => Soup(request => request.Things[0] = CameraBall(), 0),
            () => Soup(behindMm: 500)),
        [AdvisoryCode.CardTakesWanted] = (
            () => Soup(request => AddWanted(request, 0)),
            () => Soup(request => AddWanted(request, -900))),
        [AdvisoryCode.CardDoesNotReach] = (
            () => Soup(request => request.CardDistanceMm = 800),
            () => Soup(request => request.CardDistanceMm = 650)),
        [AdvisoryCode.PolariserHelps] = (
            () => Soup(request => request.Camera.ZMm = 375),
            () => Soup(request => request.Camera.ZMm = 800)),
        [AdvisoryCode.WavesMove] = (
            () => Soup(request => request.Surfaces[0].Flat.WaveDeg = 3),
            () => Soup(request => request.Surfaces[0].Flat.WaveDeg = 0)),
    };

    // A bowl of soup, the camera at the front, and a large white card that leans over it, some 700 mm away.
    private static EvaluateReflectionsResponse Soup(Action<EvaluateReflectionsRequest> change, double behindMm = 500)
    {
        var request = new EvaluateReflectionsRequest
        {
            Camera = At(0, behindMm > 0 ? -500 : 300, 500),
            Surfaces = { new GlossySurface { Name = "soup", Flat = new() { Pose = new() { Position = At(0, 0, 0), AimPoint = At(0, 0, 100) }, WidthMm = 140, Oval = true } } },
            Things = { White(0, Math.Max(behindMm, 500), 500, 400) },
        };
        if (behindMm <= 0)
        {
            // The camera looks from just before the vertical; the card hangs on its own side.
            (request.Camera, request.Things[0]) = (At(0, -100, 700), White(0, -100, 600, 900));
        }

        change(request);
        return Calls.PlateView.EvaluateReflections(request);
    }

    private static EvaluateReflectionsResponse Soup(double behindMm) => Soup(_ => { }, behindMm);

    private static MirroredThing White(double x, double y, double z, double size) => new()
    {
        Face = new() { Rectangle = new() { WidthMm = size, HeightMm = size }, Pose = new() { Position = At(x, y, z), AimPoint = At(0, 0, 0) } },
        TwoSided = true,
    };

    private static MirroredThing CameraBall() => new() { Ball = new() { Centre = At(0, -150, 850), DiameterMm = 300 } };

    private static void AddWanted(EvaluateReflectionsRequest request, double x)
    {
        var window = White(x, 900, 900, 1000);
        window.Wish = HighlightWish.Wanted;
        request.Things[0].Face.Rectangle.HeightMm = 60;
        request.Things.Add(window);
    }

    private static Point At(double x, double y, double z) => new() { XMm = x, YMm = y, ZMm = z };
}
