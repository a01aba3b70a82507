using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How a distance carries into the light.</summary>
/// <param name="DistanceMm">Distance d from the aim point to the centre of the face. [mm]</param>
/// <param name="RateStopsPerMm">Change of light by distance, r. [stops/mm]</param>
/// <param name="PointRateStopsPerMm">The same for a point, p. [stops/mm]</param>
public readonly record struct DistanceRate(double DistanceMm, double RateStopsPerMm, double PointRateStopsPerMm);

/// <summary>How errors of meter and tape carry into light and ratio.</summary>
/// <remarks>
/// <code>
/// r = (8 (L(d + h) - L(d - h)) - (L(d + 2 h) - L(d - 2 h))) / (12 h)     (26)
/// p = -2 / (d ln 2)                                                      (27)
/// b = |r| t     a = sqrt(n) m     s = sqrt(a² + sum of b²)               (28)
/// w = n m + sum of b     f = 2^s     z = s / |r|                         (29)
/// </code>
/// <para>L: log2 of the light on the line to the aim point, facing the source, (5) or (7). d: a distance; h: a hundredth of it. r, p: change of
/// light by distance, of the face and of a point. t: standard error of the tape, in mm; m: of a reading, in stops; n: readings that
/// count. b, a: shares of a distance and of the meter. s: the error of the light; w: all errors in the same sense. f: factor
/// of the ratio. z: the error as a distance. First order: t is small against d. Errors are independent. Source: propagation of errors, textbook
/// knowledge (from memory); derived in docs/models/fill-placement.md.</para>
/// </remarks>
public sealed record PlacementError
{
    /// <summary>Error of the light s. [stops]</summary>
    public required double ErrorStops { get; init; }

    /// <summary>All errors in the same sense, w. [stops]</summary>
    public required double WorstStops { get; init; }

    /// <summary>Share of the meter, a. [stops]</summary>
    public required double MeterStops { get; init; }

    /// <summary>Share of the tape. [stops]</summary>
    public required double TapeStops { get; init; }

    /// <summary>Factor of the ratio, f.</summary>
    public required double RatioFactor { get; init; }

    /// <summary>How light changes by distance before a face, seen from its aim point. (26), (27)</summary>
    /// <param name="face">The face.</param>
    /// <param name="aim">Its aim point. [mm]</param>
    /// <param name="distanceMm">Distance d, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static DistanceRate RateAt<TTrail>(LightFace face, Vector aim, double distanceMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(face);
        var away = -face.Axes.Facing;
        var d = trail.Given("d", Guard.Positive(distanceMm), "mm", "distances_mm");
        var p = trail.Let("p", -2 * Log2(Exp(1)) / d, "stops/mm", "fill placement (27)");
        if (face.IsPoint)
        {
            return new(d, trail.Let("r", p, "stops/mm", "a point"), p);
        }

        var h = trail.Let("h", d / 100, "mm", "fill placement (26)");
        var e1 = trail.Given("e1", At(d + h), "sr", "fill placement (5) at d + h");
        var e2 = trail.Given("e2", At(d - h), "sr", "fill placement (5) at d - h");
        var e3 = trail.Given("e3", At(d + 2 * h), "sr", "fill placement (5) at d + 2 h");
        var e4 = trail.Given("e4", At(d - 2 * h), "sr", "fill placement (5) at d - 2 h");
        return new(d, trail.Let("r", (8 * Log2(e1 / e2) - Log2(e3 / e4)) / (12 * h), "stops/mm", "fill placement (26)"), p);

        // A turn about the axis changes nothing for a receiver on it.
        double At(double distance) => face.MovedTo(new FaceAxes(aim + away * distance, aim)).Light(new LightPoint(aim, away));
    }

    /// <summary>Share b of the tape at a distance. (28) [stops]</summary>
    /// <param name="rate">How light changes there.</param>
    /// <param name="tapeMm">Standard error of the tape t, 0 or more. [mm]</param>
    public static double TapeStopsAt(DistanceRate rate, double tapeMm) => Abs(rate.RateStopsPerMm) * Guard.NotNegative(tapeMm);

    /// <summary>The error of the light as a distance z; null where distance makes no difference. (29) [mm]</summary>
    /// <param name="rate">How light changes there.</param>
    public double? AsDistanceMm(DistanceRate rate) =>
        ErrorStops / Abs(rate.RateStopsPerMm) is var mm && double.IsFinite(mm) ? mm : null;

    /// <summary>Adds the errors up. (28), (29)</summary>
    /// <param name="rates">How light changes at each distance.</param>
    /// <param name="tapeMm">Standard error of the tape t, 0 or more. [mm]</param>
    /// <param name="meterStops">Standard error of a reading m, 0 or more. [stops]</param>
    /// <param name="readings">Readings that count n.</param>
    /// <param name="trail">Follows the sum.</param>
    public static PlacementError Of<TTrail>(
        IReadOnlyList<DistanceRate> rates, double tapeMm, double meterStops, int readings, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(rates);
        var n = trail.Given("n", readings, "", "readings");
        var m = trail.Given("m", Guard.NotNegative(meterStops), "stops", "meter_error_stops");
        var t = trail.Given("t", Guard.NotNegative(tapeMm), "mm", "tape_error_mm");
        var squares = trail.Given("squares", 0, "stops²", "sum of b²");
        var sum = trail.Given("sum", 0, "stops", "sum of b");
        for (var i = 0; i < rates.Count; i++)
        {
            var r = trail.Given("r", rates[i].RateStopsPerMm, "stops/mm", "fill placement (26), of the distance");
            var b = trail.Let("b", Abs(r) * t, "stops", "fill placement (28)", FormattableString.Invariant($"distances[{i}].tape_stops"));
            squares = trail.Let("squares", squares + b * b, "stops²", "fill placement (28)");
            sum = trail.Let("sum", sum + b, "stops", "fill placement (29)");
        }

        var tape = trail.Let("tape", Sqrt(squares), "stops", "fill placement (28)", "tape_stops");
        var a = trail.Let("a", Sqrt(n) * m, "stops", "fill placement (28)", "meter_stops");
        var w = trail.Let("w", n * m + sum, "stops", "fill placement (29)", "worst_stops");
        var s = trail.Let("s", Sqrt(a * a + squares), "stops", "fill placement (28)", "error_stops");
        return new()
        {
            ErrorStops = s,
            WorstStops = w,
            MeterStops = a,
            TapeStops = tape,
            RatioFactor = trail.Let("f", Pow(2, s), "", "fill placement (29)", "ratio_factor"),
        };
    }
}
