using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Outlines of faces: corners to the right of and above the centre, counter-clockwise seen from before the face.</summary>
public static class FaceOutline
{
    /// <summary>Corners that stand for a circle. The polygon has the disc's area; on the disc's axis its light is within
    /// 0.0001 stop from a twentieth of the diameter on.</summary>
    public const int DiscCorners = 128;

    /// <summary>A polygon with the area of a disc.</summary>
    /// <param name="diameterMm">The disc's diameter. [mm]</param>
    public static (double Right, double Up)[] Disc(double diameterMm)
    {
        var area = PI / 4 * diameterMm * diameterMm;
        var circumradius = Sqrt(2 * area / (DiscCorners * Sin(2 * PI / DiscCorners)));
        return Regular(DiscCorners, circumradius);
    }

    /// <summary>A rectangle.</summary>
    /// <param name="widthMm">Its width. [mm]</param>
    /// <param name="heightMm">Its height. [mm]</param>
    public static (double Right, double Up)[] Rectangle(double widthMm, double heightMm)
    {
        var (right, up) = (widthMm / 2, heightMm / 2);
        return [(-right, -up), (right, -up), (right, up), (-right, up)];
    }

    /// <summary>A regular polygon with a side at the bottom.</summary>
    /// <param name="sides">Number of sides, 3 or more.</param>
    /// <param name="acrossFlatsMm">Twice the distance from the centre to a side. [mm]</param>
    public static (double Right, double Up)[] Polygon(int sides, double acrossFlatsMm) =>
        Regular(sides, acrossFlatsMm / 2 / Cos(PI / sides));

    /// <summary>Corners in an order that the light routines need, from corners in either order.</summary>
    /// <param name="corners">The corners.</param>
    public static (double Right, double Up)[] CounterClockwise((double Right, double Up)[] corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        return Area(corners) >= 0 ? corners : [.. corners.Reverse()];
    }

    /// <summary>Area within an outline: negative where the corners run clockwise.</summary>
    /// <param name="corners">The corners.</param>
    public static double Area((double Right, double Up)[] corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        var sum = 0.0;
        var from = corners[^1];
        foreach (var to in corners)
        {
            sum += from.Right * to.Up - to.Right * from.Up;
            from = to;
        }

        return sum / 2;
    }

    private static (double Right, double Up)[] Regular(int corners, double circumradius) =>
    [
        .. Enumerable.Range(0, corners).Select(i =>
        {
            var (sin, cos) = SinCos(2 * PI * (i + 0.5) / corners - PI / 2);
            return (circumradius * cos, circumradius * sin);
        }),
    ];
}
