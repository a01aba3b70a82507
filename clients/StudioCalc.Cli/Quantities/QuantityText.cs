using System.Text.RegularExpressions;

namespace StudioCalc.Cli;

/// <summary>Quantities as people say them: <c>1.2 m</c>, <c>5 ft 7 in</c>, <c>1/125 s</c>, <c>-1/3 stop</c>.</summary>
internal static partial class QuantityText
{
    // Beyond this a number might no longer be finite in another unit.
    private const double Largest = 1e100;

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">A number with a unit, or several in a row where people say it so.</param>
    /// <param name="kind">What must be counted.</param>
    /// <param name="target">The unit of the result.</param>
    /// <exception cref="FormatException">The text is none; the message says what to write.</exception>
    public static double Read(string text, QuantityKind kind, Unit target)
    {
        if (!NumberText.TryStart(text, out var number, out var value, out var rest))
        {
            throw new FormatException($"\"{text}\" is not a number with a unit; write one, such as \"{target.Write("2")}\".");
        }

        if (Math.Abs(value) > Largest)
        {
            throw new FormatException($"{number} is no number that can be counted with.");
        }

        if (rest.Length == 0)
        {
            throw new FormatException($"{number} has no unit; write \"{target.Write(number)}\".");
        }

        return kind.Find(rest) is { } unit
            ? unit.To(target, value)
            : Chain(rest, kind, target, value) ?? throw new FormatException(
                $"\"{rest}\" is not a unit for {kind.Name}; write {kind.Choice}, such as \"{target.Write(number)}\".");
    }

    /// <summary>A quantity so that reading it gives the same value.</summary>
    public static string Write(double value, Unit unit) => unit.Write(NumberText.Write(value));

    // The first number stands before; its sign is that of the whole.
    private static double? Chain(string rest, QuantityKind kind, Unit target, double first)
    {
        var sign = double.IsNegative(first) ? -1 : 1;
        var (total, value, last) = (0.0, first, -1);
        while (true)
        {
            var match = Link().Match(rest);
            var found = kind.Find(match.Success ? match.Groups["unit"].Value : rest);
            var place = found is null ? -1 : kind.Chain.ToList().IndexOf(found);
            if (place <= last)
            {
                return null;
            }

            (total, last) = (total + found!.To(target, value), place);
            if (!match.Success)
            {
                return total;
            }

            if (!NumberText.TryStart(match.Groups["next"].Value, out _, out value, out rest) || value > Largest)
            {
                return null;
            }

            value *= sign;
        }
    }

    [GeneratedRegex(@"^(?<unit>[^0-9\s.+-]+)\s*(?<next>[0-9.].*)\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();
}
