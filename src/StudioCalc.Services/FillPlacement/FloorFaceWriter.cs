using StudioCalc.Drawing;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes faces as a floor sketch draws them.</summary>
internal static class FloorFaceWriter
{
    public static FloorFace Light(SourceRead source, LightSource asked) => new(
        source.Name,
        Corners(source.Face),
        source.Face.Axes.Centre.ToAnswer(),
        asked.Pose.AimPoint.ToVector().ToAnswer(),
        asked.ShapeCase switch
        {
            LightSource.ShapeOneofCase.Point => "point",
            LightSource.ShapeOneofCase.Disc => $"{Metres(asked.Disc.DiameterMm)} m round",
            LightSource.ShapeOneofCase.Rectangle => $"{Metres(asked.Rectangle.WidthMm)} x {Metres(asked.Rectangle.HeightMm)} m",
            LightSource.ShapeOneofCase.Polygon => $"{Metres(asked.Polygon.AcrossFlatsMm)} m, {asked.Polygon.Sides} sides",
            _ => "own outline",
        },
        Power(asked));

    public static FloorFace Surface(FaceAxes axes, BounceSurface asked) => new(
        asked.HasName ? asked.Name : NameOf(asked.Surface),
        Corners(LightFace.Of(axes, FaceOutline.Rectangle(asked.WidthMm, asked.HeightMm))),
        axes.Centre.ToAnswer(),
        asked.Pose.AimPoint.ToVector().ToAnswer(),
        $"{Metres(asked.WidthMm)} x {Metres(asked.HeightMm)} m",
        Power: "");

    private static PointAnswer[] Corners(LightFace face)
    {
        var corners = new PointAnswer[face.Corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            corners[i] = face.Corners[i].ToAnswer();
        }

        return corners;
    }

    private static string Power(LightSource source) => (source.Power ?? source.Calibration?.Reading?.Power) switch
    {
        null => "",
        { ValueCase: FlashPower.ValueOneofCase.Fraction } power => power.HasOffsetStops && power.OffsetStops != 0
            ? FormattableString.Invariant($"{power.Fraction} {power.OffsetStops:+0.0;-0.0}")
            : power.Fraction,
        { } power => FormattableString.Invariant($"{power.BelowFullStops:0.0} below full"),
    };

    private static string NameOf(SurfaceKind kind) => kind switch
    {
        SurfaceKind.WhiteCard => "white card",
        SurfaceKind.WhitePaint => "white wall",
        SurfaceKind.WhiteTiles => "white tiles",
        SurfaceKind.MidGrey => "grey",
        SurfaceKind.Concrete => "concrete",
        SurfaceKind.BlackCard => "black card",
        SurfaceKind.Mirror => "mirror",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    private static string Metres(double mm) => FormattableString.Invariant($"{mm / 1000:0.00}");
}
