using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A light read at a time.</summary>
/// <param name="OffsetH">When it was read. [h]</param>
/// <param name="Level">The light.</param>
public readonly record struct TimedLight(double OffsetH, LightLevel Level);

/// <summary>The steady part of how a light changes, and when it leaves a tolerance.</summary>
/// <remarks>
/// <code>
/// drift = sum((h - hMean) (E - EMean)) / sum((h - hMean)²)        (28)
/// left  = (r sign(drift) - c) / drift                             (29)
/// spread = max |E - EMean - drift (h - hMean)|
/// </code>
/// <para>h: hours; E: exposure values at ISO 100; c: the light now over what it was at first; r: tolerance. (28) is the
/// straight line of least squares: a cloud that passes makes it no forecast, which the spread shows. (29) starts from the
/// last reading, not from the line. Source: the method of least squares, textbook knowledge.</para>
/// </remarks>
public sealed record Drift
{
    /// <summary>Change in an hour; positive is brightening. [stops]</summary>
    public required double PerHourStops { get; init; }

    /// <summary>The last reading over the first. [stops]</summary>
    public required double ChangeStops { get; init; }

    /// <summary>The farthest reading from the line. [stops]</summary>
    public required double SpreadStops { get; init; }

    /// <summary>Fits readings. (28)</summary>
    /// <param name="readings">At least two, in order of strictly rising time.</param>
    /// <param name="trail">Follows the sum.</param>
    public static Drift Of<TTrail>(ReadOnlySpan<TimedLight> readings, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(readings.Length, 2, nameof(readings));
        trail.Section("means");
        var count = trail.Given("count", readings.Length, "", "readings");
        var sumH = trail.Given("sumH", 0, "h", "nothing added yet");
        var sumE = trail.Given("sumE", 0, "stops", "nothing added yet");
        foreach (var reading in readings)
        {
            var h = trail.Given("h", Guard.Finite(reading.OffsetH), "h", "offset");
            var E = trail.Given("E", reading.Level.ExposureValueIso100Stops, "stops", "exposure value at ISO 100");
            sumH = trail.Let("sumH", sumH + h, "h", "sum of the times");
            sumE = trail.Let("sumE", sumE + E, "stops", "sum of the readings");
        }

        var hMean = trail.Let("hMean", sumH / count, "h", "mean");
        var EMean = trail.Let("EMean", sumE / count, "stops", "mean");
        trail.Section("drift");
        var cross = trail.Given("cross", 0, "stops h", "nothing added yet");
        var square = trail.Given("square", 0, "h²", "nothing added yet");
        foreach (var reading in readings)
        {
            var h = trail.Given("h", reading.OffsetH, "h", "offset");
            var E = trail.Given("E", reading.Level.ExposureValueIso100Stops, "stops", "exposure value at ISO 100");
            cross = trail.Let("cross", cross + (h - hMean) * (E - EMean), "stops h", "lighting ratio (28)");
            square = trail.Let("square", square + (h - hMean) * (h - hMean), "h²", "lighting ratio (28)");
        }

        var drift = trail.Let("drift", cross / square, "stops", "lighting ratio (28)", "drift_per_hour_stops");
        var spread = 0.0;
        foreach (var reading in readings)
        {
            spread = Max(spread, Abs(reading.Level.ExposureValueIso100Stops - EMean - drift * (reading.OffsetH - hMean)));
        }

        trail.Section("change");
        var E0 = trail.Given("E0", readings[0].Level.ExposureValueIso100Stops, "stops", "first reading");
        var En = trail.Given("En", readings[^1].Level.ExposureValueIso100Stops, "stops", "last reading");
        return new()
        {
            PerHourStops = drift,
            ChangeStops = trail.Let("c", En - E0, "stops", "last less first", "change_stops"),
            SpreadStops = spread,
        };
    }

    /// <summary>Time until the light is further off than a tolerance; 0 when it is, infinite when it never will be. (29) [h]</summary>
    /// <param name="toleranceStops">Tolerance in stops, above 0.</param>
    public double HoursWithin(double toleranceStops)
    {
        var r = Guard.Positive(toleranceStops);
        return Abs(ChangeStops) > r ? 0
            : PerHourStops == 0 ? double.PositiveInfinity
            : (r * Sign(PerHourStops) - ChangeStops) / PerHourStops;
    }
}
