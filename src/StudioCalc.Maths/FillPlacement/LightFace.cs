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

    private LightFace(FaceAxes axes, Vector[] corners, Vector[] core, double coreRatio) =>
        (Axes, _corners, _core, _coreRatio) = (axes, corners, core, coreRatio);

    /// <summary>Where it stands.</summary>
    public FaceAxes Axes { get; }

    /// <summary>Its corners in set coordinates; none for a point. [mm]</summary>
    public ReadOnlySpan<Vector> Corners => _corners;

    /// <summary>Whether it is a point.</summary>
    public bool IsPoint => _corners.Length == 0;

    /// <summary>A point.</summary>
    /// <param name="axes">Where it stands.</param>
    public static LightFace Point(FaceAxes axes) => new(axes, [], [], 1);

    /// <summary>A face.</summary>
    /// <param name="axes">Where it stands.</param>
    /// <param name="outline">Its corners, counter-clockwise seen from before it; see <see cref="FaceOutline"/>.</param>
    /// <param name="coreWidthShare">Width of a core over that of the face; 0 for none.</param>
    /// <param name="coreRatio">Luminance of the core over that of the rim.</param>
    public static LightFace Of(
        FaceAxes axes, IReadOnlyList<(double Right, double Up)> outline, double coreWidthShare = 0, double coreRatio = 1)
    {
        ArgumentNullException.ThrowIfNull(axes);
        ArgumentNullException.ThrowIfNull(outline);
        return new(axes, Scaled(1), coreWidthShare > 0 ? Scaled(coreWidthShare) : [], coreRatio);

        Vector[] Scaled(double share) => [.. outline.Select(corner => axes.At(corner.Right * share, corner.Up * share))];
    }

    /// <summary>The same face elsewhere.</summary>
    /// <param name="axes">Where it stands then.</param>
    public LightFace MovedTo(FaceAxes axes)
    {
        ArgumentNullException.ThrowIfNull(axes);
        return new(axes, Moved(_corners), Moved(_core), _coreRatio);

        Vector[] Moved(Vector[] corners) =>
            [.. corners.Select(corner => axes.At((corner - Axes.Centre).Dot(Axes.Right), (corner - Axes.Centre).Dot(Axes.Up)))];
    }

    /// <summary>Light e that a receiver gets by unit luminance of the rim, or by unit intensity of a point. [sr, or 1/mm²]</summary>
    /// <param name="at">The receiver.</param>
    public double Light(in LightPoint at)
    {
        if (IsPoint)
        {
            var way = Axes.Centre - at.Place;
            var square = way.Dot(way);
            var cosine = way.Dot(at.Normal) / Math.Sqrt(square);
            return (at.Collector == Collector.Dome ? (1 + cosine) / 2 : Math.Max(0, cosine)) / square;
        }

        if (!IsBefore(at.Place))
        {
            return 0;
        }

        var light = Light(_corners, at);
        return _core.Length == 0 ? light : light + (_coreRatio - 1) * Light(_core, at);
    }

    /// <summary>Configuration factor of the whole outline, from 0 to 1.</summary>
    /// <param name="at">The receiver; always taken as flat.</param>
    public double Factor(in LightPoint at) =>
        !IsPoint && IsBefore(at.Place) ? PolygonLight.Factor(_corners, at.Place, at.Normal) : 0;

    /// <summary>Whether a place is on the lit side.</summary>
    public bool IsBefore(Vector place) => IsPoint || (place - Axes.Centre).Dot(Axes.Facing) > 0;

    private static double Light(Vector[] corners, in LightPoint at) => at.Collector == Collector.Dome
        ? (Math.PI * PolygonLight.SignedFactor(corners, at.Place, at.Normal) + PolygonLight.SolidAngle(corners, at.Place)) / 2
        : Math.PI * PolygonLight.Factor(corners, at.Place, at.Normal);
}
