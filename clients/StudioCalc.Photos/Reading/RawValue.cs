using System.Globalization;
using MetadataExtractor;

namespace StudioCalc.Photos;

/// <summary>One number of a file's metadata as it stands there.</summary>
/// <param name="Value">The number; null when it is none.</param>
/// <param name="Fault">Why it is none.</param>
/// <param name="Written">How it is written.</param>
internal readonly record struct RawValue(double? Value, PhotoReason? Fault, string Written)
{
    private const double Noise = 1e-5;

    public static RawValue Of(object? raw) => raw switch
    {
        null => new(null, PhotoReason.Missing, ""),
        Rational { Denominator: 0, Numerator: 0 } => new(null, PhotoReason.ZeroOverZero, "0/0"),
        Rational { Denominator: 0 } over => new(null, PhotoReason.DivisionByZero, over.ToString(CultureInfo.InvariantCulture)),
        Rational rational => Of((double)rational.Numerator / rational.Denominator, $"{rational.Numerator}/{rational.Denominator}"),
        double or float or long or ulong or int or uint or short or ushort or sbyte or byte => Of(Convert.ToDouble(raw, CultureInfo.InvariantCulture), Text(raw)),
        Array { Length: > 0 } list => Of(list.GetValue(0)),
        string or StringValue => double.TryParse(Text(raw).Trim('\0', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? Of(number, Text(raw))
            : new(null, PhotoReason.NotANumber, "a text"),
        _ => new(null, PhotoReason.NotANumber, "no number"),
    };

    /// <summary>The number when it lies in a range above 0.</summary>
    public RawValue Within(double lowest, double highest) => Value switch
    {
        null => this,
        < 0 => this with { Value = null, Fault = PhotoReason.Negative },
        0 => this with { Value = null, Fault = PhotoReason.Zero },
        var value when value < lowest || value > highest => this with { Value = null, Fault = PhotoReason.OutOfRange },
        _ => this,
    };

    /// <summary>A number without the noise of single precision: four figures where they are meant.</summary>
    public static double Clean(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value;
        }

        var scale = Math.Pow(10, 3 - (int)Math.Floor(Math.Log10(Math.Abs(value))));
        var rounded = scale >= 1 ? Math.Round(value * scale) / scale : Math.Round(value);
        return Math.Abs(rounded - value) <= Noise * Math.Abs(value) ? rounded : value;
    }

    private static RawValue Of(double number, string written) =>
        double.IsFinite(number) ? new(number, null, written) : new(null, PhotoReason.NotANumber, written);

    private static string Text(object raw) => Convert.ToString(raw, CultureInfo.InvariantCulture) ?? "";
}
