using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>The ending of a field's name that tells its unit.</summary>
/// <param name="Ending">The ending, without its underscore.</param>
/// <param name="Kind">What is counted.</param>
/// <param name="Unit">In what the contract counts it.</param>
/// <param name="Shown">How answers show the unit.</param>
internal sealed record UnitSuffix(string Ending, QuantityKind Kind, Unit Unit, string Shown)
{
    private static readonly UnitSuffix[] All =
    [
        Of("mm", QuantityKind.Length), Of("um", QuantityKind.Length, "µm"), Of("m", QuantityKind.Length),
        Of("s", QuantityKind.Time), Of("stops", QuantityKind.Stops),
        Of("lx", QuantityKind.Illuminance), Of("lx_s", QuantityKind.LuminousExposure, "lx s"), Of("cd_per_m2", QuantityKind.Luminance, "cd/m²"),
        Of("deg", QuantityKind.Angle, "°"), Of("j", QuantityKind.Energy, "J"), Of("g", QuantityKind.Mass),
        Of("celsius", QuantityKind.Temperature, "°C"), Of("k", QuantityKind.Kelvins, "K"), Of("mired", QuantityKind.Mireds),
        Of("m_per_s", QuantityKind.Speed, "m/s"), Of("hz", QuantityKind.Frequency, "Hz"),
        Of("per_s", QuantityKind.Rate, "/s") with { Shown = "a second" },
        Of("per_mm", QuantityKind.Fineness, "/mm") with { Shown = "a mm" },
        Of("stops_per_h", QuantityKind.Drift, "stops/h") with { Shown = "stops an hour" },
        Of("w_per_m2_k", QuantityKind.HeatTransfer, "W/(m² K)"), Of("w_per_m_k", QuantityKind.Conductivity, "W/(m K)"),
        Of("j_per_kg_k", QuantityKind.SpecificHeat, "J/(kg K)"), Of("kg_per_m3", QuantityKind.Density, "kg/m³"),
        Of("w", QuantityKind.Power), Of("v", QuantityKind.Voltage), Of("a", QuantityKind.Current), Of("mb", QuantityKind.Data),
        Of("gb", QuantityKind.Data), Of("mb_per_s", QuantityKind.DataRate, "MB/s"), Of("mbit_per_s", QuantityKind.DataRate, "Mbit/s"),
    ];

    // Long endings hide the short ones that they end in.
    private static readonly UnitSuffix[] LongestFirst = [.. All.OrderByDescending(suffix => suffix.Ending.Length)];

    /// <summary>The kinds of quantities that fields may hold, each once.</summary>
    public static IEnumerable<QuantityKind> Kinds => All.Select(suffix => suffix.Kind).Distinct();

    /// <summary>The suffix of a number's field, or null when it counts in no unit.</summary>
    public static UnitSuffix? Of(FieldDescriptor field) => field.FieldType == FieldType.Double
        ? LongestFirst.FirstOrDefault(suffix => field.Name.EndsWith("_" + suffix.Ending, StringComparison.Ordinal))
        : null;

    /// <summary>The field's name without its unit.</summary>
    public static string NameWithout(FieldDescriptor field) =>
        Of(field) is { } suffix ? field.Name[..^(suffix.Ending.Length + 1)] : field.Name;

    private static UnitSuffix Of(string ending, QuantityKind kind, string? unit = null)
    {
        var counted = kind.Find(unit ?? ending) ?? throw new InvalidOperationException($"No {kind.Name} is counted in {ending}.");
        return new(ending, kind, counted, counted.Spelling);
    }
}
