using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Finds the size of a fall-off model from readings.</summary>
/// <remarks>
/// <code>
/// q = 2^(L1 - L2)
/// R² = (d2² - q d1²) / (q - 1)          two readings, a soft face         (24)
/// D = (d2 - sqrt(q) d1) / (sqrt(q) - 1)     two readings, a beam          (24)
/// sum of (c - G - L)² least             more readings                     (25)
/// </code>
/// <para>d1, d2: the nearer and the farther distance, L1, L2: light there. G: (21), (22). c: the mean of L + G. (25) is looked for
/// among sizes from 0 (a beam: from its origin at the nearest meter) to a hundred times the farthest distance, and
/// halved in on by its slope. There is no solution where light does not fall off, where R² would be negative, as before a
/// beam, and where either end of those sizes fits best.</para>
/// </remarks>
internal static class FallOffSize
{
    // Of sizes that are tried before halving in.
    private const int Nodes = 200;

    private const double LeastShare = 1e-4;
    private const double MostTimes = 100;

    // Rounding error of a radius that is 0, as before a point: of its square over that of the nearest distance.
    private const double Rounding = 1e-9;

    /// <summary>The size R or D; null where there is no solution. [mm]</summary>
    public static double? Find<TTrail>(FallOffModel model, IReadOnlyList<DistanceLight> readings, string answerField, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (readings.Count == 2)
        {
            var sorted = readings.OrderBy(reading => reading.DistanceMm).ToList();
            return OfTwo(model, sorted[0], sorted[1], answerField, ref trail);
        }

        return OfMany(model, readings) is { } size
            ? trail.Given(
                model.Symbol(),
                size,
                "mm",
                FormattableString.Invariant(
                    $"fill placement (25), found by halving; slope of the sum {SlopeOfSquares(model, readings, size):G2} left"),
                answerField)
            : null;
    }

    private static double? OfTwo<TTrail>(
        FallOffModel model, DistanceLight near, DistanceLight far, string answerField, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var most = MostTimes * far.DistanceMm;
        var steps = Pow(2, near.LightStops - far.LightStops);
        var square = (far.DistanceMm * far.DistanceMm - steps * near.DistanceMm * near.DistanceMm) / (steps - 1);
        if (steps <= 1
            || (model == FallOffModel.SoftFace && !(square >= -Rounding * near.DistanceMm * near.DistanceMm && square <= most * most))
            || (model == FallOffModel.Beam && (far.DistanceMm - near.DistanceMm) / (Sqrt(steps) - 1) > most))
        {
            return null;
        }

        var d1 = trail.Given("d1", near.DistanceMm, "mm", "the nearer distance");
        var d2 = trail.Given("d2", far.DistanceMm, "mm", "the farther distance");
        var L1 = trail.Given("L1", near.LightStops, "stops", "fill placement (20), nearer");
        var L2 = trail.Given("L2", far.LightStops, "stops", "fill placement (20), farther");
        var q = trail.Let("q", Pow(2, L1 - L2), "", "fill placement (24)");
        return model == FallOffModel.SoftFace
            ? trail.Let("R", Sqrt(Max(0, (d2 * d2 - q * d1 * d1) / (q - 1))), "mm", "fill placement (24)", answerField)
            : trail.Let("D", (d2 - Sqrt(q) * d1) / (Sqrt(q) - 1), "mm", "fill placement (24)", answerField);
    }

    private static double? OfMany(FallOffModel model, IReadOnlyList<DistanceLight> readings)
    {
        var nearest = readings.Min(reading => reading.DistanceMm);
        var most = MostTimes * readings.Max(reading => reading.DistanceMm);
        var shift = model == FallOffModel.Beam ? nearest : 0;
        var least = LeastShare * nearest;
        var sizes = Enumerable.Range(0, Nodes).Select(i => least * Pow(most / least, i / (Nodes - 1.0)) - shift).ToList();
        if (model == FallOffModel.SoftFace)
        {
            sizes.Insert(0, 0);
        }

        var best = sizes.IndexOf(sizes.MinBy(size => Squares(model, readings, size)));
        if (best == sizes.Count - 1 || (best == 0 && model == FallOffModel.Beam))
        {
            return null;
        }

        if (best == 0 && SlopeOfSquares(model, readings, 0) is var slope and >= 0)
        {
            return slope * nearest * nearest < Rounding ? 0 : null;
        }

        var (low, high) = (sizes[Max(0, best - 1)], sizes[best + 1]);
        for (var i = 0; i < Nodes; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = SlopeOfSquares(model, readings, middle) < 0 ? (middle, high) : (low, middle);
        }

        return high;
    }

    private static double Squares(FallOffModel model, IReadOnlyList<DistanceLight> readings, double size)
    {
        var none = default(NoTrail);
        var sums = readings.Select(reading => reading.LightStops + model.Loss(reading.DistanceMm, size, ref none)).ToList();
        var mean = sums.Average();
        return sums.Sum(sum => (sum - mean) * (sum - mean));
    }

    // Up to a factor above 0; the mean has no part in it, for the deviations from it add up to nothing.
    private static double SlopeOfSquares(FallOffModel model, IReadOnlyList<DistanceLight> readings, double size)
    {
        var none = default(NoTrail);
        var mean = readings.Average(reading => reading.LightStops + model.Loss(reading.DistanceMm, size, ref none));
        return readings.Sum(reading =>
            (reading.LightStops + model.Loss(reading.DistanceMm, size, ref none) - mean) * model.Slope(reading.DistanceMm, size));
    }
}
