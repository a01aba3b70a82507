using System.Globalization;
using System.Xml.Linq;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Drawing.Tests;

/// <summary>The curves go through the samples, to scale.</summary>
public sealed class CoolingPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Curves_RunThroughTheirSamples()
    {
        var curves = Draw().Descendants(Svg + "polyline").Select(Places).ToList();
        Assert.Equal(4, curves.Count);
        var surface = curves[0];
        Assert.Equal((surface[0].X + surface[2].X) / 2, surface[1].X, 0.02);

        // 60, 50 and 44 °C.
        Assert.Equal(0.6, (surface[2].Y - surface[1].Y) / (surface[1].Y - surface[0].Y), 2e-3);
        Assert.All(curves.SelectMany(curve => curve), place => Assert.InRange(place.Y, 96, 516));
    }

    [Fact]
    public void TemperaturesThatRunTogether_AreDrawnOnce()
    {
        var picture = Draw((_, answer) =>
        {
            foreach (var sample in answer.Samples)
            {
                sample.MeanCelsius = sample.CoreCelsius = sample.SurfaceCelsius;
                sample.ClearPlateCelsius();
            }
        });
        Assert.Single(picture.Descendants(Svg + "polyline"));
        Assert.Contains("surface, mean, core", Texts(picture), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_OfCurvesThatEndTogether_StandApart()
    {
        var picture = Draw((_, answer) =>
        {
            var end = answer.Samples[^1];
            (end.SurfaceCelsius, end.MeanCelsius, end.CoreCelsius, end.PlateCelsius) = (22, 22, 22, 22);
        });
        string[] names = ["surface", "mean", "core", "plate", "air"];
        var heights = picture.Descendants(Svg + "text").Where(text => names.Contains(text.Value)).Select(text => Number(text, "y")).Order().ToList();
        Assert.Equal(5, heights.Count);
        Assert.All(heights.Zip(heights.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 15.9));
        Assert.InRange(heights[^1], 0, 525);
    }

    [Fact]
    public void Events_AreNumberedLinesAtTheirTimes_AndWords()
    {
        var picture = Draw();
        var surface = Places(picture.Descendants(Svg + "polyline").First());
        Assert.Contains(picture.Descendants(Svg + "line"), line =>
            line.Attribute("stroke-dasharray") is not null && Math.Abs(Number(line, "x1") - surface[1].X) < 0.02 && Number(line, "x1").Equals(Number(line, "x2")));
        Assert.Contains("the surface passes the set point: 50 °C", Texts(picture), StringComparison.Ordinal);
        Assert.Contains("5:00", Texts(picture), StringComparison.Ordinal);
    }

    [Fact]
    public void FoodAsWarmAsTheRoom_HasAScale()
    {
        var picture = Draw((request, answer) =>
        {
            foreach (var sample in answer.Samples)
            {
                sample.SurfaceCelsius = sample.MeanCelsius = sample.CoreCelsius = sample.PlateCelsius = 22;
            }
        });
        Assert.All(Places(Assert.Single(picture.Descendants(Svg + "polyline"))), place => Assert.InRange(place.Y, 96, 516));
    }

    private static XElement Draw(Action<RenderCoolingRequest, SimulateCoolingResponse>? change = null)
    {
        var request = new RenderCoolingRequest
        {
            Cooling = new() { Item = new() { Liquid = new() }, Air = new() { TemperatureCelsius = 22 } },
        };
        var answer = new SimulateCoolingResponse
        {
            Samples = { Sample(0, 60), Sample(300, 50), Sample(600, 44) },
            Events = { new CoolingEvent { Kind = CoolingEventKind.SetPoint, At = new() { Seconds = 300 }, SurfaceCelsius = 50 } },
        };
        change?.Invoke(request, answer);
        return XElement.Parse(CoolingPicture.Draw(request, answer).Content);
    }

    private static CoolingSample Sample(long seconds, double surface) => new()
    {
        At = new Duration { Seconds = seconds },
        SurfaceCelsius = surface,
        MeanCelsius = surface + 2,
        CoreCelsius = surface + 4,
        PlateCelsius = 40,
    };

    private static List<(double X, double Y)> Places(XElement curve) =>
    [
        .. curve.Attribute("points")!.Value.Split(' ').Select(point => point.Split(',')).Select(point =>
            (double.Parse(point[0], CultureInfo.InvariantCulture), double.Parse(point[1], CultureInfo.InvariantCulture))),
    ];

    private static string Texts(XElement picture) => string.Join('\n', picture.Descendants(Svg + "text").Select(text => text.Value));

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
