using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Draws where lights, cards, camera, table and plate stand, to scale, from above and from the side.</summary>
/// <remarks>Lights have the heaviest outline and a letter; receivers are crosses with a number; cards and other things are thin.
/// Lines of dots and dashes run from a light, or from the camera, to what it is aimed at.</remarks>
public static class FloorPicture
{
    private const double UsualPlateMm = 280;
    private const double Width = 1040;
    private const double Margin = 20;
    private const double ViewWidth = (Width - 3 * Margin) / 2;
    private const double ViewHeight = 440;
    private const double Head = 82;

    /// <summary>Draws a set.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="sources">Its lights, in the order of the request.</param>
    /// <param name="surfaces">Its cards and walls, in the order of the request.</param>
    /// <param name="light">The light at its receivers, in the order of the request.</param>
    public static Picture Draw(
        RenderFloorRequest request,
        IReadOnlyList<FloorFace> sources,
        IReadOnlyList<FloorFace> surfaces,
        IReadOnlyList<ReceivedLight> light)
    {
        ArgumentNullException.ThrowIfNull(request);
        var title = request.HasTitle ? request.Title : "Where things stand";
        var scene = new FloorScene(request, sources, surfaces, light, request.HasPlateDiameterMm ? request.PlateDiameterMm / 2 : UsualPlateMm / 2);
        var lists = new FloorLists(scene);
        var lines = FloorLists.Summary(scene);
        var sheet = new Sheet(Width, Head + ViewHeight + Margin + lists.Height + Margin, title, string.Join(' ', lines));
        sheet.Text(Margin, 30, title, bold: true);
        for (var i = 0; i < lines.Length; i++)
        {
            sheet.Text(Margin, 50 + i * 18, lines[i]);
        }

        var planWindow = new Bounds(Margin, Head, Margin + ViewWidth, Head + ViewHeight);
        var sideWindow = new Bounds(2 * Margin + ViewWidth, Head, Width - Margin, Head + ViewHeight);
        var (plan, side) = (scene.Around(FloorView.Plan), scene.Around(FloorView.Side));
        var scale = Math.Min(ScaledView.Fitting(planWindow, plan), ScaledView.Fitting(sideWindow, side));
        Draw(new(sheet, planWindow, plan, scale), FloorView.Plan, scene);
        Draw(new(sheet, sideWindow, side, scale), FloorView.Side, scene);
        lists.Write(sheet, Margin, Head + ViewHeight + Margin + 14);
        return new() { MediaType = "image/svg+xml", FileName = "floor.svg", Content = sheet.ToString() };
    }

    private static void Draw(ScaledView drawing, FloorView view, FloorScene scene)
    {
        DrawTable(drawing, view, scene);
        foreach (var occluder in scene.Request.Occluders)
        {
            DrawOccluder(drawing, view, occluder);
        }

        foreach (var surface in scene.Surfaces)
        {
            drawing.Outline(surface.Corners.Select(view.Of), Sheet.Medium);
        }

        foreach (var source in scene.Sources)
        {
            drawing.Line(view.Of(source.Centre), view.Of(source.Aim), Sheet.Thin, dashed: true);
            if (source.Corners.Count > 0)
            {
                drawing.Outline(source.Corners.Select(view.Of), Sheet.Heavy);
            }
            else
            {
                drawing.Cross(view.Of(source.Centre), Sheet.Heavy);
            }
        }

        if (scene.Lens is { } lens)
        {
            drawing.Line(view.Of(lens.Front), view.Of(lens.Aim), Sheet.Thin, dashed: true);
            drawing.Cross(view.Of(lens.Front), Sheet.Medium);
        }

        foreach (var receiver in scene.Request.Receivers)
        {
            drawing.Cross(view.Of(receiver.Place), Sheet.Thin);
        }

        Label(drawing, view, scene);
        drawing.Caption(view.Caption);
    }

    private static void DrawTable(ScaledView drawing, FloorView view, FloorScene scene)
    {
        var radius = scene.PlateRadiusMm;
        if (view.IsPlan)
        {
            drawing.Circle((0, 0), radius, Sheet.Medium);
        }
        else
        {
            drawing.Line((-radius, 0), (radius, 0), Sheet.Heavy);
        }

        if (scene.Request.Table is not { } table)
        {
            return;
        }

        var (width, depth) = (table.WidthMm / 2, table.DepthMm / 2);
        if (view.IsPlan)
        {
            drawing.Rectangle(new(-width, -depth, width, depth), Sheet.Medium);
            return;
        }

        drawing.Line((-depth, 0), (depth, 0), Sheet.Medium);
        drawing.Line((-depth, 0), (-depth, -table.HeightMm), Sheet.Thin);
        drawing.Line((depth, 0), (depth, -table.HeightMm), Sheet.Thin);
        drawing.Line((-drawing.Reach, -table.HeightMm), (drawing.Reach, -table.HeightMm), Sheet.Medium);
    }

    private static void DrawOccluder(ScaledView drawing, FloorView view, Occluder occluder)
    {
        switch (occluder.ShapeCase)
        {
            case Occluder.ShapeOneofCase.Tube:
                drawing.Outline(FloorScene.Strip(view.Of(occluder.Tube.From), view.Of(occluder.Tube.To), occluder.Tube.DiameterMm), Sheet.Thin);
                break;
            case Occluder.ShapeOneofCase.Ball:
                drawing.Circle(view.Of(occluder.Ball.Centre), occluder.Ball.DiameterMm / 2, Sheet.Thin);
                break;
            default:
                drawing.Outline(FloorScene.Shadow(occluder.Box, view), Sheet.Thin);
                break;
        }
    }

    private static void Label(ScaledView drawing, FloorView view, FloorScene scene)
    {
        for (var i = 0; i < scene.Sources.Count; i++)
        {
            var source = scene.Sources[i];
            drawing.Label(view.Of(source.Centre), view.IsPlan
                ? $"{FloorScene.Letter(i)} {FloorScene.Metres(scene.DistanceMm(i))}"
                : $"{FloorScene.Letter(i)} {FloorScene.Metres(source.Centre.ZMm)} up", bold: true);
        }

        for (var i = 0; i < scene.Request.Receivers.Count; i++)
        {
            drawing.Label(view.Of(scene.Request.Receivers[i].Place), scene.ReceiverLabel(i), bold: false);
        }

        if (scene.Lens is { } lens)
        {
            drawing.Label(view.Of(lens.Front), $"lens {FloorScene.Metres(view.IsPlan ? lens.DistanceMm : lens.Front.ZMm)}" + (view.IsPlan ? "" : " up"), bold: false);
        }

        foreach (var surface in scene.Surfaces)
        {
            drawing.Label(view.Of(surface.Centre), surface.Name, bold: false);
        }

        foreach (var occluder in scene.Request.Occluders.Where(occluder => occluder.HasName))
        {
            drawing.Label(view.Of(FloorScene.Middle(occluder)), occluder.Name, bold: false);
        }
    }
}
