using UnitsNet.Units;

namespace StudioCalc.Cli;

/// <summary>A kind of quantity and the units in which people may write it.</summary>
/// <param name="Name">What it is called in help and refusals.</param>
/// <param name="Units">The units.</param>
internal sealed record QuantityKind(string Name, params Unit[] Units)
{
    /// <summary>Units that may follow one another in one text, such as feet and inches, from large to small.</summary>
    public IReadOnlyList<Unit> Chain { get; init; } = [];

    public static Unit Stop { get; } = new(null, 1, "stops", "stop", "EV");

    private static Unit Foot { get; } = new(LengthUnit.Foot, 1, "ft", "foot", "feet", "'");
    private static Unit Inch { get; } = new(LengthUnit.Inch, 1, "in", "inch", "inches", "\"");
    private static Unit Hour { get; } = new(DurationUnit.Hour, 1, "h", "hour", "hours");
    private static Unit Minute { get; } = new(DurationUnit.Minute, 1, "min", "minute", "minutes");
    private static Unit Second { get; } = new(DurationUnit.Second, 1, "s", "sec", "second", "seconds");

    public static QuantityKind Length { get; } = new(
        "length",
        new(LengthUnit.Millimeter, 1, "mm"),
        new(LengthUnit.Centimeter, 1, "cm"),
        new(LengthUnit.Meter, 1, "m", "metre", "metres", "meter", "meters"),
        Foot,
        Inch,
        new(LengthUnit.Micrometer, 1, "µm", "um"))
    {
        Chain = [Foot, Inch],
    };

    public static QuantityKind Time { get; } = new(
        "time",
        Second,
        Minute,
        Hour,
        new(DurationUnit.Millisecond, 1, "ms"),
        new(DurationUnit.Microsecond, 1, "µs", "us"))
    {
        Chain = [Hour, Minute, Second],
    };

    public static QuantityKind Stops { get; } = new("stops", Stop);

    public static QuantityKind Illuminance { get; } = new(
        "illuminance",
        new(IlluminanceUnit.Lux, 1, "lx", "lux"),
        new(IlluminanceUnit.Kilolux, 1, "klx"),
        new(IlluminanceUnit.Lux, 1 / (0.3048 * 0.3048), "fc"));

    public static QuantityKind LuminousExposure { get; } = new("luminous exposure", new Unit(null, 1, "lx s", "lux s", "lux seconds"));

    public static QuantityKind Luminance { get; } = new("luminance", new Unit(LuminanceUnit.CandelaPerSquareMeter, 1, "cd/m²", "nit", "nits"));

    public static QuantityKind Angle { get; } = new(
        "angle",
        new(AngleUnit.Degree, 1, "°", "deg", "degree", "degrees"),
        new(AngleUnit.Radian, 1, "rad"));

    public static QuantityKind Energy { get; } = new(
        "energy",
        new(EnergyUnit.Joule, 1, "J", "Ws"),
        new(EnergyUnit.Kilojoule, 1, "kJ"));

    public static QuantityKind Temperature { get; } = new(
        "temperature",
        new(TemperatureUnit.DegreeCelsius, 1, "°C", "C"),
        new(TemperatureUnit.DegreeFahrenheit, 1, "°F", "F"),
        new(TemperatureUnit.Kelvin, 1, "K"));

    public static QuantityKind Mass { get; } = new(
        "mass",
        new(MassUnit.Gram, 1, "g"),
        new(MassUnit.Kilogram, 1, "kg"),
        new(MassUnit.Ounce, 1, "oz"),
        new(MassUnit.Pound, 1, "lb", "lbs"));

    /// <summary>A colour temperature or a difference of temperatures: in neither may degrees stand for kelvins.</summary>
    public static QuantityKind Kelvins { get; } = new("kelvins", new Unit(null, 1, "K", "kelvin", "kelvins"));

    public static QuantityKind Mireds { get; } = new("mired", new Unit(null, 1, "mired", "mireds"));

