using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A round bowl, plate or glass whose content is seen over its near rim.</summary>
/// <remarks>
/// <code>
/// A = a (1 + h / (R sin e))      A = a for a far camera                    (21)
/// t = h / tan e                                                            (22)
/// x = (r² + t² - A²) / (2 t)     c = sqrt(r² - x²)                         (23)
/// V = (r² acos(x / r) + A² asin(c / A) - t c) / (pi r²)                    (24)
/// l = (r + A - t) / (2 r)        within 0 and 1                            (25)
/// w = sin e / sqrt(1 - (a cos e / R)²)                                     (26)
/// e(s) = atan(h / (a + s)) - asin(a h / (R sqrt(h² + (a + s)²)))           (27)
/// V(e) = 1 / 2                                                             (28)
/// </code>
/// <para>a: radius of the rim. r: radius of the content, at most a. h: its depth under the rim. R: distance from the middle of the rim
/// to the entrance pupil. e: elevation. A, t: radius of the rim as the camera casts it on the content's plane, and how far its middle
/// lies behind the content's. x, c: place and half length of the chord in which the two circles meet. V: share of the content's
/// surface that shows. l: the same of its middle line. w: height over width of the rim in the picture. e(s): elevation at which
/// content s behind its middle shows; s is r for the first glimpse, 0 for the middle, -r for all. V rises with e, so (28) has one
/// root. Exact for walls that do not bulge inwards, opaque, seen from outside the rim: R above a. Source: derived in
/// docs/models/plate-view.md.</para>
/// </remarks>
public sealed record RoundVessel
{
    private const double Degrees = 180 / PI;
    private const int Halvings = 60;

    // What lies so little under the rim lies level with it: squares of less have no digits.
    private const double Nothing = 1e-9;

    /// <summary>A vessel with a camera over it.</summary>
    /// <param name="rimRadiusMm">Radius of the rim a. [mm]</param>
    /// <param name="contentRadiusMm">Radius of the content r, at most a. [mm]</param>
    /// <param name="depthMm">Its depth under the rim h. [mm]</param>
    /// <param name="distanceMm">Distance of the camera R, above a; infinite for a far one. [mm]</param>
    public RoundVessel(double rimRadiusMm, double contentRadiusMm, double depthMm, double distanceMm = double.PositiveInfinity)
    {
        RimRadiusMm = Guard.Positive(rimRadiusMm);
        ContentRadiusMm = Guard.Positive(contentRadiusMm);
        DepthMm = Guard.NotNegative(depthMm) < Nothing ? 0 : depthMm;
        DistanceMm = distanceMm;
        if (!(contentRadiusMm <= rimRadiusMm))
        {
            throw new ArgumentOutOfRangeException(nameof(contentRadiusMm), "Must not be above the radius of the rim.");
        }

        if (!(distanceMm > rimRadiusMm))
        {
            throw new ArgumentOutOfRangeException(nameof(distanceMm), "Must be above the radius of the rim.");
        }
    }

    /// <summary>Radius of the rim a. [mm]</summary>
    public double RimRadiusMm { get; }

    /// <summary>Radius of the content r. [mm]</summary>
    public double ContentRadiusMm { get; }

    /// <summary>Depth of the content h. [mm]</summary>
    public double DepthMm { get; }

    /// <summary>Distance of the camera R; infinite for a far one. [mm]</summary>
    public double DistanceMm { get; }

    /// <summary>Elevation above which content shows. (27) [deg]</summary>
    public double FirstGlimpseDeg => ShowsDeg(ContentRadiusMm);

    /// <summary>Lowest elevation at which all content shows. (27) [deg]</summary>
    public double WholeDeg => ShowsDeg(-ContentRadiusMm);

    /// <summary>Share of the content's surface that shows V. (24)</summary>
    /// <param name="elevationDeg">Elevation, from 0 to 90. [deg]</param>
    public double VisibleShare(double elevationDeg)
    {
        var none = default(NoTrail);
        return VisibleShare(elevationDeg, ref none);
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="elevationDeg">Elevation, from 0 to 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double VisibleShare<TTrail>(double elevationDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (DepthMm == 0 || elevationDeg >= WholeDeg)
        {
            return trail.Given("V", 1, "", "plate view (27): all shows from here", answerField);
        }

        if (elevationDeg <= FirstGlimpseDeg)
        {
            return trail.Given("V", 0, "", "plate view (27): nothing shows up to the first glimpse", answerField);
        }

        var (A, t) = Cast(elevationDeg, ref trail);
        return Circles.OverlapShare(t, A, ContentRadiusMm, ref trail, answerField);
    }

    /// <summary>Share of the content's middle line that shows l. (25)</summary>
    /// <param name="elevationDeg">Elevation, from 0 to 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double LineShare<TTrail>(double elevationDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (DepthMm == 0 || elevationDeg >= WholeDeg)
        {
            return trail.Given("l", 1, "", "plate view (27): all shows from here", answerField);
        }

        if (elevationDeg <= FirstGlimpseDeg)
        {
            return trail.Given("l", 0, "", "plate view (27): nothing shows up to the first glimpse", answerField);
        }

        var (A, t) = Cast(elevationDeg, ref trail);
        var r = ContentRadiusMm;
        return trail.Let("l", Max(0, Min(1, (r + A - t) / (2 * r))), "", "plate view (25)", answerField);
    }

