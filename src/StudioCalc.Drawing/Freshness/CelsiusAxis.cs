using System.Globalization;

namespace StudioCalc.Drawing;

/// <summary>Temperature from below to above, with its scale in °C.</summary>
internal sealed class CelsiusAxis
{
    private const int MostSteps = 9;

    private static readonly double[] Steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

    private readonly double _top;
    private readonly double _bottom;
    private readonly double _low;
    private readonly double _high;
    private readonly double _step;

    /// <summary>Lays out an axis.</summary>
    /// <param name="top">Where the highest temperature is.</param>
    /// <param name="bottom">Where the lowest is.</param>
    /// <param name="temperatures">What it has to show.</param>
    public CelsiusAxis(double top, double bottom, IEnumerable<double> temperatures)
    {
        var all = temperatures.ToList();
        (_top, _bottom, _low, _high) = (top, bottom, all.Min(), all.Max());
        if (_high - _low < 1)
        {
            (_low, _high) = (_low - 0.5, _high + 0.5);
        }

        _step = Array.Find(Steps, step => (_high - _low) / step <= MostSteps) is > 0 and var found ? found : Steps[^1];
    }

    public double Y(double celsius) => _bottom - (_bottom - _top) * (celsius - _low) / (_high - _low);

    /// <summary>Thin level lines, with their figures on the left.</summary>
    public void Write(Sheet sheet, double left, double right)
    {
        for (var i = Math.Ceiling(_low / _step); i * _step <= _high; i++)
        {
            var y = Y(i * _step);
            sheet.Line(left, y, right, y, 0.3);
            sheet.Text(left - 6, y + 4, (i * _step).ToString("0.# °C", CultureInfo.InvariantCulture), anchor: Anchor.End);
        }
    }
}