    public static QuantityKind Speed { get; } = new(
        "speed",
        new(SpeedUnit.MeterPerSecond, 1, "m/s"),
        new(SpeedUnit.CentimeterPerSecond, 1, "cm/s"),
        new(SpeedUnit.MillimeterPerSecond, 1, "mm/s"),
        new(SpeedUnit.KilometerPerHour, 1, "km/h"),
        new(SpeedUnit.FootPerSecond, 1, "ft/s"));

    public static QuantityKind Frequency { get; } = new(
        "frequency",
        new(FrequencyUnit.Hertz, 1, "Hz"),
        new(FrequencyUnit.Kilohertz, 1, "kHz"));

    public static QuantityKind Rate { get; } = new("rate", new Unit(null, 1, "/s", "per s", "per second", "a second"));

    /// <summary>Line pairs or pixels along a length.</summary>
    public static QuantityKind Fineness { get; } = new("fineness", new Unit(null, 1, "/mm", "per mm", "a mm", "lp/mm", "px/mm"));

    public static QuantityKind Drift { get; } = new("drift", new Unit(null, 1, "stops/h", "stop/h", "stops per hour", "stops an hour", "EV/h"));

    public static QuantityKind HeatTransfer { get; } = new(
        "heat transfer", new Unit(HeatTransferCoefficientUnit.WattPerSquareMeterKelvin, 1, "W/(m² K)", "W/m²K"));

    public static QuantityKind Conductivity { get; } = new(
        "thermal conductivity", new Unit(ThermalConductivityUnit.WattPerMeterKelvin, 1, "W/(m K)", "W/mK"));

    public static QuantityKind SpecificHeat { get; } = new(
        "specific heat",
        new(SpecificEntropyUnit.JoulePerKilogramKelvin, 1, "J/(kg K)", "J/kgK"),
        new(SpecificEntropyUnit.KilojoulePerKilogramKelvin, 1, "kJ/(kg K)", "kJ/kgK"));

    public static QuantityKind Density { get; } = new(
        "density",
        new(DensityUnit.KilogramPerCubicMeter, 1, "kg/m³", "kg/m3"),
        new(DensityUnit.GramPerCubicCentimeter, 1, "g/cm³", "g/cm3"));

    // The units library counts power and data in decimal digits, which drops some of a double's.
    public static QuantityKind Power { get; } = new("power", new(null, 1, "W"), new(null, 1000, "kW"));

    public static QuantityKind Voltage { get; } = new("voltage", new Unit(ElectricPotentialUnit.Volt, 1, "V"));

    public static QuantityKind Current { get; } = new("current", new Unit(ElectricCurrentUnit.Ampere, 1, "A"));

    /// <summary>Data, in decimal units as on a card's label.</summary>
    public static QuantityKind Data { get; } = new("data", new(null, 1, "MB"), new(null, 1000, "GB"));

    public static QuantityKind DataRate { get; } = new(
        "data rate", new(null, 1, "MB/s"), new(null, 0.125, "Mbit/s"));

    /// <summary>The unit so written; null when it is none of this kind.</summary>
    public Unit? Find(string text)
    {
        var plain = Plain(text);
        return Units.FirstOrDefault(unit => unit.Spellings.Any(spelling => Plain(spelling).Equals(plain, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>The units as a person reads them: <c>mm, cm, m, ft, in or µm</c>.</summary>
    public string Choice => Units is [var only]
        ? only.Spelling
        : $"{string.Join(", ", Units.SkipLast(1).Select(unit => unit.Spelling))} or {Units[^1].Spelling}";

    // Signs that keyboards lack, and gaps, make no difference.
    private static string Plain(string text) => text
        .Replace(" ", "", StringComparison.Ordinal)
        .Replace("²", "2", StringComparison.Ordinal)
        .Replace("·", "", StringComparison.Ordinal)
        .Replace('μ', 'µ');
}