    /// <summary>Height over width of the rim in the picture w, with the camera aimed at its middle. (26)</summary>
    /// <param name="elevationDeg">Elevation, from 0 to 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double RimHeightShare<TTrail>(double elevationDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var e = Radians(elevationDeg, ref trail);
        if (double.IsInfinity(DistanceMm))
        {
            return trail.Let("w", Sin(e), "", "plate view (26), far camera", answerField);
        }

        var a = trail.Given("a", RimRadiusMm, "mm", "half of rim_diameter_mm");
        var R = trail.Given("R", DistanceMm, "mm", "distance_mm");
        return trail.Let("w", Min(1, Sin(e) / Sqrt(1 - Pow(a * Cos(e) / R, 2))), "", "plate view (26)", answerField);
    }

    /// <summary>Elevation at which content shows that lies behind the middle. (27) [deg]</summary>
    /// <param name="behindMm">How far s behind the middle, from -r to r. [mm]</param>
    public double ShowsDeg(double behindMm)
    {
        var none = default(NoTrail);
        return ShowsDeg(behindMm, ref none);
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="behindMm">How far s behind the middle, from -r to r. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public double ShowsDeg<TTrail>(double behindMm, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (DepthMm == 0)
        {
            return trail.Given("Es", 0, "deg", "content level with the rim shows from everywhere", answerField);
        }

        var a = trail.Given("a", RimRadiusMm, "mm", "half of rim_diameter_mm");
        var h = trail.Given("h", DepthMm, "mm", "content_depth_mm");
        var s = trail.Given("s", behindMm, "mm", "place behind the middle: radius of the content, 0, or minus the radius");
        var degrees = trail.Given("degrees", Degrees, "deg", "degrees to a radian");
        if (double.IsInfinity(DistanceMm))
        {
            return trail.Let("Es", Atan2(h, a + s) * degrees, "deg", "plate view (27), far camera", answerField);
        }

        var R = trail.Given("R", DistanceMm, "mm", "distance_mm");
        return trail.Let(
            "Es", Max(0, (Atan2(h, a + s) - Asin(a * h / (R * Sqrt(h * h + (a + s) * (a + s))))) * degrees), "deg", "plate view (27)", answerField);
    }

    /// <summary>Lowest elevation at which half of the content shows, by area. (28) [deg]</summary>
    public double HalfDeg()
    {
        if (DepthMm == 0)
        {
            return 0;
        }

        var (low, high) = (FirstGlimpseDeg, WholeDeg);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = VisibleShare(middle) < 0.5 ? (middle, high) : (low, middle);
        }

        return high;
    }

    private (double A, double T) Cast<TTrail>(double elevationDeg, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var a = trail.Given("a", RimRadiusMm, "mm", "half of rim_diameter_mm");
        trail.Given("r", ContentRadiusMm, "mm", "half of content_diameter_mm");
        var h = trail.Given("h", DepthMm, "mm", "content_depth_mm");
        var e = Radians(elevationDeg, ref trail);
        if (double.IsInfinity(DistanceMm))
        {
            trail.Given("A", a, "mm", "plate view (21), far camera");
            return (a, trail.Let("t", h / Tan(e), "mm", "plate view (22)"));
        }

        var R = trail.Given("R", DistanceMm, "mm", "distance_mm");
        return (trail.Let("A", a * (1 + h / (R * Sin(e))), "mm", "plate view (21)"), trail.Let("t", h / Tan(e), "mm", "plate view (22)"));
    }

    private static double Radians<TTrail>(double elevationDeg, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var E = trail.Given("E", elevationDeg, "deg", "elevation from the table");
        var degrees = trail.Given("degrees", Degrees, "deg", "degrees to a radian");
        return trail.Let("e", E / degrees, "rad", "elevation");
    }
}
