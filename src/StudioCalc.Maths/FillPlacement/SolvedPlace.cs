using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A distance of a source along its line, beside the one that inverse square asks for.</summary>
/// <remarks>
/// <code>
/// x = log2(e / w)                                           (31)
/// i = d0 sqrt(e0 / w)                                       (32)
/// y = log2(g / w)                                           (33)
/// </code>
/// <para>x: light at the distance over the wanted. e, e0, g: light there, where the source stands now, and at i. w: wanted light. d0:
/// distance now. i: the distance by inverse square. y: what it would give over the wanted.</para>
/// </remarks>
public sealed record SolvedPlace
{
    /// <summary>Distance from the aim point to the centre of the face. [mm]</summary>
    public required double DistanceMm { get; init; }

    /// <summary>The centre of the face there. [mm]</summary>
    public required Vector Centre { get; init; }

    /// <summary>How far it moves along the line; positive is away. [mm]</summary>
    public required double MovedMm { get; init; }

    /// <summary>Light over the wanted, x; positive is brighter. [stops]</summary>
    public required double OverWantedStops { get; init; }

    /// <summary>Within which the light stays within the band: the nearer end. [mm]</summary>
    public required double BandNearMm { get; init; }

    /// <summary>The farther end. [mm]</summary>
    public required double BandFarMm { get; init; }

    /// <summary>Distance by inverse square i; null where the source gives none now. [mm]</summary>
    public required double? InverseSquareMm { get; init; }

    /// <summary>Light at that distance over the wanted, y; null where there is none. [stops]</summary>
    public required double? InverseSquareOverStops { get; init; }

    /// <summary>What a distance gives.</summary>
    /// <param name="scan">The line.</param>
    /// <param name="distanceMm">The distance, with light. [mm]</param>
    /// <param name="wanted">The wanted light w, above 0.</param>
    /// <param name="bandStops">The band to either side. [stops]</param>
    public static SolvedPlace At(LineScan scan, double distanceMm, double wanted, double bandStops)
    {
        var none = default(NoTrail);
        return At(scan, distanceMm, wanted, bandStops, ref none, "");
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="scan">The line.</param>
    /// <param name="distanceMm">The distance, with light. [mm]</param>
    /// <param name="wanted">The wanted light w, above 0.</param>
    /// <param name="bandStops">The band to either side. [stops]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="field">The answer message that holds it, with a point at its end, for the trail.</param>
    public static SolvedPlace At<TTrail>(
        LineScan scan, double distanceMm, double wanted, double bandStops, ref TTrail trail, string field)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(scan);
        var line = scan.Line;
        var (near, far) = scan.Band(distanceMm, bandStops);
        trail.Section("distance");
        var d = trail.Given("d", distanceMm, "mm", "solves x = 0 in fill placement (31), or comes nearest", field + "distance_mm");
        var e = line.Light(d, ref trail);
        var w = trail.Given("w", Guard.Positive(wanted), "", "wanted light of the face");
        var over = trail.Let("x", Log2(e / w), "stops", "fill placement (31)", field + "over_wanted_stops");
        double? inverse = null;
        double? inverseOver = null;
        if (line.Light(line.NowMm) is > 0 and var now)
        {
            trail.Section("inverse square");
            var e0 = trail.Given("e0", now, "", "light of the face where it stands now");
            var d0 = trail.Given("d0", line.NowMm, "mm", "distance now");
            var i = trail.Let("i", d0 * Sqrt(e0 / w), "mm", "fill placement (32)", field + "inverse_square_distance_mm");
            inverse = i;
            if (line.Light(i) is > 0 and < double.PositiveInfinity and var there)
            {
                var g = trail.Given("g", there, "", "light of the face at i");
                inverseOver = trail.Let("y", Log2(g / w), "stops", "fill placement (33)", field + "inverse_square_over_stops");
            }
        }

        return new()
        {
            DistanceMm = d,
            Centre = line.Aim + line.Direction * d,
            MovedMm = d - line.NowMm,
            OverWantedStops = over,
            BandNearMm = near,
            BandFarMm = far,
            InverseSquareMm = inverse,
            InverseSquareOverStops = inverseOver,
        };
    }
}
