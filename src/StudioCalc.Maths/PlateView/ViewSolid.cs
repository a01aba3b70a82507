using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A simple solid that stands for a component.</summary>
public enum SolidKind
{
    /// <summary>A box.</summary>
    Box,

    /// <summary>A cone with its top cut off, round or oval; with a top as wide as its base a cylinder.</summary>
    ConeFrustum,

    /// <summary>An ellipsoid that stands on its lowest point.</summary>
    Ellipsoid,

    /// <summary>The upper half of an ellipsoid.</summary>
    Heap,
}

/// <summary>A component as a solid on the set: where a line of sight meets it, and how far it reaches.</summary>
/// <remarks>All of them are convex, so that a line of sight meets each at most once from outside.</remarks>
public sealed class ViewSolid
{
    private readonly TurnedFrame _frame;
    private readonly double _topShare;
    private readonly double _narrowing;

    /// <summary>A solid.</summary>
    /// <param name="kind">Its shape.</param>
    /// <param name="base">Middle of its base. [mm]</param>
    /// <param name="turnDeg">Turn, counter-clockwise seen from above. [deg]</param>
    /// <param name="widthMm">Width, positive. [mm]</param>
    /// <param name="depthMm">Depth, positive. [mm]</param>
    /// <param name="heightMm">Height, positive. [mm]</param>
    /// <param name="topShare">Of a cone frustum, its width at the top over that at the base, from 0 to 1.</param>
    public ViewSolid(SolidKind kind, Vector @base, double turnDeg, double widthMm, double depthMm, double heightMm, double topShare = 1)
    {
        (Kind, HeightMm, TurnDeg, _topShare) = (kind, heightMm, turnDeg, topShare);
        _narrowing = (topShare - 1) / heightMm;
        _frame = new(@base, turnDeg, widthMm, depthMm);
    }

    /// <summary>Its shape.</summary>
    public SolidKind Kind { get; }

    /// <summary>Its height. [mm]</summary>
    public double HeightMm { get; }

    /// <summary>Its turn. [deg]</summary>
    public double TurnDeg { get; }

    /// <summary>Middle of its base. [mm]</summary>
    public Vector Base => _frame.Base;

    /// <summary>Its width. [mm]</summary>
    public double WidthMm => 2 * _frame.HalfWidth;

    /// <summary>Its depth. [mm]</summary>
    public double DepthMm => 2 * _frame.HalfDepth;

    /// <summary>Of a cone frustum, its width at the top over that at the base.</summary>
    public double TopShare => _topShare;

    /// <summary>The frame in which its outline has half widths of 1.</summary>
    internal TurnedFrame Frame => _frame;

    /// <summary>The same solid elsewhere.</summary>
    /// <param name="base">Middle of its base. [mm]</param>
    /// <param name="turnDeg">Its turn. [deg]</param>
    public ViewSolid At(Vector @base, double turnDeg) => new(Kind, @base, turnDeg, WidthMm, DepthMm, HeightMm, _topShare);

    /// <summary>The t at which a line of sight that starts outside first meets it; infinite when it does not.</summary>
    public double FirstHit(in SightLine line)
    {
        var (from, along) = _frame.Into(line);
        return LocalHit(from.X, from.Y, from.Z, along.X, along.Y, along.Z);
    }

    /// <summary>The same for a line that is told in its own frame, from o along d.</summary>
    internal double LocalHit(double ox, double oy, double oz, double dx, double dy, double dz)
    {
        var (enter, leave) = (0.0, double.PositiveInfinity);
        var meets = Kind switch
        {
            SolidKind.Box => Spans.Within(ox, dx, -1, 1, ref enter, ref leave)
                && Spans.Within(oy, dy, -1, 1, ref enter, ref leave)
                && Spans.Within(oz, dz, 0, HeightMm, ref enter, ref leave),
            SolidKind.ConeFrustum => Spans.Within(oz, dz, 0, HeightMm, ref enter, ref leave)
                && Spans.WithinCone(ox, oy, oz, dx, dy, dz, 1, _narrowing, ref enter, ref leave),
            SolidKind.Ellipsoid => Spans.WithinBall(ox, oy, oz, dx, dy, dz, HeightMm / 2, HeightMm / 2, ref enter, ref leave),
            _ => Spans.Within(oz, dz, 0, HeightMm, ref enter, ref leave)
                && Spans.WithinBall(ox, oy, oz, dx, dy, dz, 0, HeightMm, ref enter, ref leave),
        };
        return meets ? enter : double.PositiveInfinity;
    }

    /// <summary>How far it reaches in a direction: the greatest product of a place of it with the direction.</summary>
    public double Reach(Vector direction)
    {
        var w = _frame.Weights(direction);
        var level = Kind == SolidKind.Box ? Abs(w.X) + Abs(w.Y) : Sqrt(w.X * w.X + w.Y * w.Y);
        var half = HeightMm / 2;
        return Base.Dot(direction) + Kind switch
        {
            SolidKind.Box => level + Max(0, w.Z * HeightMm),
            SolidKind.ConeFrustum => Max(level, level * _topShare + w.Z * HeightMm),
            SolidKind.Ellipsoid => w.Z * half + Sqrt(level * level + w.Z * w.Z * half * half),
            _ => w.Z > 0 ? Sqrt(level * level + w.Z * w.Z * HeightMm * HeightMm) : level,
        };
    }

    /// <summary>The corners of the upright box about it.</summary>
    /// <param name="corners">Eight places to fill.</param>
    public void Corners(Span<Vector> corners)
    {
        for (var i = 0; i < 8; i++)
        {
            corners[i] = _frame.OnSet((i & 1) == 0 ? -1 : 1, (i & 2) == 0 ? -1 : 1, (i & 4) == 0 ? 0 : HeightMm);
        }
    }

    /// <summary>The point of its upper surface over a place in its outline; null outside.</summary>
    /// <param name="x">Place across, from -1 to 1.</param>
    /// <param name="y">Place from front to back, from -1 to 1.</param>
    public Vector? Top(double x, double y)
    {
        var r = x * x + y * y;
        if (Kind != SolidKind.Box && r > 1)
        {
            return null;
        }

        var z = Kind switch
        {
            SolidKind.Box => HeightMm,
            SolidKind.ConeFrustum => _topShare >= 1 ? HeightMm : Min(1, (1 - Sqrt(r)) / (1 - _topShare)) * HeightMm,
            SolidKind.Ellipsoid => (1 + Sqrt(1 - r)) * HeightMm / 2,
            _ => Sqrt(1 - r) * HeightMm,
        };
        return _frame.OnSet(x, y, z);
    }

    /// <summary>Its width at a height, over its full width.</summary>
    /// <param name="heightMm">Height over its base, from 0 to its own. [mm]</param>
    public double WidthAt(double heightMm)
    {
        var z = heightMm / HeightMm;
        return Kind switch
        {
            SolidKind.Box => 1,
            SolidKind.ConeFrustum => 1 + (_topShare - 1) * z,
            SolidKind.Ellipsoid => 2 * Sqrt(Max(0, z * (1 - z))),
            _ => Sqrt(Max(0, 1 - z * z)),
        };
    }

    /// <summary>A point in its frame on the set.</summary>
    /// <param name="x">Across, in half widths.</param>
    /// <param name="y">From front to back, in half depths.</param>
    /// <param name="z">Over the base. [mm]</param>
    public Vector OnSet(double x, double y, double z) => _frame.OnSet(x, y, z);
}
