using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A plate, bowl or glass: thin walls that rise straight from a flat floor to the rim, on an upright foot.</summary>
/// <remarks>
/// <code>
/// w(z) = ws + (1 - ws) (z - zf) / (zr - zf)   half width at a height, in half widths of the rim     (8)
/// </code>
/// <para>ws: floor over rim; zf, zr: heights of floor and rim over the base. Below the floor the foot keeps the width of the
/// floor.</para>
/// </remarks>
public sealed class ViewVessel
{
    private readonly TurnedFrame _frame;
    private readonly double _slope;

    /// <summary>A vessel.</summary>
    /// <param name="shape">Its shape.</param>
    /// <param name="base">Middle of its base. [mm]</param>
    /// <param name="turnDeg">Turn, counter-clockwise seen from above. [deg]</param>
    public ViewVessel(VesselShape shape, Vector @base, double turnDeg)
    {
        ArgumentNullException.ThrowIfNull(shape);
        (Shape, TurnDeg) = (shape, turnDeg);
        _frame = new(@base, turnDeg, shape.RimWidthMm, shape.RimDepthMm);
        _slope = (1 - shape.FloorShare) / (shape.RimHeightMm - shape.FloorHeightMm);
        ContentShare = WidthAt(shape.ContentHeightMm);
    }

    /// <summary>Its shape.</summary>
    public VesselShape Shape { get; }

    /// <summary>Its turn. [deg]</summary>
    public double TurnDeg { get; }

    /// <summary>Middle of its base. [mm]</summary>
    public Vector Base => _frame.Base;

    /// <summary>Width of the content's surface over that of the rim.</summary>
    public double ContentShare { get; }

    /// <summary>How far the content lies below the rim. [mm]</summary>
    public double ContentBelowRimMm => Shape.RimHeightMm - Shape.ContentHeightMm;

    /// <summary>The frame in which its rim has half widths of 1.</summary>
    internal TurnedFrame Frame => _frame;

    /// <summary>The same vessel elsewhere.</summary>
    /// <param name="base">Middle of its base. [mm]</param>
    /// <param name="turnDeg">Its turn. [deg]</param>
    public ViewVessel At(Vector @base, double turnDeg) => new(Shape, @base, turnDeg);

    /// <summary>The t at which a line of sight first meets its walls or its content; infinite when it does not.</summary>
    public double FirstHit(in SightLine line)
    {
        var (from, along) = _frame.Into(line);
        return LocalHit(from.X, from.Y, from.Z, along.X, along.Y, along.Z);
    }

    /// <summary>The same for a line that is told in its own frame, from o along d.</summary>
    internal double LocalHit(double ox, double oy, double oz, double dx, double dy, double dz)
    {
        var t = (Shape.ContentHeightMm - oz) / dz;
        var content = t >= 0 && double.IsFinite(t) && IsWithin(ox + dx * t, oy + dy * t, ContentShare) ? t : double.PositiveInfinity;
        if (Shape.HasClearWalls)
        {
            return content;
        }

        var wall = WallHit(ox, oy, oz, dx, dy, dz, Shape.FloorHeightMm, Shape.RimHeightMm, Shape.FloorShare - _slope * Shape.FloorHeightMm, _slope);
        var foot = Shape.FloorHeightMm > 0
            ? WallHit(ox, oy, oz, dx, dy, dz, 0, Shape.FloorHeightMm, Shape.FloorShare, 0)
            : double.PositiveInfinity;
        return Min(content, Min(wall, foot));
    }

    /// <summary>Whether a point of the content lies within the content's outline, and where on the set.</summary>
    /// <param name="x">Place across, from -1 to 1 of the content's half width.</param>
    /// <param name="y">Place from front to back, from -1 to 1 of the content's half depth.</param>
    public Vector? Content(double x, double y) => IsWithin(x, y, 1)
        ? _frame.OnSet(x * ContentShare, y * ContentShare, Shape.ContentHeightMm)
        : null;

