using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A frame on the table in which a thing's outline has half widths of 1.</summary>
/// <remarks>x and y are counted in half widths and half depths of the thing, z in mm over its base; straight lines stay straight, and
/// a place along a line of sight keeps its t.</remarks>
public readonly record struct TurnedFrame
{
    private readonly double _cos;
    private readonly double _sin;

    /// <summary>A frame on a thing.</summary>
    /// <param name="base">Middle of its base. [mm]</param>
    /// <param name="turnDeg">Turn, counter-clockwise seen from above. [deg]</param>
    /// <param name="widthMm">Its width, positive. [mm]</param>
    /// <param name="depthMm">Its depth, positive. [mm]</param>
    public TurnedFrame(Vector @base, double turnDeg, double widthMm, double depthMm)
    {
        (_sin, _cos) = SinCos(turnDeg * PI / 180);
        (Base, HalfWidth, HalfDepth) = (@base, widthMm / 2, depthMm / 2);
    }

    /// <summary>Middle of the base.</summary>
    public Vector Base { get; }

    /// <summary>Half the width. [mm]</summary>
    public double HalfWidth { get; }

    /// <summary>Half the depth. [mm]</summary>
    public double HalfDepth { get; }

    /// <summary>A point of the set in the frame.</summary>
    public Vector Into(Vector point) => Direction(point - Base);

    /// <summary>A direction of the set in the frame.</summary>
    public Vector Direction(Vector along) => new(
        (along.X * _cos + along.Y * _sin) / HalfWidth, (along.Y * _cos - along.X * _sin) / HalfDepth, along.Z);

    /// <summary>A line of sight in the frame.</summary>
    public SightLine Into(in SightLine line) => new(Into(line.From), Direction(line.Along));

    /// <summary>A point of the frame on the set.</summary>
    public Vector OnSet(double x, double y, double z)
    {
        var (along, across) = (x * HalfWidth, y * HalfDepth);
        return Base + new Vector(along * _cos - across * _sin, along * _sin + across * _cos, z);
    }

    /// <summary>How far a direction of the set reaches per half width, per half depth and per mm of height.</summary>
    public Vector Weights(Vector along) => new(
        (along.X * _cos + along.Y * _sin) * HalfWidth, (along.Y * _cos - along.X * _sin) * HalfDepth, along.Z);
}
