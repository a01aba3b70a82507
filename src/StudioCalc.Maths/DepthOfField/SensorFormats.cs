using System.Globalization;
using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Sensor formats by their dimensions.</summary>
/// <remarks>Nominal sizes, from memory of published camera specifications; a single camera may differ by a few tenths of a
/// millimetre. Send its own size where that matters.</remarks>
public static class SensorFormats
{
    /// <summary>Changes whenever a row does.</summary>
    public const string Version = "1";

    /// <summary>Where the rows are from.</summary>
    public const string Source = "nominal sizes of published camera specifications, from memory";

    /// <summary>The formats, the largest first.</summary>
    public static IReadOnlyList<SensorFormat> All { get; } =
    [
        new("53.4x40.0", 53.4, 40.0),
        new("43.8x32.9", 43.8, 32.9),
        new("36x24", 36, 24),
        new("23.5x15.6", 23.5, 15.6),
        new("22.3x14.9", 22.3, 14.9),
        new("17.3x13.0", 17.3, 13.0),
        new("13.2x8.8", 13.2, 8.8),
    ];

    /// <summary>The format of a name such as <c>36x24</c>, or null. The sides may stand in either order, as <c>24X36</c>, and without
    /// a zero at their end.</summary>
    /// <param name="name">The name.</param>
    public static SensorFormat? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Split('x', 'X') is [var one, var other] && Side(one) is { } a && Side(other) is { } b
            ? All.FirstOrDefault(format => format.WidthMm.Equals(Max(a, b)) && format.HeightMm.Equals(Min(a, b)))
            : null;
    }

    private static double? Side(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var side) ? side : null;
}

/// <summary>A sensor format.</summary>
/// <param name="Name">Its name by dimensions.</param>
/// <param name="WidthMm">Its longer side. [mm]</param>
/// <param name="HeightMm">Its shorter side. [mm]</param>
public sealed record SensorFormat(string Name, double WidthMm, double HeightMm)
{
    private static readonly double Reference = Sqrt(36 * 36 + 24 * 24);

    /// <summary>Its diagonal. [mm]</summary>
    public double DiagonalMm => Sqrt(WidthMm * WidthMm + HeightMm * HeightMm);

    /// <summary>Diagonal of 36 x 24 over its own.</summary>
    public double CropFactor => Reference / DiagonalMm;
}
