using System.Globalization;

namespace StudioCalc.Maths;

/// <summary>The power of a flash head as makers mark it.</summary>
/// <remarks>
/// <code>
/// P = 2^-x        P: share of full power, x: stops below full      (1)
/// </code>
/// <para>Whole fractions run from 1/1 to 1/1024. An offset in stops makes a fraction brighter (positive) or dimmer.
/// Source: common practice, no source; the halving is by definition.</para>
/// </remarks>
public static class FlashPowers
{
    /// <summary>The lowest whole fraction, 1/1024, in stops below full.</summary>
    public const int LowestBelowFullStops = 10;

    /// <summary>Reads a fraction such as <c>1/8</c>, or returns null when it is not a whole-stop one.</summary>
    /// <returns>Stops below full power, from 0 to 10.</returns>
    public static int? Find(string fraction)
    {
        ArgumentNullException.ThrowIfNull(fraction);
        var text = fraction.AsSpan().Trim();
        return text.StartsWith("1/", StringComparison.Ordinal)
            && int.TryParse(text[2..], NumberStyles.None, CultureInfo.InvariantCulture, out var parts)
            && int.IsPow2(parts)
            && int.Log2(parts) <= LowestBelowFullStops
                ? int.Log2(parts)
                : null;
    }

    /// <summary>The powers of a head that turns in even steps from full power, in stops below full. [stops]</summary>
    /// <param name="scale">The steps.</param>
    /// <param name="lowestBelowFullStops">The lowest power of the head in stops below full, not negative.</param>
    public static IReadOnlyList<double> Steps(StopScale scale, double lowestBelowFullStops)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lowestBelowFullStops);
        const double rounding = 1e-9;
        var perStop = scale.StepsPerStop();
        var last = (int)Math.Floor(lowestBelowFullStops * perStop + rounding);
        return [.. Enumerable.Range(0, last + 1).Select(step => (double)step / perStop)];
    }

    /// <summary>Shows a power as the fraction at or just below it and the stops over that fraction.</summary>
    /// <param name="belowFullStops">Stops below full power, not negative.</param>
    public static (string Fraction, double OffsetStops) Show(double belowFullStops)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(belowFullStops);
        Guard.Finite(belowFullStops);
        const double rounding = 1e-9;
        var whole = (int)Math.Ceiling(belowFullStops - rounding);
        return (string.Create(CultureInfo.InvariantCulture, $"1/{1L << whole}"), Math.Max(0, whole - belowFullStops));
    }
}
