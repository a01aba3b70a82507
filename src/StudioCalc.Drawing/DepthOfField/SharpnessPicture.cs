using System.Globalization;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Draws sharpness over a plate, to scale, from above and in section along the axis of the lens.</summary>
/// <remarks>In the plan the front of the set is below; the hatched band is what is sharp halfway up the main component.
/// In the section the camera is on the left, or above when it looks straight down; the hatched strip is the sharp zone. The main
/// component has the heaviest outline. Lines of dots and dashes are the focused plane and the axis.</remarks>
public static class SharpnessPicture
{
    private const double Width = 1040;
    private const double Margin = 20;
    private const double ViewWidth = (Width - 3 * Margin) / 2;
    private const double ViewHeight = 400;
    private const double Head = 104;
    private const double Row = 20;

    /// <summary>Draws an answer.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="answer">The answer to its focus.</param>
    public static Picture Draw(RenderSharpnessRequest request, PlaceFocusResponse answer)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(answer);
        var placement = answer.Solution ?? answer.NotReached.Nearest;
        var scene = new SharpnessScene(request, placement);
        var title = request.HasTitle ? request.Title : "Sharpness over the plate";
        var lines = Summary(answer, placement, scene).ToList();
        var height = Head + ViewHeight + Margin + (scene.Components.Count + 2) * Row + Margin;
        var sheet = new Sheet(Width, height, title, string.Join(' ', lines));
        sheet.Text(Margin, 30, title, bold: true);
        for (var i = 0; i < lines.Count; i++)
        {
            sheet.Text(Margin, 52 + i * 18, lines[i]);
        }

