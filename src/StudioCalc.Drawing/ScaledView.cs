using System.Globalization;
using System.Xml.Linq;

namespace StudioCalc.Drawing;

/// <summary>A window in which lengths of the set are drawn to scale, with a bar that tells it.</summary>
/// <remarks>The set's coordinates are in mm, with the second one running up.</remarks>
internal sealed class ScaledView
{
    private readonly Sheet _sheet;
    private readonly Bounds _window;
    private readonly Bounds _set;
    private readonly double _scale;
    private readonly List<Bounds> _labels = [];

    /// <summary>Opens a view.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="window">Where on the sheet, whose y runs down: its low side is the upper one.</param>
    /// <param name="set">What part of the set; it is put in the middle.</param>
    /// <param name="scale">Sheet units a millimetre.</param>
    public ScaledView(Sheet sheet, Bounds window, Bounds set, double scale)
    {
        (_sheet, _window, _set, _scale) = (sheet, window, set, scale);
        Group = sheet.Window(window.Left, window.Low, window.Width, window.Height);
    }

    /// <summary>What is drawn within the window.</summary>
    public XElement Group { get; }

    /// <summary>The largest scale at which a part of the set fits a window with a margin.</summary>
    public static double Fitting(Bounds window, Bounds set) =>
        Math.Min(window.Width * 0.84 / Math.Max(set.Width, 1e-6), window.Height * 0.8 / Math.Max(set.Height, 1e-6));

    public double X(double mm) => _window.Left + _window.Width / 2 + (mm - _set.MiddleX) * _scale;

    public double Y(double mm) => _window.Low + _window.Height / 2 - (mm - _set.MiddleY) * _scale;

    /// <summary>Millimetres of the set across the diagonal of the window: longer than anything in it.</summary>
    public double Reach => (_window.Width + _window.Height) / _scale;

    public void Line((double X, double Y) from, (double X, double Y) to, double weight, bool dashed = false) =>
        _sheet.Line(X(from.X), Y(from.Y), X(to.X), Y(to.Y), weight, dashed, Group);

    public void Curve(IEnumerable<(double X, double Y)> places, double weight) => _sheet.Curve(places.Select(OnSheet), weight, within: Group);

    public void HiddenCurve(IEnumerable<(double X, double Y)> places) => _sheet.HiddenCurve(places.Select(OnSheet), Group);

    public void Circle((double X, double Y) centre, double radiusMm, double weight) =>
        _sheet.Circle(X(centre.X), Y(centre.Y), radiusMm * _scale, weight, Group);

    public void Rectangle(Bounds box, double weight) =>
        _sheet.Rectangle(X(box.Left), Y(box.High), box.Width * _scale, box.Height * _scale, weight, Group);

    public void Outline(IEnumerable<(double X, double Y)> corners, double weight) =>
        _sheet.Outline(corners.Select(corner => (X(corner.X), Y(corner.Y))), weight, Group);

    /// <summary>A cross of a fixed size on the sheet.</summary>
    public void Cross((double X, double Y) at, double weight)
    {
        const double arm = 5;
        var (x, y) = (X(at.X), Y(at.Y));
        _sheet.Line(x - arm, y - arm, x + arm, y + arm, weight, within: Group);
        _sheet.Line(x - arm, y + arm, x + arm, y - arm, weight, within: Group);
    }

    public void Hatched(params IEnumerable<(double X, double Y)> corners) =>
        _sheet.Hatched(corners.Select(corner => (X(corner.X), Y(corner.Y))), Group);

    /// <summary>A label at a place of the set, moved up and tied to it by a line where others stand in its way.</summary>
    public void Label((double X, double Y) at, string text, bool bold)
    {
        const double line = 15;
        text = Sheet.Cut(text, _window.Width - 8);
        var (x, y) = (X(at.X), Y(at.Y));
        var half = text.EnumerateRunes().Count() * Sheet.Letter / 2;
        var middle = Math.Clamp(x, _window.Left + half + 2, _window.Right - half - 2);
        var box = new Bounds(middle - half, y - line, middle + half, y);
        var up = 0.0;
        while (_labels.Exists(other => other.Overlaps(box with { Low = box.Low - up, High = box.High - up })) && y - up - line > _window.Low + line)
        {
            up += line / 3;
        }

        if (up > 0)
        {
            _sheet.Line(x, y, middle, y - up, Sheet.Thin, within: Group);
        }

        _labels.Add(box with { Low = box.Low - up, High = box.High - up });
        _sheet.Text(middle, y - up - 3, text, bold, Anchor.Middle, Group);
    }

    /// <summary>Writes what the view shows, and the bar that tells its scale.</summary>
    public void Caption(string text)
    {
        _sheet.Text(_window.Left + 8, _window.Low + 18, text, bold: true, within: Group);
        var bar = Round(_window.Width / _scale / 4);
        var (x, y) = (_window.Right - 12 - bar * _scale, _window.High - 14);
        _sheet.Line(x, y, x + bar * _scale, y, Sheet.Medium, within: Group);
        _sheet.Line(x, y - 4, x, y + 4, Sheet.Medium, within: Group);
        _sheet.Line(x + bar * _scale, y - 4, x + bar * _scale, y + 4, Sheet.Medium, within: Group);
        _sheet.Text(x + bar * _scale / 2, y - 6, bar.ToString("0.###", CultureInfo.InvariantCulture) + " mm", anchor: Anchor.Middle, within: Group);
    }

    private (double X, double Y) OnSheet((double X, double Y) place) => (X(place.X), Y(place.Y));

    // The largest of 1, 2 and 5 times a power of ten that is not above.
    private static double Round(double value)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(value)));
        var step = (value / power) switch { >= 5 => 5, >= 2 => 2, _ => 1 };
        return step * power;
    }
}
