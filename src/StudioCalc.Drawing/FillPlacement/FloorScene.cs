using System.Globalization;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Everything on a floor sketch, with the figures that are written beside it.</summary>
internal sealed class FloorScene
{
    public FloorScene(
        RenderFloorRequest request,
        IReadOnlyList<FloorFace> sources,
        IReadOnlyList<FloorFace> surfaces,
        IReadOnlyList<ReceivedLight> light,
        double plateRadiusMm)
    {
        (Request, Sources, Surfaces, Light, PlateRadiusMm) = (request, sources, surfaces, light, plateRadiusMm);
        Lens = request.Camera is { } camera ? LensOf(camera) : null;
    }

    public RenderFloorRequest Request { get; }

    public IReadOnlyList<FloorFace> Sources { get; }

    public IReadOnlyList<FloorFace> Surfaces { get; }

    public IReadOnlyList<ReceivedLight> Light { get; }

    public double PlateRadiusMm { get; }

    /// <summary>The front of the lens, and what it is aimed at.</summary>
    public (PointAnswer Front, PointAnswer Aim, double DistanceMm)? Lens { get; }

    /// <summary>The box around everything in a view.</summary>
    public Bounds Around(FloorView view)
    {
        var points = Sources.Concat(Surfaces).SelectMany(face => face.Corners.Append(face.Centre).Append(face.Aim)).Select(view.Of)
            .Concat(Request.Receivers.Select(receiver => view.Of(receiver.Place)))
            .Concat(Lens is { } lens ? [view.Of(lens.Front), view.Of(lens.Aim)] : [])
            .Concat(Request.Occluders.SelectMany(occluder => Extent(occluder, view)))
            .Append(view.Of(-PlateRadiusMm, -PlateRadiusMm, 0)).Append(view.Of(PlateRadiusMm, PlateRadiusMm, 0));
        if (Request.Table is { } table)
        {
            points = points.Append(view.Of(-table.WidthMm / 2, -table.DepthMm / 2, -table.HeightMm))
                .Append(view.Of(table.WidthMm / 2, table.DepthMm / 2, 0));
        }

        return Bounds.Around(points.Select(point => new Bounds(point.X, point.Y, point.X, point.Y)));
    }

    /// <summary>From a source's aim point to its centre. [mm]</summary>
    public double DistanceMm(int source)
    {
        var (x, y, z) = Way(source);
        return Math.Sqrt(x * x + y * y + z * z);
    }

    /// <summary>Elevation and azimuth of a source, seen from its aim point. [deg]</summary>
    public (double ElevationDeg, double AzimuthDeg) Direction(int source)
    {
        var (x, y, z) = Way(source);
        return (Math.Atan2(z, Math.Sqrt(x * x + y * y)) * 180 / Math.PI, x == 0 && y == 0 ? 0 : Math.Atan2(x, -y) * 180 / Math.PI);
    }

    /// <summary>A receiver's number, with its light over the settings, or else over the first receiver.</summary>
    public string ReceiverLabel(int receiver)
    {
        var light = Light[receiver];
        var stops = light.HasOverSettingsStops ? Signed(light.OverSettingsStops)
            : light.HasOverReferenceStops && Light.Count > 1 ? Signed(light.OverReferenceStops)
            : "";
        return FormattableString.Invariant($"{receiver + 1} {stops}").TrimEnd();
    }

    public static string Letter(int index) => ((char)('A' + index)).ToString(CultureInfo.InvariantCulture);

    public static string Metres(double mm) => (mm / 1000).ToString("0.00", CultureInfo.InvariantCulture) + " m";

    public static string Signed(double stops) => stops.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    /// <summary>A straight strip of a width between two places.</summary>
    public static IEnumerable<(double X, double Y)> Strip((double X, double Y) from, (double X, double Y) to, double widthMm)
    {
        var (x, y) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt(x * x + y * y);
        (x, y) = length > 0 ? (x / length * widthMm / 2, y / length * widthMm / 2) : (widthMm / 2, 0);
        var ends = length > 0 ? (0.0, 0.0) : (x, y);
        return
        [
            (from.X - y - ends.Item1, from.Y + x - ends.Item2), (to.X - y + ends.Item1, to.Y + x + ends.Item2),
            (to.X + y + ends.Item1, to.Y - x + ends.Item2), (from.X + y - ends.Item1, from.Y - x - ends.Item2),
        ];
    }

    /// <summary>The outline of a box as a view shows it.</summary>
    public static IEnumerable<(double X, double Y)> Shadow(UprightBox box, FloorView view)
    {
        var corners = Corners(box).ToList();
        if (view.IsPlan)
        {
            return corners.Select(corner => (corner.X, corner.Y));
        }

        var (front, back) = (corners.Min(corner => corner.Y), corners.Max(corner => corner.Y));
        var (low, high) = (box.Base.ZMm, box.Base.ZMm + box.HeightMm);
        return [(front, low), (back, low), (back, high), (front, high)];
    }

    public static PointAnswer Middle(Occluder occluder) => occluder.ShapeCase switch
    {
        Occluder.ShapeOneofCase.Tube => new()
        {
            XMm = (occluder.Tube.From.XMm + occluder.Tube.To.XMm) / 2,
            YMm = (occluder.Tube.From.YMm + occluder.Tube.To.YMm) / 2,
            ZMm = (occluder.Tube.From.ZMm + occluder.Tube.To.ZMm) / 2,
        },
        Occluder.ShapeOneofCase.Ball => Plain(occluder.Ball.Centre, 0),
        _ => Plain(occluder.Box.Base, occluder.Box.HeightMm / 2),
    };

    private static IEnumerable<(double X, double Y)> Extent(Occluder occluder, FloorView view) => occluder.ShapeCase switch
    {
        Occluder.ShapeOneofCase.Tube => [view.Of(occluder.Tube.From), view.Of(occluder.Tube.To)],
        Occluder.ShapeOneofCase.Ball => [view.Of(occluder.Ball.Centre)],
        _ => Shadow(occluder.Box, view),
    };

    private static IEnumerable<(double X, double Y)> Corners(UprightBox box)
    {
        var (sin, cos) = Math.SinCos(box.TurnDeg * Math.PI / 180);
        foreach (var (right, back) in new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) })
        {
            var (x, y) = (right * box.WidthMm / 2, back * box.DepthMm / 2);
            yield return (box.Base.XMm + x * cos - y * sin, box.Base.YMm + x * sin + y * cos);
        }
    }

    private static PointAnswer Plain(Point point, double up) => new() { XMm = point.XMm, YMm = point.YMm, ZMm = point.ZMm + up };

    private static (PointAnswer Front, PointAnswer Aim, double DistanceMm) LensOf(FloorCamera camera)
    {
        var direction = camera.Direction;
        var aim = direction.AimPoint is { } point ? Plain(point, 0) : new PointAnswer();
        var (sinA, cosA) = Math.SinCos(direction.AzimuthDeg * Math.PI / 180);
        var (sinE, cosE) = Math.SinCos(direction.ElevationDeg * Math.PI / 180);
        var distance = camera.DistanceMm;
        return (
            new() { XMm = aim.XMm + sinA * cosE * distance, YMm = aim.YMm - cosA * cosE * distance, ZMm = aim.ZMm + sinE * distance },
            aim,
            distance);
    }

    private (double X, double Y, double Z) Way(int source)
    {
        var (centre, aim) = (Sources[source].Centre, Sources[source].Aim);
        return (centre.XMm - aim.XMm, centre.YMm - aim.YMm, centre.ZMm - aim.ZMm);
    }
}