    /// <summary>Whether a place of the set lies over the content's outline, or under it.</summary>
    public bool IsOverContent(Vector place) => _frame.Into(place) is var local && IsWithin(local.X, local.Y, ContentShare);

    /// <summary>Whether its own near wall stands before a point of its content: the line of sight to it, with t 0 at the camera and
    /// 1 at the point, does not come in through the rim.</summary>
    /// <param name="line">The line of sight.</param>
    public bool HidesContent(in SightLine line)
    {
        var local = _frame.Into(line);
        return Shape.HasClearWalls || ContentBelowRimMm <= 0
            ? local.From.Z <= Shape.ContentHeightMm
            : !(AtHeight(local, Shape.RimHeightMm) is { } t && t < 1 && local.At(t) is var place && IsWithin(place.X, place.Y, 1));
    }

    /// <summary>A point of its rim, of its content's edge, or of its foot, on the set.</summary>
    /// <param name="x">Across, in half widths of the rim.</param>
    /// <param name="y">From front to back, in half depths of the rim.</param>
    /// <param name="z">Over the base. [mm]</param>
    public Vector OnSet(double x, double y, double z) => _frame.OnSet(x, y, z);

    /// <summary>How far it reaches in a direction: the greatest product of a place of it with the direction.</summary>
    public double Reach(Vector direction)
    {
        var w = _frame.Weights(direction);
        var level = Shape.IsRectangle ? Abs(w.X) + Abs(w.Y) : Sqrt(w.X * w.X + w.Y * w.Y);
        return Base.Dot(direction) + Max(level + w.Z * Shape.RimHeightMm, level * Shape.FloorShare + Max(0, w.Z * Shape.FloorHeightMm));
    }

    /// <summary>The corners of the upright box about it.</summary>
    /// <param name="corners">Eight places to fill.</param>
    public void Corners(Span<Vector> corners)
    {
        for (var i = 0; i < 8; i++)
        {
            corners[i] = _frame.OnSet((i & 1) == 0 ? -1 : 1, (i & 2) == 0 ? -1 : 1, (i & 4) == 0 ? 0 : Shape.RimHeightMm);
        }
    }

    /// <summary>Half width at a height over the base, in half widths of the rim. (8)</summary>
    public double WidthAt(double heightMm) => heightMm <= Shape.FloorHeightMm
        ? Shape.FloorShare
        : Shape.FloorShare + (1 - Shape.FloorShare) * (heightMm - Shape.FloorHeightMm) / (Shape.RimHeightMm - Shape.FloorHeightMm);

    private static double? AtHeight(in SightLine local, double z)
    {
        var t = (z - local.From.Z) / local.Along.Z;
        return t >= 0 && double.IsFinite(t) ? t : null;
    }

    private bool IsWithin(double x, double y, double share) =>
        Shape.IsRectangle ? Max(Abs(x), Abs(y)) <= share : x * x + y * y <= share * share;

    // The nearest place where the line passes the slanted side between two heights: of a cone or of four planes.
    private double WallHit(
        double ox, double oy, double oz, double dx, double dy, double dz, double low, double high, double radius, double slope)
    {
        var (enter, leave) = (0.0, double.PositiveInfinity);
        if (!Spans.Within(oz, dz, low, high, ref enter, ref leave))
        {
            return double.PositiveInfinity;
        }

        var (first, last) = (enter, leave);
        var meets = Shape.IsRectangle
            ? Spans.WithinPyramid(ox, oy, oz, dx, dy, dz, radius, slope, ref enter, ref leave)
            : Spans.WithinCone(ox, oy, oz, dx, dy, dz, radius, slope, ref enter, ref leave);
        if (!meets)
        {
            return double.PositiveInfinity;
        }

        return enter > first ? enter : leave < last ? leave : double.PositiveInfinity;
    }
}
