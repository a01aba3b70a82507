using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A thing that a ray may meet.</summary>
public abstract class MirrorThing
{
    /// <summary>A point in its middle.</summary>
    public abstract Vector Middle { get; }

    /// <summary>Whether it stands there dark from a place, as a face does from behind.</summary>
    /// <param name="from">The place.</param>
    public virtual bool IsDarkFrom(Vector from) => false;

    /// <summary>How far along a ray it is met; infinite when it is not.</summary>
    /// <param name="from">Where the ray starts.</param>
    /// <param name="way">Its unit direction.</param>
    public abstract double Reach(Vector from, Vector way);

    /// <summary>Points whose hull, seen from a place, holds the thing.</summary>
    /// <param name="from">The place.</param>
    public abstract IReadOnlyList<Vector> Hull(Vector from);

    /// <summary>Distance from a place to it, to its middle or to a corner. [mm]</summary>
    public double DistanceMm(Vector from) => Min((Middle - from).Length, Hull(from).Min(corner => (corner - from).Length));
}

/// <summary>A flat face.</summary>
public sealed class MirrorFace : MirrorThing
{
    private readonly FaceAxes _axes;
    private readonly (double Right, double Up)[] _outline;
    private readonly Vector[] _corners;
    private readonly double _farthest;
    private readonly bool _hasTwoSides;

    /// <summary>A face.</summary>
    /// <param name="face">Its place and outline; not a point.</param>
    /// <param name="hasTwoSides">Whether it shows from behind too.</param>
    /// <exception cref="ArgumentException">The face is a point.</exception>
    public MirrorFace(LightFace face, bool hasTwoSides = false)
    {
        ArgumentNullException.ThrowIfNull(face);
        if (face.IsPoint)
        {
            throw new ArgumentException("A point has no size that a ray could meet.", nameof(face));
        }

        (_axes, _hasTwoSides, _corners) = (face.Axes, hasTwoSides, face.Corners.ToArray());
        _outline = [.. _corners.Select(corner => ((corner - _axes.Centre).Dot(_axes.Right), (corner - _axes.Centre).Dot(_axes.Up)))];
        _farthest = _corners.Max(corner => (corner - _axes.Centre).Length);
    }

    /// <inheritdoc/>
    public override Vector Middle => _axes.Centre;

    /// <inheritdoc/>
    public override bool IsDarkFrom(Vector from) => !_hasTwoSides && (from - _axes.Centre).Dot(_axes.Facing) <= 0;

    /// <inheritdoc/>
    public override double Reach(Vector from, Vector way)
    {
        var reach = (_axes.Centre - from).Dot(_axes.Facing) / way.Dot(_axes.Facing);
        if (!(reach > 0) || double.IsInfinity(reach))
        {
            return double.PositiveInfinity;
        }

        var off = from + way * reach - _axes.Centre;
        return off.Dot(off) <= _farthest * _farthest && IsWithin(off.Dot(_axes.Right), off.Dot(_axes.Up)) ? reach : double.PositiveInfinity;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Vector> Hull(Vector from) => _corners;

    // Counts the edges to the right of the point.
    private bool IsWithin(double right, double up)
    {
        var within = false;
        var from = _outline[^1];
        foreach (var to in _outline)
        {
            if (to.Up > up != from.Up > up && right < (from.Right - to.Right) * (up - to.Up) / (from.Up - to.Up) + to.Right)
            {
                within = !within;
            }

            from = to;
        }

        return within;
    }
}

/// <summary>A ball.</summary>
/// <param name="centre">Its centre.</param>
/// <param name="diameterMm">Its diameter, above 0. [mm]</param>
public sealed class MirrorBall(Vector centre, double diameterMm) : MirrorThing
{
    /// <inheritdoc/>
    public override Vector Middle => centre;

    /// <inheritdoc/>
    public override double Reach(Vector from, Vector way)
    {
        var (to, radius) = (centre - from, diameterMm / 2);
        var near = to.Dot(way);
        var off = to - way * near;
        var root = radius * radius - off.Dot(off);
        if (root < 0)
        {
            return double.PositiveInfinity;
        }

        // Within the ball it is met at once.
        var reach = near - Sqrt(root);
        return reach > 0 ? reach : near + Sqrt(root) > 0 ? 0 : double.PositiveInfinity;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Vector> Hull(Vector from)
    {
        var distance = (centre - from).Length;
        var radius = diameterMm / 2;
        if (distance <= radius)
        {
            return [centre];
        }

        // The corners of the square about the disc as which it shows.
        var axes = new FaceAxes(centre, from);
        var half = radius / Sqrt(1 - radius * radius / (distance * distance));
        return [axes.At(-half, -half), axes.At(half, -half), axes.At(half, half), axes.At(-half, half)];
    }
}