        var planWindow = new Bounds(Margin, Head, Margin + ViewWidth, Head + ViewHeight);
        var sectionWindow = new Bounds(2 * Margin + ViewWidth, Head, Width - Margin, Head + ViewHeight);
        var scale = Math.Min(
            ScaledView.Fitting(planWindow, scene.PlanBounds), ScaledView.Fitting(sectionWindow, scene.SectionBounds));
        DrawPlan(new(sheet, planWindow, scene.PlanBounds, scale), scene);
        DrawSection(new(sheet, sectionWindow, scene.SectionBounds, scale), scene);
        WriteComponents(sheet, scene, Head + ViewHeight + Margin + 14);
        return new() { MediaType = "image/svg+xml", FileName = "sharpness.svg", Content = sheet.ToString() };
    }

    private static void DrawPlan(ScaledView view, SharpnessScene scene)
    {
        if (scene.PlanBand is { } band)
        {
            var (near, far) = (Math.Max(band.Near, -view.Reach), Math.Min(band.Far, view.Reach));
            view.Hatched(
                scene.InPlan(near, -view.Reach), scene.InPlan(near, view.Reach), scene.InPlan(far, view.Reach), scene.InPlan(far, -view.Reach));
        }

        if (scene.FocusOnPlan is { } focus)
        {
            view.Line(scene.InPlan(focus, -view.Reach), scene.InPlan(focus, view.Reach), Sheet.Thin, dashed: true);
        }

        if (scene.PlateRadiusMm is { } radius)
        {
            view.Circle((0, 0), radius, Sheet.Medium);
        }

        foreach (var component in scene.Components)
        {
            view.Circle((component.X, component.Y), Math.Max(component.RadiusMm, 1), Weight(component));
        }

        view.Line(scene.InPlan(-view.Reach, 0), scene.InPlan(0, 0), Sheet.Thin, dashed: true);
        foreach (var component in scene.Components)
        {
            view.Label((component.X, component.Y + component.RadiusMm), component.Label, component.IsMain);
        }

        view.Caption(
            (scene.PlanBand is null ? "In plan, front below; nowhere sharp at " : "In plan, front below; hatched: sharp at ")
            + Format($"{scene.PlanHeightMm:0.#} mm over the table"));
    }

    private static void DrawSection(ScaledView view, SharpnessScene scene)
    {
        var reach = view.Reach;
        var (near, far) = (Math.Max(scene.NearMm, -reach), Math.Min(scene.FarMm, reach));
        view.Hatched(scene.InSection(near, -reach), scene.InSection(near, reach), scene.InSection(far, reach), scene.InSection(far, -reach));
        view.Line(scene.InSection(scene.FocusMm, -reach), scene.InSection(scene.FocusMm, reach), Sheet.Thin, dashed: true);
        view.Line(scene.InSection(-reach, 0), scene.InSection(0, 0), Sheet.Thin, dashed: true);
        view.Line((-reach, 0), (reach, 0), Sheet.Medium);
        foreach (var component in scene.Components)
        {
            view.Rectangle(component.InSection, Weight(component));
        }

        foreach (var component in scene.Components)
        {
            view.Label((component.InSection.MiddleX, component.InSection.High), component.Label, component.IsMain);
        }

        view.Caption($"In section, camera {(scene.IsStraightDown ? "above" : "on the left")}; hatched: sharp");
    }

    private static void WriteComponents(Sheet sheet, SharpnessScene scene, double y)
    {
        double[] columns = [Margin, Margin + 40, Margin + 580, Margin + 668, Margin + 756, Margin + 836, Margin + 916];
        string[] heads = ["", "Component", "Near part", "Far part", "Near blur", "Far blur", "Sharp depth"];
        for (var i = 0; i < heads.Length; i++)
        {
            sheet.Text(columns[i], y, heads[i], bold: true);
        }

        foreach (var component in scene.Components)
        {
            y += Row;
            var sharpness = component.Sharpness;
            string[] cells =
            [
                component.Letter,
                sharpness.Name + (component.IsMain ? " (main)" : ""),
                Signed(sharpness.NearOffsetMm),
                Signed(sharpness.FarOffsetMm),
                Blur(sharpness.NearBlurUm),
                Blur(sharpness.FarBlurUm),
                sharpness.Sharp ? "all" : sharpness.SharpShare <= 0 ? "none" : Format($"{sharpness.SharpShare * 100:0} %"),
            ];
            for (var i = 0; i < cells.Length; i++)
            {
                sheet.Text(columns[i], y, cells[i], bold: component.IsMain);
            }
        }
    }

    private static IEnumerable<string> Summary(PlaceFocusResponse answer, FocusPlacement placement, SharpnessScene scene)
    {
        var zone = placement.Zone.HasTotalDepthMm
            ? Format($"sharp over {placement.Zone.TotalDepthMm:0.#} mm along the axis")
            : "sharp to infinity";
        var band = scene.PlanBand is { } level && double.IsFinite(level.Far - level.Near)
            ? Format($", {level.Far - level.Near:0.#} mm on the level")
            : "";
        yield return Format(
            $"{(placement.Aperture.HasMark ? placement.Aperture.Mark : Format($"f/{placement.Aperture.FNumber:0.#}"))}, ")
            + Format($"magnification {placement.Focus.Magnification:0.###}, permitted blur {placement.PermittedBlurUm:0.#} µm: {zone}{band}.");
        yield return answer.NotReached is { } not
            ? Format($"No single frame holds the main component whole: {not.ShortfallMm:0.#} mm of its depth are missing. Shown is the nearest that can be had.")
            : Format($"Focus may slip {placement.SlipForwardMm:0.#} mm towards the camera and ")
                + (placement.HasSlipBackMm ? Format($"{placement.SlipBackMm:0.#} mm") : "any distance")
                + " away before the main component leaves the zone.";
        yield return "Near and far parts are counted from the focused plane, away from the camera; the dashed lines are that plane and the axis.";
    }

    private static double Weight(SharpnessScene.Component component) => component.IsMain ? Sheet.Heavy : Sheet.Medium;

    private static string Blur(double um) => um >= 100 ? Format($"{um:0} µm") : Format($"{um:0.#} µm");

    private static string Signed(double mm) => mm.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) + " mm";

    private static string Format(FormattableString text) => FormattableString.Invariant(text);
}
