using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Outlines of faces: corners to the right of and above the centre, counter-clockwise seen from before the face.</summary>
public static class FaceOutline
{
    /// <summary>Corners that stand for a circle. The polygon has the disc's area; on the disc's axis its light is within
    /// 0.0001 stop from a twentieth of the diameter on.</summary>
    public const int DiscCorners = 128;

    /// <summary>The most corners that an outline may have.</summary>
    public const int MostCorners = DiscCorners;

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
    public static double Area(IReadOnlyList<(double Right, double Up)> corners)
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

    /// <summary>Whether an outline has an area and neither crosses nor touches itself.</summary>
    /// <param name="corners">The corners.</param>
    public static bool IsSimple((double Right, double Up)[] corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        var n = corners.Length;
        for (var i = 0; i < n; i++)
        {
            if (corners[i] == corners[(i + 1) % n] || FoldsBack(corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]))
            {
                return false;
            }

            for (var j = i + 2; j < n - (i == 0 ? 1 : 0); j++)
            {
                if (Meet(corners[i], corners[i + 1], corners[j], corners[(j + 1) % n]))
                {
                    return false;
                }
            }
        }

        return n >= 3 && Area(corners) != 0;
    }

    private static bool FoldsBack((double Right, double Up) a, (double Right, double Up) b, (double Right, double Up) c) =>
        Turn(a, b, c) == 0 && (a.Right - b.Right) * (c.Right - b.Right) + (a.Up - b.Up) * (c.Up - b.Up) > 0;

    private static bool Meet(
        (double Right, double Up) a, (double Right, double Up) b, (double Right, double Up) c, (double Right, double Up) d)
    {
        var (abc, abd, cda, cdb) = (Turn(a, b, c), Turn(a, b, d), Turn(c, d, a), Turn(c, d, b));
        return (abc * abd < 0 && cda * cdb < 0)
            || (abc == 0 && Between(a, b, c)) || (abd == 0 && Between(a, b, d))
            || (cda == 0 && Between(c, d, a)) || (cdb == 0 && Between(c, d, b));
    }

    private static double Turn((double Right, double Up) a, (double Right, double Up) b, (double Right, double Up) c) =>
        (b.Right - a.Right) * (c.Up - a.Up) - (b.Up - a.Up) * (c.Right - a.Right);

    private static bool Between((double Right, double Up) a, (double Right, double Up) b, (double Right, double Up) p) =>
        p.Right >= Min(a.Right, b.Right) && p.Right <= Max(a.Right, b.Right) && p.Up >= Min(a.Up, b.Up) && p.Up <= Max(a.Up, b.Up);

    private static (double Right, double Up)[] Regular(int corners, double circumradius) =>
    [
        .. Enumerable.Range(0, corners).Select(i =>
        {
            var (sin, cos) = SinCos(2 * PI * (i + 0.5) / corners - PI / 2);
            return (circumradius * cos, circumradius * sin);
        }),
    ];
}
