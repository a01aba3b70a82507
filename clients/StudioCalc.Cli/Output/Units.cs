using System.Globalization;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>Numbers with the unit that the field's name carries.</summary>
internal static class Units
{
    private static readonly (string Suffix, string Unit)[] Known =
    [
        ("cd_per_m2", "cd/m²"), ("lx_s", "lx s"), ("stops_per_h", "stops an hour"), ("m_per_s", "m/s"), ("per_s", "a second"),
        ("stops", "stops"), ("mired", "mired"), ("lx", "lx"), ("mm", "mm"), ("um", "µm"), ("deg", "°"), ("hz", "Hz"), ("j", "J"),
        ("k", "K"), ("m", "m"), ("s", "s"),
    ];

    /// <summary>The unit suffix of a number's field, or null when it has none.</summary>
    public static string? Suffix(FieldDescriptor field) => field.FieldType != FieldType.Double
        ? null
        : Known.Select(unit => unit.Suffix).FirstOrDefault(suffix => field.Name.EndsWith("_" + suffix, StringComparison.Ordinal));

    /// <summary>A number with its unit; with a sign where the contract's comment defines one.</summary>
    public static string Show(FieldDescriptor field, double value)
    {
        var unit = Known.FirstOrDefault(known => known.Suffix == Suffix(field)).Unit;
        var signed = ContractComments.Of(field).Contains("ositive", StringComparison.Ordinal);
        var number = unit switch
        {
            "stops" => value.ToString(signed ? "+0.00;-0.00;0.00" : "0.00", CultureInfo.InvariantCulture),
            _ => (signed && value > 0 ? "+" : "") + Number(value),
        };
        if (unit == "stops" && field.Name.Contains("_value", StringComparison.Ordinal))
        {
            return number; // a point on a scale, not a difference
        }

        return unit is null ? number : $"{number} {(unit == "stops" && number.TrimStart('+', '-') == "1.00" ? "stop" : unit)}";
    }

    /// <summary>A number to four figures, without an exponent for everyday sizes.</summary>
    public static string Number(double value) => Math.Abs(value) switch
    {
        0 => "0",
        >= 1e9 or < 1e-4 => value.ToString("0.###e0", CultureInfo.InvariantCulture),
        >= 1000 => value.ToString("0", CultureInfo.InvariantCulture),
        _ => value.ToString("G4", CultureInfo.InvariantCulture),
    };
}
