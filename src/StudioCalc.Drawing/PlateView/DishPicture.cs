using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Draws what a camera sees of a dish, in perspective, and beside it the plan from above with the camera's place.</summary>
/// <remarks>The main component has the heaviest lines; what is hidden has light dashes. The rectangle in the view is the frame; in
/// the plan it is the frame as it lies in the plane through the aim point, with lines from the camera to its sides.</remarks>
public static class DishPicture
{
    private const double Width = 1080;
    private const double Margin = 20;
    private const double ViewWidth = 620;
    private const double ViewHeight = 450;
    private const double Head = 104;
    private const double AroundFrame = 1.14;

    // Of the dish's size: a camera further away is told rather than drawn.
    private const double FarthestDrawn = 2.5;

    // From here on the camera hangs over its own field.
    private const double OverheadDeg = 60;

    /// <summary>Draws an answer.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="answer">The answer to its view.</param>
    /// <param name="lines">The lines of its scene.</param>
    public static Picture Draw(RenderViewRequest request, EvaluateViewResponse answer, DishLines lines)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(lines);
        var things = new DishThings(answer);
        var title = request.HasTitle ? request.Title : "What the camera sees";
        var summary = DishTable.Summary(answer).ToList();
        var sheet = new Sheet(Width, Head + ViewHeight + Margin + DishTable.Height(answer) + Margin, title, string.Join(' ', summary));
        sheet.Text(Margin, 30, title, bold: true);
        for (var i = 0; i < summary.Count; i++)
        {
            sheet.Text(Margin, 52 + i * 18, summary[i]);
        }

        DrawView(sheet, answer.Camera, things, lines);
        DrawPlan(sheet, answer.Camera, things, lines);
        DishTable.Write(sheet, answer, things, Margin, Head + ViewHeight + Margin + 14);
        return new() { MediaType = "image/svg+xml", FileName = "view.svg", Content = sheet.ToString() };
    }

    private static void DrawView(Sheet sheet, ViewCameraAnswer camera, DishThings things, DishLines lines)
    {
        var window = new Bounds(Margin, Head, Margin + ViewWidth, Head + ViewHeight);
        var (width, height) = (camera.FieldWidthMm, camera.FieldHeightMm);
        var frame = new Bounds(-width / 2, -height / 2, width / 2, height / 2);
        var scale = Math.Min(ViewWidth / (width * AroundFrame), ViewHeight / (height * AroundFrame));
        var view = new ScaledView(sheet, window, frame, scale);
        Draw(view, things, lines.View);
        view.Rectangle(frame, Sheet.Thin);
        var reach = new Bounds(-ViewWidth / scale / 2, -ViewHeight / scale / 2, ViewWidth / scale / 2, ViewHeight / scale / 2);
        Label(view, things, lines.View, reach);
        view.Caption("As the camera sees it; the bar holds at the aim point");
    }

    private static void DrawPlan(Sheet sheet, ViewCameraAnswer camera, DishThings things, DishLines lines)
    {
        var window = new Bounds(2 * Margin + ViewWidth, Head, Width - Margin, Head + ViewHeight);
        var dish = Around(lines.Plan.SelectMany(stroke => stroke.Places));
        var size = Math.Max(dish.Width, dish.Height);
        var isDrawn = lines.Camera is { } at && Math.Max(Math.Abs(at.X - dish.MiddleX), Math.Abs(at.Y - dish.MiddleY)) <= FarthestDrawn * size;
        var set = isDrawn ? Around([lines.Camera!.Value, (dish.Left, dish.Low), (dish.Right, dish.High)]) : dish;
        var scale = ScaledView.Fitting(window, set) * (isDrawn ? 1 : 0.85);
        var plan = new ScaledView(sheet, window, set, scale);
        Draw(plan, things, lines.Plan);
        plan.Outline(lines.Field, Sheet.Thin);
        var far = lines.Towards;
        var axis = lines.Camera ?? (lines.Aim.X + far.X * plan.Reach, lines.Aim.Y + far.Y * plan.Reach);
        plan.Line(lines.Aim, axis, Sheet.Thin, dashed: true);
        if (lines.Camera is { } eye)
        {
            if (camera.ElevationDeg < OverheadDeg)
            {
                DrawField(plan, eye, lines.Field);
            }

            if (isDrawn)
            {
                plan.Cross(eye, Sheet.Heavy);
            }
        }

        Label(plan, things, lines.Plan, set);
        plan.Label(isDrawn ? lines.Camera!.Value : Leaving(window, scale, set, lines.Aim, axis), CameraLabel(camera, isDrawn), bold: false);
        plan.Caption("From above, front of the set below");
    }

    private static void DrawField(ScaledView plan, (double X, double Y) eye, IReadOnlyList<(double X, double Y)> field)
    {
        plan.Line(eye, Middle(field[0], field[3]), Sheet.Thin);
        plan.Line(eye, Middle(field[1], field[2]), Sheet.Thin);
    }

    private static void Draw(ScaledView view, DishThings things, IReadOnlyList<DishStroke> strokes)
    {
        foreach (var stroke in strokes)
        {
            if (stroke.IsHidden)
            {
                view.HiddenCurve(stroke.Places);
            }
            else
            {
                view.Curve(stroke.Places, stroke.Thing == things.Main ? Sheet.Heavy : Sheet.Medium);
            }
        }
    }

    // Each thing at the top of what is drawn of it, the main one first, so that it keeps its place.
    private static void Label(ScaledView view, DishThings things, IReadOnlyList<DishStroke> strokes, Bounds within)
    {
        foreach (var group in strokes.GroupBy(stroke => stroke.Thing).OrderBy(group => group.Key == things.Main ? -1 : group.Key))
        {
            var all = Around(group.SelectMany(stroke => stroke.Places));
            if (all.Overlaps(within))
            {
                var top = Math.Clamp(all.High, within.Low, within.High);
                view.Label((Math.Clamp(all.MiddleX, within.Left, within.Right), top), things.Label(group.Key), group.Key == things.Main);
            }
        }
    }

    private static string CameraLabel(ViewCameraAnswer camera, bool isDrawn)
    {
        if (!camera.HasDistanceMm)
        {
            return "to a far camera";
        }

        return isDrawn
            ? FormattableString.Invariant($"camera, {camera.EntrancePupil.ZMm:0} mm up")
            : FormattableString.Invariant($"to the camera, {camera.DistanceMm:0} mm");
    }

    // Where the way to the camera leaves the window, a little inside.
    private static (double X, double Y) Leaving(Bounds window, double scale, Bounds set, (double X, double Y) aim, (double X, double Y) to)
    {
        const double inside = 0.86;
        var (across, along) = (to.X - aim.X, to.Y - aim.Y);
        var room = Math.Min(
            Math.Abs(across) < 1e-9 ? 1 : Math.Max(0, window.Width / scale / 2 * inside + Math.Sign(across) * (set.MiddleX - aim.X)) / Math.Abs(across),
            Math.Abs(along) < 1e-9 ? 1 : Math.Max(0, window.Height / scale / 2 * inside + Math.Sign(along) * (set.MiddleY - aim.Y)) / Math.Abs(along));
        return (aim.X + across * Math.Min(1, room), aim.Y + along * Math.Min(1, room));
    }

    private static (double X, double Y) Middle((double X, double Y) one, (double X, double Y) other) => ((one.X + other.X) / 2, (one.Y + other.Y) / 2);

    private static Bounds Around(IEnumerable<(double X, double Y)> places) => Bounds.Around(places.Select(at => new Bounds(at.X, at.Y, at.X, at.Y)));
}
