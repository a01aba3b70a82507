using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A fall-off model fitted to readings before a source.</summary>
/// <remarks>
/// <code>
/// c = mean of L + G     y = c - G - L     rms = sqrt(mean of y²)          (25)
/// predicted = c - G - L0                                                (25)
/// </code>
/// <para>L: light of a reading, (20); L0: of the first one. G: light lost by distance, (21) to (23). y: what the model says over a
/// reading. Source: least squares, textbook knowledge (from memory); the models derived in docs/models/fill-placement.md.</para>
/// </remarks>
public sealed record SourceFit
{
    // Residuals that differ by less are alike.
    private const int AlikeDigits = 9;

    /// <summary>The model.</summary>
    public required FallOffModel Model { get; init; }

    /// <summary>Radius R of a soft face, or depth D of a beam's origin behind the face; null for a point and without a
    /// solution. [mm]</summary>
    public required double? SizeMm { get; init; }

    /// <summary>What the model says over each reading, y; empty without a solution. [stops]</summary>
    public required IReadOnlyList<double> ResidualsStops { get; init; }

    /// <summary>Root mean square of those. [stops]</summary>
    public required double ResidualStops { get; init; }

    /// <summary>Light at the asked distances over the first reading; null where a beam has not begun. [stops]</summary>
    public required IReadOnlyList<double?> PredictedStops { get; init; }

    /// <summary>Whether there is a solution.</summary>
    public bool HasSolution => ResidualsStops.Count > 0;

    /// <summary>Fits every model, the best first; of those alike, in the order of <see cref="FallOffModel"/>; those without a
    /// solution last.</summary>
    /// <param name="readings">The readings, at two distances at least.</param>
    /// <param name="predictMm">Distances at which light is told. [mm]</param>
    /// <param name="trail">Follows the sums.</param>
    public static IReadOnlyList<SourceFit> All<TTrail>(
        IReadOnlyList<DistanceLight> readings, IReadOnlyList<double> predictMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(predictMm);
        if (readings.All(reading => reading.DistanceMm == readings[0].DistanceMm))
        {
            throw new ArgumentException("A fit needs readings at two distances.", nameof(readings));
        }

        var none = default(NoTrail);
        var order = Enum.GetValues<FallOffModel>()
            .Select(model => Of(model, readings, predictMm, "", ref none))
            .OrderBy(fit => !fit.HasSolution)
            .ThenBy(fit => Round(fit.ResidualStops, AlikeDigits))
            .Select(fit => fit.Model)
            .ToList();
        var fits = new SourceFit[order.Count];
        for (var i = 0; i < fits.Length; i++)
        {
            fits[i] = Of(order[i], readings, predictMm, FormattableString.Invariant($"fits[{i}]."), ref trail);
        }

        return fits;
    }

    private static SourceFit Of<TTrail>(
        FallOffModel model, IReadOnlyList<DistanceLight> readings, IReadOnlyList<double> predictMm, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section(model switch
        {
            FallOffModel.SoftFace => "soft face",
            FallOffModel.Beam => "beam",
            _ => "point",
        });
        var size = model == FallOffModel.Point
            ? null
            : FallOffSize.Find(model, readings, field + (model == FallOffModel.SoftFace ? "radius_mm" : "origin_behind_mm"), ref trail);
        return size is null && model != FallOffModel.Point
            ? new() { Model = model, SizeMm = null, ResidualsStops = [], ResidualStops = 0, PredictedStops = [] }
            : Fitted(model, size, readings, predictMm, field, ref trail);
    }

    private static SourceFit Fitted<TTrail>(
        FallOffModel model, double? size, IReadOnlyList<DistanceLight> readings, IReadOnlyList<double> predictMm, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var none = default(NoTrail);
        var at = size ?? 0;
        var c = trail.Given(
            "c", readings.Average(one => one.LightStops + model.Loss(one.DistanceMm, at, ref none)), "stops", "fill placement (25), mean of L + G");
        var residuals = new double[readings.Count];
        var squares = trail.Given("squares", 0, "stops²", "sum of y²");
        for (var i = 0; i < residuals.Length; i++)
        {
            var G = model.Loss(readings[i].DistanceMm, at, ref trail);
            var L = trail.Given("L", readings[i].LightStops, "stops", "fill placement (20), of the reading");
            var y = trail.Let("y", c - G - L, "stops", "fill placement (25)", FormattableString.Invariant($"{field}residuals_stops[{i}]"));
            squares = trail.Let("squares", squares + y * y, "stops²", "fill placement (25)");
            residuals[i] = y;
        }

        var n = trail.Given("n", residuals.Length, "", "number of readings");
        var rms = trail.Let("rms", Sqrt(squares / n), "stops", "fill placement (25)", field + "residual_stops");
        return new()
        {
            Model = model,
            SizeMm = size,
            ResidualsStops = residuals,
            ResidualStops = rms,
            PredictedStops = Predicted(model, at, c, readings[0].LightStops, predictMm, field, ref trail),
        };
    }

    private static double?[] Predicted<TTrail>(
        FallOffModel model, double size, double level, double first, IReadOnlyList<double> predictMm, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var predicted = new double?[predictMm.Count];
        for (var i = 0; i < predicted.Length; i++)
        {
            if (model == FallOffModel.Beam && predictMm[i] + size <= 0)
            {
                continue;
            }

            var G = model.Loss(predictMm[i], size, ref trail);
            var c = level;
            var L0 = trail.Given("L0", first, "stops", "fill placement (20), of the first reading");
            predicted[i] = trail.Let(
                "predicted", c - G - L0, "stops", "fill placement (25)", FormattableString.Invariant($"{field}predicted[{i}].over_first_stops"));
        }

        return predicted;
    }
}
