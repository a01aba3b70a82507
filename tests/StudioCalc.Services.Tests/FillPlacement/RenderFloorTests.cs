using System.Globalization;
using System.Xml.Linq;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>The floor sketch shows the set to scale, and the same light as the numbers.</summary>
public sealed class RenderFloorTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Light_IsThatOfEvaluateLight()
    {
        var request = Examples.Floor();
        var light = Calls.FillPlacement.EvaluateLight(new()
        {
            Sources = { request.Sources }, Receivers = { request.Receivers }, Settings = request.Settings,
        });
        Assert.Equal(light.Receivers, Calls.FillPlacement.RenderFloor(request).Receivers);
    }

    [Fact]
    public void Faces_AreDrawnToTheScaleOfThePlate()
    {
        var picture = Draw(Examples.Floor());
        var scale = Number(picture.Descendants(Svg + "circle").First(), "r") / 140;
        var heavy = picture.Descendants(Svg + "polygon").Where(polygon => Number(polygon, "stroke-width") > 2).Select(Corners).ToList();
        Assert.Equal(4, heavy.Count);

        // From above: across its corners the octagon is 900 / cos 22.5 degrees wide, across its flats 900; the window 1200.
        Assert.Equal(900 * scale, heavy[0].Max(corner => corner.X) - heavy[0].Min(corner => corner.X), 0.1);
        Assert.Equal(450 * scale, heavy[0].Max(corner => corner.Y) - heavy[0].Min(corner => corner.Y), 0.1);
        Assert.Equal(1200 * scale, heavy[1].Max(corner => corner.X) - heavy[1].Min(corner => corner.X), 0.1);

        // From the side: the octagon leans by its elevation.
        Assert.Equal(900 * Math.Cos(Math.PI / 6) * scale, heavy[2].Max(corner => corner.Y) - heavy[2].Min(corner => corner.Y), 0.1);
        Assert.Equal(1500 * scale, heavy[3].Max(corner => corner.Y) - heavy[3].Min(corner => corner.Y), 0.1);
    }

    [Fact]
    public void Figures_StandInIt()
    {
        var texts = Draw(Examples.Floor()).Descendants(Svg + "text").Select(text => text.Value).ToList();
        foreach (var text in new[] { "A 1.49 m", "A 0.74 m up", "B 1.00 m", "lens 0.60 m", "1 -1.0", "stand", "card", "f/4", "30 °", "0.90 m, 8 sides", "1.20 x 1.50 m" })
        {
            Assert.Contains(text, texts);
        }
    }

    [Fact]
    public void EveryShape_IsDrawn_WithoutTableAndCameraToo()
    {
        var request = Examples.Floor();
        (request.Table, request.Camera, request.Settings) = (null, null, null);
        request.Sources[0].Point = new();
        request.Sources[1].Outline = new()
        {
            Corners = { new FacePoint { RightMm = 0, UpMm = 0 }, new FacePoint { RightMm = 400, UpMm = 0 }, new FacePoint { RightMm = 0, UpMm = 400 } },
        };
        request.Occluders.Add(new Occluder { Name = "loaf", Box = new() { Base = At(200, 100, 0), WidthMm = 200, DepthMm = 100, HeightMm = 90, TurnDeg = 30 } });
        request.Occluders.Add(new Occluder { Name = "plum", Ball = new() { Centre = At(-100, 100, 30), DiameterMm = 60 } });
        var picture = Draw(request);
        var texts = picture.Descendants(Svg + "text").Select(text => text.Value).ToList();
        Assert.Contains("point", texts);
        Assert.Contains("own outline", texts);
        Assert.Contains("loaf", texts);
        Assert.Contains("plum", texts);
        Assert.Contains("over receiver 1", picture.Descendants(Svg + "desc").Single().Value, StringComparison.Ordinal);
        Assert.Equal(3, picture.Descendants(Svg + "circle").Count());
    }

    [Fact]
    public void TubeWithoutLength_IsRefused()
    {
        var request = Examples.Floor();
        request.Occluders[0].Tube.To = request.Occluders[0].Tube.From.Clone();
        Assert.Equal([("occluders[0].tube.to", "CONFLICT")], Calls.Refused(() => Calls.FillPlacement.RenderFloor(request)));
    }

    private static Point At(double x, double y, double z) => new() { XMm = x, YMm = y, ZMm = z };

    private static XElement Draw(RenderFloorRequest request) => XElement.Parse(Calls.FillPlacement.RenderFloor(request).Picture.Content);

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)?.Value ?? "0", CultureInfo.InvariantCulture);

    private static List<(double X, double Y)> Corners(XElement polygon) =>
    [
        .. polygon.Attribute("points")!.Value.Split(' ').Select(point => point.Split(','))
            .Select(pair => (double.Parse(pair[0], CultureInfo.InvariantCulture), double.Parse(pair[1], CultureInfo.InvariantCulture))),
    ];
}
