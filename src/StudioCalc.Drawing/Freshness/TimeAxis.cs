using System.Globalization;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Drawing;

/// <summary>Time from left to right, with its scale in minutes and seconds.</summary>
internal sealed class TimeAxis
{
    private const int MostSteps = 10;

    private static readonly double[] Steps =
        [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400, 172800, 604800];

    private readonly double _left;
    private readonly double _width;
    private readonly double _endS;

    /// <summary>Lays out an axis.</summary>
    /// <param name="left">Where time 0 is.</param>
    /// <param name="right">Where the end is.</param>
    /// <param name="endS">The end, above 0. [s]</param>
    public TimeAxis(double left, double right, double endS) => (_left, _width, _endS) = (left, right - left, endS);

    public double Right => _left + _width;

    public double X(double seconds) => _left + _width * seconds / _endS;

    /// <summary>The same, at the end where the time lies beyond.</summary>
    public double Within(double seconds) => X(Math.Clamp(seconds, 0, _endS));

    public bool IsBeyond(double seconds) => seconds > _endS;

    /// <summary>Thin lines down from the scale, whose figures stand over them.</summary>
    public void Write(Sheet sheet, double top, double bottom)
    {
        var step = Array.Find(Steps, step => _endS / step <= MostSteps);
        step = step > 0 ? step : Math.Ceiling(_endS / MostSteps);
        for (var i = 0; i * step <= _endS; i++)
        {
            var x = X(i * step);
            sheet.Line(x, top, x, bottom, 0.3);
            sheet.Text(x, top - 5, Clock(i * step), anchor: Anchor.Middle);
        }
    }

    /// <summary>A time as minutes and seconds, with hours where there are.</summary>
    public static string Clock(double seconds)
    {
        var whole = (long)Math.Round(Math.Abs(seconds));
        var text = whole >= 3600
            ? string.Create(CultureInfo.InvariantCulture, $"{whole / 3600}:{whole / 60 % 60:00}:{whole % 60:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
        return seconds < 0 && whole > 0 ? "-" + text : text;
    }

    public static double Seconds(Duration time) => time.Seconds + time.Nanos / 1e9;
}
