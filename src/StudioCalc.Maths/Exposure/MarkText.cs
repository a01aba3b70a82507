using System.Globalization;

namespace StudioCalc.Maths;

/// <summary>Reading of a mark's text.</summary>
internal static class MarkText
{
    private const NumberStyles Plain = NumberStyles.AllowDecimalPoint;

    /// <summary>The text without prefix, unit, outer space and trailing <c>.0</c>: the form in which marks are looked up.</summary>
    public static string Key(string text, string prefix, string spoken, string unit)
    {
        var key = text.AsSpan().Trim();
        foreach (var lead in (ReadOnlySpan<string>)[prefix, spoken])
        {
            if (lead.Length > 0 && key.StartsWith(lead, StringComparison.OrdinalIgnoreCase))
            {
                key = key[lead.Length..].TrimStart();
                break;
            }
        }

        if (unit.Length > 0 && key.EndsWith(unit, StringComparison.Ordinal))
        {
            key = key[..^unit.Length].TrimEnd();
        }

        return (key.EndsWith(".0", StringComparison.Ordinal) ? key[..^2] : key).ToString();
    }

    /// <summary>Reads a key as a number or as one over a number, under the invariant culture.</summary>
    public static bool TryParse(string key, out double value)
    {
        if (key.StartsWith("1/", StringComparison.Ordinal)
            && double.TryParse(key.AsSpan(2), Plain, CultureInfo.InvariantCulture, out var denominator))
        {
            value = 1 / denominator;
            return double.IsFinite(value);
        }

        return double.TryParse(key, Plain, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }
}
