namespace StudioCalc.Maths;

/// <summary>What stands in the way of a distance.</summary>
public enum DistanceObstacle
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It would have to be nearer than the range.</summary>
    NearestDistance,

    /// <summary>It would have to be farther than the range.</summary>
    FarthestDistance,

    /// <summary>No distance gives so much light.</summary>
    MostLight,

    /// <summary>The receiver gets no light along the whole line.</summary>
    Dark,
}

/// <summary>Distances with a wanted light, or why there are none.</summary>
/// <param name="Obstacle">What stands in the way.</param>
/// <param name="Places">Every distance in the range, the nearest to where the source stands first.</param>
/// <param name="Nearest">Without any, the distance in the range whose light comes nearest; null where the range is dark.</param>
/// <param name="Powered">That distance with the power changed so that it gives the wanted light there.</param>
/// <param name="Beyond">Without any, the nearest distance outside the range with the wanted light; null where there is none.</param>
public sealed record DistanceOutcome(
    DistanceObstacle Obstacle, IReadOnlyList<SolvedPlace> Places, SolvedPlace? Nearest, SolvedPlace? Powered, SolvedPlace? Beyond);

/// <summary>Solves for the distances of a source that give a wanted light.</summary>
public static class DistanceSolver
{
    /// <summary>The nearest distance that a source is put at. [mm]</summary>
    public const double LeastMm = 10;

    /// <summary>The farthest. [mm]</summary>
    public const double MostMm = 100000;

    /// <summary>Solves.</summary>
    /// <param name="scan">The line.</param>
    /// <param name="wanted">The wanted light of the face, above 0.</param>
    /// <param name="nearestMm">The near end of the range. [mm]</param>
    /// <param name="farthestMm">The far end. [mm]</param>
    /// <param name="bandStops">The band about each distance. [stops]</param>
    public static DistanceOutcome Solve(
        LineScan scan, double wanted, double nearestMm, double farthestMm, double bandStops)
    {
        ArgumentNullException.ThrowIfNull(scan);
        Guard.Positive(nearestMm);
        Guard.Positive(farthestMm);
        var now = scan.Line.NowMm;
        var wantedStops = Math.Log2(Guard.Positive(wanted));
        SolvedPlace[] places =
        [
            .. scan.Roots(wantedStops, nearestMm, farthestMm).OrderBy(d => Math.Abs(d - now)).Select(d => At(d)),
        ];
        if (places.Length > 0)
        {
            return new(DistanceObstacle.None, places, Nearest: null, Powered: null, Beyond: null);
        }

        var nearest = scan.Closest(wantedStops, nearestMm, farthestMm) is { } closest ? At(closest) : null;
        var powered = nearest is null
            ? null
            : SolvedPlace.At(scan, nearest.DistanceMm, scan.Line.Light(nearest.DistanceMm), bandStops);
        var roots = scan.Roots(wantedStops, LeastMm, MostMm);
        if (roots.Count > 0)
        {
            var beyond = roots.MinBy(d => OutsideBy(d, nearestMm, farthestMm));
            var obstacle = beyond < nearestMm ? DistanceObstacle.NearestDistance : DistanceObstacle.FarthestDistance;
            return new(obstacle, [], nearest, powered, At(beyond));
        }

        return new(Obstacle(scan, wantedStops, nearest), [], nearest, powered, Beyond: null);

        SolvedPlace At(double distanceMm) => SolvedPlace.At(scan, distanceMm, wanted, bandStops);
    }

    /// <summary>How far a distance lies outside a range, as the logarithm of a ratio; 0 within it.</summary>
    internal static double OutsideBy(double distanceMm, double nearestMm, double farthestMm) =>
        Math.Max(0, Math.Max(Math.Log(nearestMm / distanceMm), Math.Log(distanceMm / farthestMm)));

    private static DistanceObstacle Obstacle(LineScan scan, double wantedStops, SolvedPlace? nearest)
    {
        if (scan.Closest(wantedStops, LeastMm, MostMm) is null)
        {
            return DistanceObstacle.Dark;
        }

        if (scan.MostStops(LineScan.FarthestMm) < wantedStops)
        {
            return DistanceObstacle.MostLight;
        }

        return nearest is { OverWantedStops: < 0 } ? DistanceObstacle.NearestDistance : DistanceObstacle.FarthestDistance;
    }
}
