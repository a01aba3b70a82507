using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a receiver collects.</summary>
public enum Collector
{
    /// <summary>Flat: by the cosine, from before it.</summary>
    Flat,

    /// <summary>A dome: by (1 + cosine) / 2, from everywhere.</summary>
    Dome,
}

/// <summary>A place that receives light.</summary>
/// <param name="Place">Where it is. [mm]</param>
/// <param name="Normal">The unit direction that it faces.</param>
/// <param name="Collector">What it collects.</param>
public readonly record struct LightPoint(Vector Place, Vector Normal, Collector Collector = Collector.Flat);

/// <summary>A flat face that gives off light, or a point that does.</summary>
/// <remarks>
/// <code>
/// e  = pi (F + (q - 1) F')            a face, flat receiver        (5)
/// e  = (pi F + W) / 2                 a face, dome; core alike     (6)
/// e  = cos b / d²                     a point, flat receiver       (7)
/// e  = (1 + cos b) / (2 d²)           a point, dome                (8)
/// </code>
/// <para>e: light by unit luminance of the rim, or by unit intensity of a point. F, F': configuration factors of the face and of
/// its core; in (6) without the cut at the horizon. q: luminance of the core over the rim, 1 without a core. W: solid
/// angle. b: angle between the receiver's normal and the point. d: distance. A receiver behind the face gets none. Faces are
/// Lambertian: equally bright from every side; grids, louvres and bare reflectors are not.</para>
/// </remarks>
public sealed class LightFace
{
    private readonly Vector[] _corners;
    private readonly Vector[] _core;
    private readonly double _coreRatio;

    private LightFace(FaceAxes axes, Vector[] corners, Vector[] core, double coreRatio, double area, double weighedArea) =>
        (Axes, _corners, _core, _coreRatio, Area, WeighedArea) = (axes, corners, core, coreRatio, area, weighedArea);

    /// <summary>Where it stands.</summary>
    public FaceAxes Axes { get; }

    /// <summary>Its corners in set coordinates; none for a point. [mm]</summary>
    public ReadOnlySpan<Vector> Corners => _corners;

    /// <summary>Whether it is a point.</summary>
    public bool IsPoint => _corners.Length == 0;

    /// <summary>Its area; 0 for a point. [mm²]</summary>
    public double Area { get; }

    /// <summary>Its area, with that of its core weighed by luminance; 0 for a point. [mm²]</summary>
    public double WeighedArea { get; }

    /// <summary>A point.</summary>
    /// <param name="axes">Where it stands.</param>
    public static LightFace Point(FaceAxes axes) => new(axes, [], [], 1, 0, 0);

    /// <summary>A face.</summary>
    /// <param name="axes">Where it stands.</param>
    /// <param name="outline">Its corners, counter-clockwise seen from before it; see <see cref="FaceOutline"/>.</param>
    /// <param name="coreWidthShare">Width of a core over that of the face; 0 for none.</param>
    /// <param name="coreRatio">Luminance of the core over that of the rim.</param>
    /// <exception cref="ArgumentException">The outline has fewer than 3 or more than <see cref="FaceOutline.MostCorners"/> corners.</exception>
    public static LightFace Of(
        FaceAxes axes, IReadOnlyList<(double Right, double Up)> outline, double coreWidthShare = 0, double coreRatio = 1)
    {
        ArgumentNullException.ThrowIfNull(axes);
        ArgumentNullException.ThrowIfNull(outline);
        if (outline.Count is < 3 or > FaceOutline.MostCorners)
        {
            throw new ArgumentException("A face has from 3 to 128 corners.", nameof(outline));
        }

        var area = Abs(FaceOutline.Area(outline));
        var weighed = area * (1 + (coreRatio - 1) * coreWidthShare * coreWidthShare);
        return new(axes, Scaled(1), coreWidthShare > 0 ? Scaled(coreWidthShare) : [], coreRatio, area, weighed);

        Vector[] Scaled(double share) => [.. outline.Select(corner => axes.At(corner.Right * share, corner.Up * share))];
    }

    /// <summary>The same face elsewhere.</summary>
    /// <param name="axes">Where it stands then.</param>
    public LightFace MovedTo(FaceAxes axes)
    {
        ArgumentNullException.ThrowIfNull(axes);
        return new(axes, Moved(_corners), Moved(_core), _coreRatio, Area, WeighedArea);

        Vector[] Moved(Vector[] corners) =>
            [.. corners.Select(corner => axes.At((corner - Axes.Centre).Dot(Axes.Right), (corner - Axes.Centre).Dot(Axes.Up)))];
    }

    /// <summary>The same face elsewhere, turned as it is.</summary>
    /// <param name="way">How far it moves. [mm]</param>
    public LightFace ShiftedBy(Vector way)
    {
        return new(Axes.ShiftedBy(way), Shifted(_corners), Shifted(_core), _coreRatio, Area, WeighedArea);

        Vector[] Shifted(Vector[] corners) => [.. corners.Select(corner => corner + way)];
    }

