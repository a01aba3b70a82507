using System.Globalization;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>Numbers with the unit that the field's name carries, as a person takes them.</summary>
internal static class Units
{
    private const double Nothing = 1e-9;
    private const double MillimetresInMetre = 1000;
    private const double MillimetresInInch = 25.4;
    private const double FeetFromMillimetres = 300;

    /// <summary>A number with its unit; with a sign where the contract's comment defines one.</summary>
    public static string Show(FieldDescriptor field, double value, UnitSystem system)
    {
        // What rounding leaves of nothing is nothing.
        value = Math.Abs(value) < Nothing ? 0 : value;
        var signed = ContractComments.Of(field).Contains("ositive", StringComparison.Ordinal);
        if (UnitSuffix.Of(field) is not { } suffix)
        {
            return Signed(value, signed);
        }

        if (suffix.Kind == QuantityKind.Stops)
        {
            return Stops(field, value, signed);
        }

        return (suffix.Ending, system) switch
        {
            ("mm", UnitSystem.Metric) when Math.Abs(value) >= MillimetresInMetre => $"{Signed(value / MillimetresInMetre, signed)} m",
            ("mm", UnitSystem.Imperial) when Math.Abs(value) >= FeetFromMillimetres => FeetAndInches(value / MillimetresInInch, signed),
            ("m", UnitSystem.Imperial) => FeetAndInches(value * MillimetresInMetre / MillimetresInInch, signed),
            ("celsius", UnitSystem.Imperial) => $"{Signed((value * 9 / 5) + 32, signed)} °F",
            _ => $"{Signed(value, signed)} {suffix.Shown}",
        };
    }

    /// <summary>A number to four figures, without an exponent for everyday sizes.</summary>
    public static string Number(double value) => Math.Abs(value) switch
    {
        0 => "0",
        >= 1e9 or < 1e-4 => value.ToString("0.###e0", CultureInfo.InvariantCulture),
        >= 1000 => value.ToString("0", CultureInfo.InvariantCulture),
        _ => value.ToString("G4", CultureInfo.InvariantCulture),
    };

    private static string Signed(double value, bool signed) => (signed && value > 0 ? "+" : "") + Number(value);

    private static string Stops(FieldDescriptor field, double value, bool signed)
    {
        var number = value.ToString(signed ? "+0.00;-0.00;0.00" : "0.00", CultureInfo.InvariantCulture);
        return field.Name.Contains("_value", StringComparison.Ordinal)
            ? number // a point on a scale, not a difference
            : $"{number} {(number.TrimStart('+', '-') == "1.00" ? "stop" : "stops")}";
    }

    private static string FeetAndInches(double inches, bool signed)
    {
        var rounded = Math.Round(Math.Abs(inches), 1);
        var feet = Math.Floor(rounded / 12);
        var sign = inches < 0 ? "-" : signed ? "+" : "";
        var rest = rounded - (feet * 12);
        string[] parts =
        [
            .. feet > 0 ? [feet.ToString("0", CultureInfo.InvariantCulture) + " ft"] : Array.Empty<string>(),
            .. rest > 0.05 || feet == 0 ? [rest.ToString("0.#", CultureInfo.InvariantCulture) + " in"] : Array.Empty<string>(),
        ];
        return sign + string.Join(' ', parts);
    }
}
