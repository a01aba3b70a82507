using Google.Protobuf.Collections;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>The words beside a picture of a dish: what the camera is, and the shares of components and insides.</summary>
internal static class DishTable
{
    private const double Row = 20;
    private const double NameWidth = 440;

    public static double Height(EvaluateViewResponse answer) =>
        (answer.Components.Count + 1 + (answer.Vessels.Count > 0 ? answer.Vessels.Count + 1.5 : 0) + 1) * Row;

    public static IEnumerable<string> Summary(EvaluateViewResponse answer)
    {
        var camera = answer.Camera;
        yield return Format($"Camera {camera.ElevationDeg:0.#}° over the table, azimuth {camera.AzimuthDeg:0.#}°, ")
            + (camera.HasDistanceMm ? Format($"{camera.DistanceMm:0} mm from the aim point") : "far away")
            + Format($"; the frame is {camera.FieldWidthMm:0} x {camera.FieldHeightMm:0} mm there.");
        var main = answer.Main;
        yield return $"Main component: {(main.IsNearest ? "nearest" : "not nearest")} to the camera, {(main.IsLargest ? "largest" : "not largest")} in the frame, "
            + (main.IsUnhidden ? "unhidden." : "partly hidden.");
        yield return "Heavy lines are the main component; light dashes are what something hides.";
    }

    public static void Write(Sheet sheet, EvaluateViewResponse answer, DishThings things, double x, double y)
    {
        Cells(sheet, x, y, bold: true, "", "Component", "Shows", "Of its top", "Of the frame", "Outside", "Hidden most by");
        for (var i = 0; i < answer.Components.Count; i++)
        {
            y += Row;
            var component = answer.Components[i];
            Cells(
                sheet, x, y, i == things.Main, DishThings.Letter(i), component.Name + (i == things.Main ? " (main)" : ""), Percent(component.VisibleShare),
                Percent(component.TopVisibleShare), Percent(component.FrameShare), Percent(component.OutsideFrameShare), Most(component.HiddenBy));
        }

        if (answer.Vessels.Count == 0)
        {
            return;
        }

        y += Row * 1.5;
        Cells(sheet, x, y, bold: true, "", "Inside", "Shows", "Over its rim", "", "", "Hidden most by");
        for (var i = 0; i < answer.Vessels.Count; i++)
        {
            y += Row;
            var vessel = answer.Vessels[i];
            Cells(
                sheet, x, y, bold: false, DishThings.Letter(answer.Components.Count + i), vessel.Name, Percent(vessel.ContentVisibleShare),
                Percent(vessel.ContentAloneShare), "", "", Most(vessel.HiddenBy));
        }
    }

    private static void Cells(Sheet sheet, double x, double y, bool bold, params ReadOnlySpan<string> cells)
    {
        ReadOnlySpan<double> columns = [0, 36, 36 + NameWidth, 108 + NameWidth, 200 + NameWidth, 304 + NameWidth, 382 + NameWidth];
        for (var i = 0; i < cells.Length; i++)
        {
            if (cells[i].Length > 0)
            {
                var room = i == 1 ? NameWidth : i == columns.Length - 1 ? 1040 - columns[i] : columns[i + 1] - columns[i];
                sheet.Text(x + columns[i], y, Sheet.Cut(cells[i], room), bold);
            }
        }
    }

    private static string Most(RepeatedField<Hiding> hidings) => hidings.Count == 0 ? "" : Format($"{Percent(hidings[0].Share)} {hidings[0].Name}");

    private static string Percent(double share) => Format($"{share * 100:0} %");

    private static string Format(FormattableString text) => FormattableString.Invariant(text);
}