    /// <summary>Light e that a receiver gets by unit luminance of the rim, or by unit intensity of a point. [sr, or 1/mm²]</summary>
    /// <param name="at">The receiver.</param>
    public double Light(in LightPoint at)
    {
        var none = default(NoTrail);
        return Light(at, ref none);
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="at">The receiver.</param>
    /// <param name="trail">Follows the sum.</param>
    public double Light<TTrail>(in LightPoint at, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (IsPoint)
        {
            return PointLight(at, ref trail);
        }

        if (!IsBefore(at.Place))
        {
            return trail.Given("e", 0, "sr", "the receiver lies behind the face");
        }

        return at.Collector == Collector.Dome ? DomeLight(at, ref trail) : FlatLight(at, ref trail);
    }

    /// <summary>Light of the part within half-spaces, as through an opening. [sr, or 1/mm²]</summary>
    /// <param name="at">The receiver.</param>
    /// <param name="within">The half-spaces.</param>
    public double LightWithin(in LightPoint at, ReadOnlySpan<HalfSpace> within)
    {
        if (!IsBefore(at.Place))
        {
            return 0;
        }

        if (IsPoint)
        {
            return HalfSpace.AllHold(within, Axes.Centre) ? Light(at) : 0;
        }

        var light = Part(_corners, at, within);
        return _core.Length == 0 ? light : light + (_coreRatio - 1) * Part(_core, at, within);

        static double Part(Vector[] corners, in LightPoint at, ReadOnlySpan<HalfSpace> within) =>
            HalfSpace.Cut(corners, within) is { Length: >= 3 } left ? PolygonLight.Light(left, at) : 0;
    }

    /// <summary>The outline with weight 1, and that of the core with its luminance over the rim's: lights to be added.</summary>
    public IReadOnlyList<(Vector[] Corners, double Weight)> Layers() =>
        _core.Length == 0 ? [(_corners, 1)] : [(_corners, 1), (_core, _coreRatio - 1)];

    /// <summary>The same face with an eighth of its corners where it is a disc: quick, and good enough to compare.</summary>
    public LightFace Thinned()
    {
        return _corners.Length < FaceOutline.DiscCorners ? this : new(Axes, Eighth(_corners), Eighth(_core), _coreRatio, Area, WeighedArea);

        static Vector[] Eighth(Vector[] corners) => [.. corners.Where((_, i) => i % 8 == 0)];
    }

    /// <summary>Whether a place is on the lit side.</summary>
    public bool IsBefore(Vector place) => IsPoint || (place - Axes.Centre).Dot(Axes.Facing) > 0;

    private double PointLight<TTrail>(in LightPoint at, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var way = Axes.Centre - at.Place;
        var d = trail.Given("d", way.Length, "mm", "distance to the point");
        var u = trail.Given("u", way.Dot(at.Normal) / d, "", "cosine at the receiver");
        return at.Collector == Collector.Dome
            ? trail.Let("e", (1 + u) / (2 * d * d), "1/mm²", "fill placement (8)")
            : trail.Let("e", Max(0, u) / (d * d), "1/mm²", "fill placement (7)");
    }

    private double FlatLight<TTrail>(in LightPoint at, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var F = Factor(_corners, at, ref trail);
        var pi = trail.Given("pi", PI, "", "half a turn");
        if (_core.Length == 0)
        {
            return trail.Let("e", pi * F, "sr", "fill placement (5)");
        }

        var e = trail.Let("e", pi * F, "sr", "fill placement (5), with the rim's luminance all over");
        F = Factor(_core, at, ref trail);
        var q = trail.Given("q", _coreRatio, "", "luminance of the core over the rim");
        return trail.Let("e", e + pi * (q - 1) * F, "sr", "fill placement (5)");
    }

    private double DomeLight<TTrail>(in LightPoint at, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var pi = trail.Given("pi", PI, "", "half a turn");
        var F = trail.Given("F", PolygonLight.SignedFactor(_corners, at.Place, at.Normal), "", "fill placement (1), without the cut");
        var W = trail.Given("W", PolygonLight.SolidAngle(_corners, at.Place), "sr", "fill placement (3)");
        var e = trail.Let("e", (pi * F + W) / 2, "sr", "fill placement (6)");
        if (_core.Length == 0)
        {
            return e;
        }

        F = trail.Given("F", PolygonLight.SignedFactor(_core, at.Place, at.Normal), "", "the same of the core");
        W = trail.Given("W", PolygonLight.SolidAngle(_core, at.Place), "sr", "the same of the core");
        var q = trail.Given("q", _coreRatio, "", "luminance of the core over the rim");
        return trail.Let("e", e + (q - 1) * (pi * F + W) / 2, "sr", "fill placement (6)");
    }

    // Nobody redoes a disc's polygon corner by corner.
    private static double Factor<TTrail>(Vector[] corners, in LightPoint at, ref TTrail trail)
        where TTrail : struct, ITrail => corners.Length < FaceOutline.DiscCorners
            ? PolygonLight.Factor(corners, at.Place, at.Normal, ref trail)
            : trail.Given("F", PolygonLight.Factor(corners, at.Place, at.Normal), "", "fill placement (1), the disc as a polygon");
}
