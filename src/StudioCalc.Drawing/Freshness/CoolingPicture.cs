using System.Globalization;
using Google.Protobuf.Collections;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Draws temperatures over time with the events on the way.</summary>
/// <remarks>The surface is the heaviest line, core and mean are thinner, the plate has dots and dashes; the thin level line is the air.
/// Temperatures that run together are drawn once and named together.</remarks>
public static class CoolingPicture
{
    private const double Width = 1040;
    private const double Margin = 20;
    private const double Head = 96;
    private const double Height = 420;
    private const double Left = 80;
    private const double Right = 850;
    private const double TogetherK = 0.1;
    private const double Line = 16;

    /// <summary>Draws a simulated cooling.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="answer">The answer to its cooling.</param>
    public static Picture Draw(RenderCoolingRequest request, SimulateCoolingResponse answer)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(answer);
        var title = request.HasTitle ? request.Title : "Temperatures over time";
        var end = answer.Samples[^1];
        var lines = new[]
        {
            FormattableString.Invariant($"Surface from {answer.Samples[0].SurfaceCelsius:0.0} to {end.SurfaceCelsius:0.0} °C in {TimeAxis.Clock(TimeAxis.Seconds(end.At))}, ")
                + FormattableString.Invariant($"air {request.Cooling.Air.TemperatureCelsius:0.#} °C. Minutes and seconds from the start of the clock."),
            answer.Events.Count == 0 ? "No event in this time." : "Numbered lines are events, listed below.",
        };
        var bottom = Head + Height;
        var sheet = new Sheet(Width, bottom + (answer.Events.Count + 2) * 20, title, string.Join(' ', lines));
        sheet.Text(Margin, 30, title, bold: true);
        sheet.Text(Margin, 50, lines[0]);
        sheet.Text(Margin, 68, lines[1]);
        var curves = CurvesOf(answer.Samples, request.Cooling.Item.Piece?.Shape == PieceShape.Slab ? "core or lower face" : "core");
        var scale = new CelsiusAxis(Head + 8, bottom - 8, curves.SelectMany(curve => curve.Celsius).Append(request.Cooling.Air.TemperatureCelsius));
        var axis = new TimeAxis(Left, Right, TimeAxis.Seconds(end.At));
        axis.Write(sheet, Head, bottom);
        scale.Write(sheet, Left, Right);
        sheet.Rectangle(Left, Head, Right - Left, Height, Sheet.Thin);
        var air = scale.Y(request.Cooling.Air.TemperatureCelsius);
        sheet.Line(Left, air, Right, air, Sheet.Thin, dashed: true);
        foreach (var curve in curves)
        {
            sheet.Curve(answer.Samples.Select((sample, i) => (axis.X(TimeAxis.Seconds(sample.At)), scale.Y(curve.Celsius[i]))), curve.Weight, curve.Dashed);
        }

        Name(sheet, [.. curves.Select(curve => (scale.Y(curve.Celsius[^1]), curve.Name)), (air, "air")]);
        DrawEvents(sheet, axis, answer, bottom);
        return new() { MediaType = "image/svg+xml", FileName = "cooling.svg", Content = sheet.ToString() };
    }

    private static void DrawEvents(Sheet sheet, TimeAxis axis, SimulateCoolingResponse answer, double bottom)
    {
        var (taken, y) = (double.NegativeInfinity, bottom + 10);
        for (var i = 0; i < answer.Events.Count; i++)
        {
            var found = answer.Events[i];
            var x = axis.X(TimeAxis.Seconds(found.At));
            sheet.Line(x, Head, x, bottom, Sheet.Medium, dashed: true);
            taken = Math.Max(x + 4, taken);
            var number = (i + 1).ToString(CultureInfo.InvariantCulture);
            sheet.Text(taken, Head + 16, number, bold: true);
            taken += 14;
            y += 20;
            sheet.Text(Margin, y, number, bold: true);
            sheet.Text(Margin + 30, y, TimeAxis.Clock(TimeAxis.Seconds(found.At)));
            sheet.Text(Margin + 110, y, Words(found));
        }
    }

    // Names at the ends of the curves, pushed apart where they would meet.
    private static void Name(Sheet sheet, IReadOnlyList<(double Y, string Name)> ends)
    {
        var ordered = ends.OrderBy(end => end.Y).ToList();
        var least = Head + 4.0;
        var places = new double[ordered.Count];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = Math.Max(ordered[i].Y, least);
            least = places[i] + Line;
        }

        var most = Head + Height;
        for (var i = places.Length - 1; i >= 0; i--)
        {
            places[i] = Math.Min(places[i], most);
            most = places[i] - Line;
        }

        for (var i = 0; i < places.Length; i++)
        {
            sheet.Line(Right, ordered[i].Y, Right + 14, places[i], Sheet.Thin);
            sheet.Text(Right + 18, places[i] + 4, ordered[i].Name);
        }
    }

    private static List<TemperatureCurve> CurvesOf(RepeatedField<CoolingSample> samples, string core)
    {
        List<TemperatureCurve> curves = [new("surface", Sheet.Heavy, false, [.. samples.Select(sample => sample.SurfaceCelsius)])];
        Add("mean", Sheet.Thin, false, sample => sample.MeanCelsius);
        Add(core, Sheet.Medium, false, sample => sample.CoreCelsius);
        if (samples[0].HasPlateCelsius)
        {
            Add("plate", Sheet.Medium, true, sample => sample.PlateCelsius);
        }

        return curves;

        void Add(string name, double weight, bool dashed, Func<CoolingSample, double> of)
        {
            double[] celsius = [.. samples.Select(of)];
            var same = curves.FindIndex(curve => curve.Celsius.Zip(celsius).All(pair => Math.Abs(pair.First - pair.Second) <= TogetherK));
            if (same >= 0)
            {
                curves[same] = curves[same] with { Name = $"{curves[same].Name}, {name}" };
            }
            else
            {
                curves.Add(new(name, weight, dashed, celsius));
            }
        }
    }

    private static string Words(CoolingEvent found)
    {
        var what = found.Kind switch
        {
            CoolingEventKind.SetPoint => "the surface passes the set point",
            CoolingEventKind.SteamStops => "steam can no longer show",
            CoolingEventKind.GlossLost => "ridges and gloss are lost",
            CoolingEventKind.Melting => "the surface begins to drip",
            CoolingEventKind.Haze => "a haze shows",
            CoolingEventKind.Beads => "beads show",
            CoolingEventKind.LeavesHarmed => "leaves are harmed",
            _ => throw new ArgumentOutOfRangeException(nameof(found)),
        };
        return found.HasSurfaceCelsius ? FormattableString.Invariant($"{what}: {found.SurfaceCelsius:0.#} °C") : what;
    }

    private sealed record TemperatureCurve(string Name, double Weight, bool Dashed, double[] Celsius);
}
