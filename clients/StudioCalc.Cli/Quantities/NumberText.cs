using System.Globalization;
using System.Text.RegularExpressions;

namespace StudioCalc.Cli;

/// <summary>Numbers as people type them, the same in every country: a point for decimals, no thousands marks, or a fraction.</summary>
internal static partial class NumberText
{
    /// <summary>Reads the number with which a text begins.</summary>
    /// <param name="text">The text.</param>
    /// <param name="number">The number as it stands there.</param>
    /// <param name="value">Its value.</param>
    /// <param name="rest">What follows it.</param>
    /// <exception cref="FormatException">The number cannot be meant so.</exception>
    public static bool TryStart(string text, out string number, out double value, out string rest)
    {
        (number, value, rest) = ("", 0, "");
        if (text.Contains(',', StringComparison.Ordinal))
        {
            throw new FormatException($"\"{text}\" has a comma; write decimals with a point, such as 1.2, and thousands without a mark, such as 1200.");
        }

        if (Start().Match(text.Trim().Replace('−', '-')) is not { Success: true } match)
        {
            return false;
        }

        (number, rest) = (match.Groups["number"].Value, match.Groups["rest"].Value.Trim());
        value = (match.Groups["sign"].Value == "-" ? -1 : 1) * Value(match);
        return double.IsFinite(value) ? true : throw new FormatException($"{number} is no number that can be counted with.");
    }

    /// <summary>A plain number without a unit.</summary>
    public static double Read(string text) => TryStart(text, out _, out var value, out var rest) && rest.Length == 0
        ? value
        : throw new FormatException($"\"{text}\" is not a plain number; write one without a unit, such as 0.5.");

    /// <summary>A number so that reading it gives the same value.</summary>
    public static string Write(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static double Value(Match match) => match.Groups["over"].Success
        ? Parse(match.Groups["whole"].Value) + (Parse(match.Groups["over"].Value) / Parse(match.Groups["under"].Value))
        : Parse(match.Groups["decimal"].Value);

    private static double Parse(string text) => text.Length == 0 ? 0 : double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<number>(?<sign>[+-]?)\s*((((?<whole>[0-9]+)\s+)?(?<over>[0-9]+)/(?<under>[0-9]+))|(?<decimal>([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][+-]?[0-9]+)?)))(?<rest>(?![0-9.]).*)?\z",
        RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Start();
}
