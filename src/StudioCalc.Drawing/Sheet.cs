using System.Globalization;
using System.Xml.Linq;

namespace StudioCalc.Drawing;

/// <summary>A sheet of line work in SVG: black on white, read by weight of line, hatching and words.</summary>
/// <remarks>Lengths are in sheet units, a pixel at full size; y runs down.</remarks>
internal sealed class Sheet
{
    /// <summary>Lines of outlines, and of what matters most.</summary>
    public const double Thin = 0.7;
    public const double Medium = 1.3;
    public const double Heavy = 2.6;

    /// <summary>Width of a usual letter.</summary>
    public const double Letter = 7.2;

    private const string Hatch = "hatch";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly XElement _root;
    private int _views;

    /// <summary>Starts a sheet.</summary>
    /// <param name="width">Its width.</param>
    /// <param name="height">Its height.</param>
    /// <param name="title">What it shows, for readers that cannot see it too.</param>
    /// <param name="description">The same in a sentence or two.</param>
    public Sheet(double width, double height, string title, string description) => _root = new(
        Svg + "svg",
        new XAttribute("viewBox", $"0 0 {Number(width)} {Number(height)}"),
        new XAttribute("width", Number(width)),
        new XAttribute("height", Number(height)),
        new XAttribute("role", "img"),
        new XAttribute("font-family", "sans-serif"),
        new XAttribute("font-size", 13),
        new XElement(Svg + "title", Readable(title)),
        new XElement(Svg + "desc", Readable(description)),
        new XElement(Svg + "defs", new XElement(
            Svg + "pattern",
            new XAttribute("id", Hatch),
            new XAttribute("width", 7),
            new XAttribute("height", 7),
            new XAttribute("patternUnits", "userSpaceOnUse"),
            new XAttribute("patternTransform", "rotate(45)"),
            new XElement(Svg + "line", At("x1", 0), At("y1", 0), At("x2", 0), At("y2", 7), Stroke(0.6)))),
        new XElement(Svg + "rect", At("width", width), At("height", height), new XAttribute("fill", "white")));

    /// <summary>A window of the sheet: what is drawn in it is cut off at its frame.</summary>
    public XElement Window(double x, double y, double width, double height)
    {
        var id = $"window-{++_views}";
        _root.Add(new XElement(Svg + "clipPath", new XAttribute("id", id), Box(x, y, width, height)));
        var group = new XElement(Svg + "g", new XAttribute("clip-path", $"url(#{id})"));
        _root.Add(group);
        _root.Add(With(Box(x, y, width, height), Thin));
        return group;
    }

    public void Line(double x1, double y1, double x2, double y2, double weight, bool dashed = false, XElement? within = null)
    {
        var line = new XElement(Svg + "line", At("x1", x1), At("y1", y1), At("x2", x2), At("y2", y2), Stroke(weight));
        if (dashed)
        {
            line.Add(Dashes());
        }

        (within ?? _root).Add(line);
    }

    /// <summary>A line through places in order.</summary>
    public void Curve(IEnumerable<(double X, double Y)> places, double weight, bool dashed = false, XElement? within = null)
    {
        var curve = With(new XElement(Svg + "polyline", Points(places)), weight);
        if (dashed)
        {
            curve.Add(Dashes());
        }

        (within ?? _root).Add(curve);
    }

    /// <summary>A lighter line of short dashes: what something else hides.</summary>
    public void HiddenCurve(IEnumerable<(double X, double Y)> places, XElement? within = null)
    {
        var curve = With(new XElement(Svg + "polyline", Points(places)), Thin);
        curve.Add(new XAttribute("stroke-dasharray", "4 3"), new XAttribute("stroke-opacity", "0.6"));
        (within ?? _root).Add(curve);
    }

    public void Circle(double x, double y, double radius, double weight, XElement? within = null) => (within ?? _root).Add(
        With(new XElement(Svg + "circle", At("cx", x), At("cy", y), At("r", radius)), weight));

    public void Rectangle(double x, double y, double width, double height, double weight, XElement? within = null) =>
        (within ?? _root).Add(With(Box(x, y, width, height), weight));

    /// <summary>The outline of an area.</summary>
    public void Outline(IEnumerable<(double X, double Y)> corners, double weight, XElement? within = null) =>
        (within ?? _root).Add(With(Polygon(corners), weight));

    /// <summary>A hatched area.</summary>
    public void Hatched(IEnumerable<(double X, double Y)> corners, XElement? within = null)
    {
        var area = Polygon(corners);
        area.Add(new XAttribute("fill", $"url(#{Hatch})"));
        (within ?? _root).Add(area);
    }

    /// <summary>A text that is no wider than some room, as far as letters of a usual width go.</summary>
    public static string Cut(string text, double width)
    {
        var runes = text.EnumerateRunes().ToList();
        var most = Math.Max(1, (int)(width / Letter));
        return runes.Count <= most ? text : string.Concat(runes.Take(most - 1)) + "…";
    }

    /// <summary>A text on a white ground, so that lines behind it do not cross it.</summary>
    public void Text(double x, double y, string text, bool bold = false, Anchor anchor = Anchor.Start, XElement? within = null)
    {
        var element = new XElement(
            Svg + "text",
            At("x", x),
            At("y", y),
            new XAttribute("text-anchor", anchor switch { Anchor.Middle => "middle", Anchor.End => "end", _ => "start" }),
            new XAttribute("stroke", "white"),
            new XAttribute("stroke-width", 3),
            new XAttribute("paint-order", "stroke"),
            Readable(text));
        if (bold)
        {
            element.Add(new XAttribute("font-weight", "bold"));
        }

        (within ?? _root).Add(element);
    }

    /// <inheritdoc/>
    public override string ToString() => _root.ToString();

    // Names come from callers; what XML cannot hold is shown as the sign for it.
    public static string Readable(string text) => string.Concat(text.EnumerateRunes().Select(rune =>
        rune.Value < ' ' || rune.Value is 0xFFFE or 0xFFFF ? "\uFFFD" : rune.ToString()));

    private static XElement Box(double x, double y, double width, double height) =>
        new(Svg + "rect", At("x", x), At("y", y), At("width", width), At("height", height));

    private static XElement Polygon(IEnumerable<(double X, double Y)> corners) => new(Svg + "polygon", Points(corners));

    private static XAttribute Points(IEnumerable<(double X, double Y)> places) =>
        new("points", string.Join(' ', places.Select(place => $"{Number(place.X)},{Number(place.Y)}")));

    private static XAttribute Dashes() => new("stroke-dasharray", "9 4 2 4");

    private static XElement With(XElement shape, double weight)
    {
        shape.Add(new XAttribute("fill", "none"), Stroke(weight));
        return shape;
    }

    private static object[] Stroke(double weight) =>
        [new XAttribute("stroke", "black"), new XAttribute("stroke-width", Number(weight))];

    private static XAttribute At(string name, double value) => new(name, Number(value));

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

/// <summary>Which part of a text stands at its place.</summary>
internal enum Anchor
{
    /// <summary>Its start.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its end.</summary>
    End,
}
