using System.Globalization;
using System.Xml.Linq;
using StudioCalc.V1;

namespace StudioCalc.Drawing.Tests;

/// <summary>The picture holds the lines that it is given, to scale, and what the answer says.</summary>
public sealed class DishPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Frame_AndLines_AreToOneScale()
    {
        var picture = Draw();
        var frame = picture.Descendants(Svg + "g").First().Elements(Svg + "rect").Single();
        var scale = Number(frame, "width") / 300;
        Assert.Equal(200 * scale, Number(frame, "height"), 0.02);
        var main = Places(picture.Descendants(Svg + "polyline").First());
        Assert.Equal(40 * scale, main[1].X - main[0].X, 0.02);
        Assert.Equal(Number(frame, "x") + Number(frame, "width") / 2 - 20 * scale, main[0].X, 0.02);
        Assert.Equal(Number(frame, "y") + Number(frame, "height") / 2 - 10 * scale, main[0].Y, 0.02);
    }

    [Fact]
    public void Main_IsHeaviest_AndHiddenLinesAreLighterAndDashed()
    {
        var lines = Draw().Descendants(Svg + "polyline").ToList();
        Assert.Equal(Sheet.Heavy, Number(lines[0], "stroke-width"));
        Assert.Equal(Sheet.Medium, Number(lines[1], "stroke-width"));
        Assert.Null(lines[1].Attribute("stroke-dasharray"));
        Assert.Equal(Sheet.Thin, Number(lines[2], "stroke-width"));
        Assert.NotNull(lines[2].Attribute("stroke-dasharray"));
    }

    [Fact]
    public void Labels_DoNotOverlap()
    {
        var texts = Draw().Descendants(Svg + "g").SelectMany(group => group.Elements(Svg + "text")
            .Where(text => text.Attribute("text-anchor")!.Value == "middle")
            .Select(text => (Group: group, Box: Box(text)))).ToList();
        Assert.True(texts.Count > 6);
        foreach (var (one, other) in texts.SelectMany((one, i) => texts.Skip(i + 1).Select(other => (one, other))))
        {
            Assert.False(one.Group == other.Group && one.Box.Overlaps(other.Box), $"{one.Box} and {other.Box}");
        }
    }

    [Fact]
    public void Table_HoldsSharesAndWhatHidesMost()
    {
        var texts = string.Join('\n', Draw().Descendants(Svg + "text").Select(text => text.Value));
        Assert.Contains("dip & <olives>\uFFFD", texts, StringComparison.Ordinal);
        Assert.Contains("37 %", texts, StringComparison.Ordinal);
        Assert.Contains("61 % tower", texts, StringComparison.Ordinal);
        Assert.Contains("88 %", texts, StringComparison.Ordinal);
        Assert.Contains("Camera 35° over the table, azimuth 10°, 500 mm from the aim point; the frame is 300 x 200 mm there.", texts, StringComparison.Ordinal);
        Assert.Contains("nearest to the camera, not largest in the frame, unhidden", texts, StringComparison.Ordinal);
    }

    [Fact]
    public void Camera_FarOut_IsToldRatherThanDrawn()
    {
        Assert.Contains("camera, 287 mm up", Texts(Draw()), StringComparison.Ordinal);
        Assert.Contains("to the camera, 500 mm", Texts(Draw(Lines() with { Camera = (0, -4000) })), StringComparison.Ordinal);
    }

    private static string Texts(XElement picture) => string.Join('\n', picture.Descendants(Svg + "text").Select(text => text.Value));

    private static Bounds Box(XElement text)
    {
        var (x, y, half) = (Number(text, "x"), Number(text, "y"), text.Value.Length * Sheet.Letter / 2);
        return new(x - half, y - 12, x + half, y);
    }

    private static List<(double X, double Y)> Places(XElement line) => [.. line.Attribute("points")!.Value.Split(' ').Select(place =>
        place.Split(',') is var parts ? (double.Parse(parts[0], CultureInfo.InvariantCulture), double.Parse(parts[1], CultureInfo.InvariantCulture)) : default)];

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)?.Value ?? "0", CultureInfo.InvariantCulture);

    private static XElement Draw(DishLines? lines = null)
    {
        var picture = DishPicture.Draw(new() { View = new() }, Answer(), lines ?? Lines());
        Assert.Equal("image/svg+xml", picture.MediaType);
        return XElement.Parse(picture.Content);
    }

    private static DishLines Lines()
    {
        DishStroke[] strokes =
        [
            new(0, false, [(-20, 10), (20, 10), (20, 50)]),
            new(1, false, [(-25, 12), (15, 12), (15, 30)]),
            new(1, true, [(15, 30), (15, 10)]),
            new(2, false, [(-90, -40), (90, -40), (90, 40), (-90, 40), (-90, -40)]),
        ];
        return new(strokes, strokes, (70, -400), (0, 0), (0.14, -0.81), [(-150, -60), (150, -60), (150, 60), (-150, 60)]);
    }

    private static EvaluateViewResponse Answer() => new()
    {
        Camera = new()
        {
            ElevationDeg = 35, AzimuthDeg = 10, DistanceMm = 500, FieldWidthMm = 300, FieldHeightMm = 200, EntrancePupil = new() { XMm = 70, YMm = -400, ZMm = 287 },
        },
        Components =
        {
            new ComponentView { Name = "tower", VisibleShare = 1, TopVisibleShare = 1, FrameShare = 0.1 },
            new ComponentView
            {
                Name = "dip & <olives>\u0001", VisibleShare = 0.37, TopVisibleShare = 0.5, FrameShare = 0.2, HiddenBy = { new Hiding { Name = "tower", Share = 0.61 } },
            },
        },
        Vessels = { new VesselView { Name = "plate", ContentVisibleShare = 0.88, ContentAloneShare = 1 } },
        Main = new() { Name = "tower", IsNearest = true, IsUnhidden = true },
    };
}
