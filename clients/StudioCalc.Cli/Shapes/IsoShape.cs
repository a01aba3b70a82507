using System.Globalization;
using System.Text.RegularExpressions;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>An ISO speed as film and cameras state it: <c>100</c>, <c>ISO 100</c>, <c>ISO 100/21°</c>, or degrees alone, <c>21°</c>.</summary>
internal static partial class IsoShape
{
    public static Iso Read(string text)
    {
        MarkText.RefuseComma(text);
        var match = Speed().Match(text);
        if (!match.Success)
        {
            throw new FormatException($"\"{text}\" is not an ISO speed; write it as 100, \"ISO 100\" or 21°.");
        }

        var mark = match.Groups["mark"].Value;
        if (match.Groups["degrees"] is not { Success: true } degrees)
        {
            return Iso.At(mark);
        }

        var logarithmic = Number(degrees.Value);
        if (mark.Length == 0)
        {
            return new() { LogarithmicSpeedDeg = logarithmic };
        }

        var own = Math.Round(1 + (10 * Math.Log10(Number(mark))));
        return own == logarithmic
            ? Iso.At(mark)
            : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"ISO {mark} is {own}°, not {logarithmic}°; write one of the two alone."));
    }

    public static string? Write(Iso iso) =>
        iso.HasMark ? iso.Mark
        : iso.HasLogarithmicSpeedDeg ? NumberText.Write(iso.LogarithmicSpeedDeg) + "°"
        : null;

    public static string Show(IsoAnswer iso) => iso.HasMark
        ? "ISO " + iso.Mark + MarkText.Exact(iso.RestStops, Units.Number(iso.Speed))
        : $"ISO {Units.Number(iso.Speed)}";

    private static double Number(string text) => double.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^\s*(?!\s*\z)(ISO\s*)?(?<mark>[0-9]+(\.[0-9]+)?(?!\s*(°|deg|[0-9.])))?\s*(/?\s*(?<degrees>[0-9]+(\.[0-9]+)?)\s*(°|deg))?\s*\z",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Speed();
}
