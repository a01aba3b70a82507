using System.Globalization;
using System.Xml.Linq;
using StudioCalc.V1;

namespace StudioCalc.Drawing.Tests;

/// <summary>The picture holds what the answer says, to scale.</summary>
public sealed class SharpnessPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Circles_OfThePlan_HaveTheSizesOfPlateAndComponents()
    {
        var radii = Draw().Descendants(Svg + "circle").Select(circle => Number(circle, "r")).ToList();
        Assert.Equal(3, radii.Count);
        Assert.Equal(270 / 42.0, radii[0] / radii[1], 1e-3);
        Assert.Equal(140 / 42.0, radii[2] / radii[1], 1e-3);
    }

    [Fact]
    public void ScaleBar_TellsTheScaleThatIsDrawn()
    {
        var picture = Draw();
        var unitsPerMm = Number(picture.Descendants(Svg + "circle").First(), "r") / 135;
        var told = picture.Descendants(Svg + "text").Select(text => text.Value).First(text => text.EndsWith(" mm", StringComparison.Ordinal));
        var mm = double.Parse(told.Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.Contains(
            picture.Descendants(Svg + "line"),
            line => Number(line, "y1") == Number(line, "y2")
                && Math.Abs(Number(line, "x2") - Number(line, "x1") - mm * unitsPerMm) < 0.02);
    }

    [Fact]
    public void Section_ShowsComponentsByDiameterAndHeight()
    {
        var picture = Draw();
        var unitsPerMm = Number(picture.Descendants(Svg + "circle").First(), "r") / 135;
        Assert.Contains(picture.Descendants(Svg + "rect"), box =>
            Math.Abs(Number(box, "width") - 42 * unitsPerMm) < 0.02 && Math.Abs(Number(box, "height") - 14 * unitsPerMm) < 0.02);
    }

    [Fact]
    public void HatchedStrip_OfTheSection_IsAsWideAsTheZone()
    {
        var picture = Draw();
        var unitsPerMm = Number(picture.Descendants(Svg + "circle").First(), "r") / 135;
        var corners = picture.Descendants(Svg + "polygon").Last().Attribute("points")!.Value.Split(' ')
            .Select(point => point.Split(',').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var width = Math.Sqrt(Math.Pow(corners[3][0] - corners[0][0], 2) + Math.Pow(corners[3][1] - corners[0][1], 2));
        Assert.Equal(45.75 * unitsPerMm, width, 0.05);
    }

    [Fact]
    public void HatchedBand_OfThePlan_IsSharpAtHalfTheHeightOfTheMainComponent()
    {
        var picture = Draw();
        var unitsPerMm = Number(picture.Descendants(Svg + "circle").First(), "r") / 135;
        var egg = picture.Descendants(Svg + "circle").ElementAt(1);
        var corners = picture.Descendants(Svg + "polygon").First().Attribute("points")!.Value.Split(' ')
            .Select(point => point.Split(',').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray()).ToArray();

        // Away from the camera, which stands at an azimuth of 10 degrees; y of the sheet runs down.
        var (sin, cos) = Math.SinCos(Math.PI / 18);
        double Away(double x, double y) => (-sin * (x - Number(egg, "cx")) - cos * (y - Number(egg, "cy"))) / unitsPerMm;
        var (near, far) = (Away(corners[0][0], corners[0][1]), Away(corners[3][0], corners[3][1]));

        // Depth of the egg's middle behind the aim point at the table, along the axis, taken off the zone's limits.
        var axis = 35 * Math.PI / 180;
        var middle = (-sin * 20 + cos * -40) * Math.Cos(axis) - 65 * Math.Sin(axis);
        Assert.Equal((-5 - 22.34 - middle) / Math.Cos(axis), near, 0.1);
        Assert.Equal((-5 + 23.41 - middle) / Math.Cos(axis), far, 0.1);
        var caption = picture.Descendants(Svg + "text").Single(text => text.Value == "In plan, front below; hatched: sharp at 65 mm over the table");
        var window = picture.Descendants(Svg + "clipPath").First().Element(Svg + "rect")!;
        Assert.True(Number(caption, "x") + caption.Value.Length * 7.9 <= Number(window, "x") + Number(window, "width"));
    }

    [Fact]
    public void HatchedStrip_OfAZoneFarDeeperThanTheSet_CoversTheSection()
    {
        var answer = Answer();
        answer.Solution.Zone = new() { NearDepthMm = 15000, FarDepthMm = 37000, TotalDepthMm = 52000 };
        var picture = XElement.Parse(SharpnessPicture.Draw(Request(), answer).Content);
        var corners = picture.Descendants(Svg + "polygon").Last().Attribute("points")!.Value.Split(' ')
            .Select(point => point.Split(',').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var window = picture.Descendants(Svg + "clipPath").Last().Element(Svg + "rect")!;
        var (left, top) = (Number(window, "x"), Number(window, "y"));
        var (right, bottom) = (left + Number(window, "width"), top + Number(window, "height"));
        foreach (var (x, y) in new[] { (left, top), (right, top), (left, bottom), (right, bottom) })
        {
            // Within: the corners run the same way round from everywhere inside.
            var turns = corners.Zip(corners.Skip(1).Append(corners[0]), (a, b) => Math.Sign((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])));
            Assert.Single(turns.Distinct());
        }
    }

    [Fact]
    public void Texts_HoldNamesBlurAndAperture()
    {
        var texts = string.Join('\n', Draw().Descendants(Svg + "text").Select(text => text.Value));
        Assert.Contains("egg <half> & more\uFFFD (main)", texts, StringComparison.Ordinal);
        Assert.Contains("27.8 µm", texts, StringComparison.Ordinal);
        Assert.Contains("f/9, magnification 0.115", texts, StringComparison.Ordinal);
        Assert.Contains("34 %", texts, StringComparison.Ordinal);
    }

    // 7.9: the mean width of a bold letter, measured.
    [Fact]
    public void Names_OfSixtyLetters_LeaveTheNextColumnFree()
    {
        var (request, answer) = (Request(), Answer());
        var name = string.Concat(Enumerable.Repeat("crisp leaf ", 6))[..60];
        (request.Focus.Components[0].Name, answer.Solution.Components[0].Name) = (name, name);
        var texts = XElement.Parse(SharpnessPicture.Draw(request, answer).Content).Descendants(Svg + "text").ToList();
        var main = texts.First(text => text.Value.StartsWith(name, StringComparison.Ordinal));
        var next = texts.First(text => text.Value == "Near part");
        Assert.True(Number(next, "x") - Number(main, "x") >= main.Value.Length * 7.9);
    }

    [Fact]
    public void Picture_IsBlackOnWhiteAndAsksForNothingOutside()
    {
        var picture = Draw();
        var paints = picture.Descendants().Attributes().Where(attribute => attribute.Name.LocalName is "fill" or "stroke").Select(paint => paint.Value);
        Assert.Empty(paints.Except(["black", "white", "none", "url(#hatch)"], StringComparer.Ordinal));
        Assert.DoesNotContain(picture.DescendantsAndSelf().Attributes(), attribute => attribute.Name.LocalName is "href" or "src");
    }

    [Fact]
    public void StraightDown_ThePlanIsSharpAsAWholeOrNotAtAll()
    {
        static Action<RenderSharpnessRequest> AimedAt(double heightMm) => request => request.Focus.Direction = new()
        {
            ElevationDeg = 90, AimPoint = new() { XMm = 0, YMm = 0, ZMm = heightMm },
        };
        Assert.Equal(2, Draw(AimedAt(65)).Descendants(Svg + "polygon").Count());
        var off = Draw(AimedAt(300));
        Assert.Single(off.Descendants(Svg + "polygon"));
        var texts = string.Join('\n', off.Descendants(Svg + "text").Select(text => text.Value));
        Assert.Contains("nowhere sharp at 65 mm over the table", texts, StringComparison.Ordinal);
        Assert.Contains("camera above", texts, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Picture_IsTheSameUnderEveryCulture(string culture)
    {
        var expected = Draw().ToString();
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new(culture);
            Assert.Equal(expected, Draw().ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void NotReached_SaysSoWithTheShortfall()
    {
        var answer = Answer();
        var picture = SharpnessPicture.Draw(Request(), new() { NotReached = new() { ShortfallMm = 3.25, Nearest = answer.Solution } });
        Assert.Contains("3.3 mm of its depth are missing", picture.Content, StringComparison.Ordinal);
    }

    private static XElement Draw(Action<RenderSharpnessRequest>? change = null)
    {
        var request = Request();
        change?.Invoke(request);
        var picture = SharpnessPicture.Draw(request, Answer());
        Assert.Equal("image/svg+xml", picture.MediaType);
        return XElement.Parse(picture.Content);
    }

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)?.Value ?? "0", CultureInfo.InvariantCulture);

    private static RenderSharpnessRequest Request() => new()
    {
        PlateDiameterMm = 270,
        Focus = new()
        {
            Direction = new() { ElevationDeg = 35, AzimuthDeg = 10 },
            Components =
            {
                new FocusComponent
                {
                    Name = "egg <half> & more\u0001", Position = new() { XMm = 20, YMm = -40, ZMm = 58 }, HeightMm = 14, DiameterMm = 42, Main = true,
                },
                new FocusComponent { Name = "noodles", Position = new() { XMm = 0, YMm = 0, ZMm = 40 }, HeightMm = 22, DiameterMm = 140 },
            },
        },
    };

    private static PlaceFocusResponse Answer() => new()
    {
        Solution = new()
        {
            Focus = new() { Magnification = 0.1146 },
            FocusOffsetMm = -5,
            Aperture = new() { FNumber = 8.98, Mark = "f/9" },
            PermittedBlurUm = 30,
            Zone = new() { NearDepthMm = 22.34, FarDepthMm = 23.41, TotalDepthMm = 45.75 },
            SlipForwardMm = 1.65,
            Components =
            {
                new ComponentSharpness
                {
                    Name = "egg <half> & more\u0001", NearOffsetMm = -20.8, FarOffsetMm = 21.7, NearBlurUm = 27.84, FarBlurUm = 27.83, Sharp = true, SharpShare = 1,
                },
                new ComponentSharpness { Name = "noodles", NearOffsetMm = -20, FarOffsetMm = 107, NearBlurUm = 26.9, FarBlurUm = 126.8, SharpShare = 0.34 },
            },
        },
    };
}
