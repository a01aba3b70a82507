using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Something that hides the sky up to an elevation, between two bearings.</summary>
/// <param name="FromBearingDeg">Where it begins. [deg]</param>
/// <param name="ToBearingDeg">Where it ends, going over east; it may pass north. [deg]</param>
/// <param name="ElevationDeg">Up to where it hides the sky. [deg]</param>
public readonly record struct SunObstruction(double FromBearingDeg, double ToBearingDeg, double ElevationDeg)
{
    /// <summary>Whether it hides the sun.</summary>
    public bool Hides(SunPosition sun) => sun.ElevationDeg <= ElevationDeg
        && (FromBearingDeg <= ToBearingDeg
            ? sun.BearingDeg >= FromBearingDeg && sun.BearingDeg <= ToBearingDeg
            : sun.BearingDeg >= FromBearingDeg || sun.BearingDeg <= ToBearingDeg);
}

/// <summary>Whether the sun's direct beam reaches a plate through a window.</summary>
/// <remarks>
/// <code>
/// f  = B - W                                                                   (70)
/// px = x - z sin(f) / tan(h)          py = D - z cos(f) / tan(h)               (71)
/// </code>
/// <para>B: bearing of the sun. W: bearing that the window faces. h: its elevation. x, z: a corner of the glass, from the plate's middle
/// at the distance D. px, py: where its ray meets the table: the four corners make the patch of sun, of which what lies below the
/// table is cut away. The beam reaches the plate where patch and disc meet. The sun is a point, its centre; the wall has no depth. Source: plane geometry.</para>
/// </remarks>
/// <param name="Opening">The glass.</param>
/// <param name="BearingDeg">Bearing that it faces, outwards. [deg]</param>
/// <param name="DistanceMm">Distance of the plate's middle from the glass, above 0. [mm]</param>
/// <param name="RightMm">The plate's middle to the right of the window's, seen facing it. [mm]</param>
/// <param name="PlateDiameterMm">Diameter of the plate, above 0. [mm]</param>
/// <param name="SkylineDeg">Up to where all is hidden. [deg]</param>
/// <param name="Obstructions">What else hides the sun.</param>
public sealed record SunBeam(
    WindowOpening Opening,
    double BearingDeg,
    double DistanceMm,
    double RightMm,
    double PlateDiameterMm,
    double SkylineDeg,
    IReadOnlyList<SunObstruction> Obstructions)
{
    /// <summary>Whether any part of the plate is in the sun.</summary>
    public bool Reaches(SunPosition sun)
    {
        if (sun.ElevationDeg <= Max(0, SkylineDeg))
        {
            return false;
        }

        foreach (var obstruction in Obstructions)
        {
            if (obstruction.Hides(sun))
            {
                return false;
            }
        }

        var (sin, cos) = SinCos((sun.BearingDeg - BearingDeg) * PI / 180);
        var tan = Tan(sun.ElevationDeg * PI / 180);
        var (low, high) = (Max(0, Opening.SillOverTableMm), Opening.HeadOverMm(0));
        if (cos <= 0 || high <= low)
        {
            return false;
        }

        // For each height over the table the ray moves by this to the right and away from the window.
        var (right, away) = (-sin / tan, cos / tan);
        var (left, width) = (-Opening.WidthMm / 2 - RightMm, Opening.WidthMm);
        return Touches(
            (left + low * right, DistanceMm - low * away),
            (left + width + low * right, DistanceMm - low * away),
            (left + width + high * right, DistanceMm - high * away),
            (left + high * right, DistanceMm - high * away));
    }

    // Whether a disc about the origin meets a four-cornered area; away is above 0, so the corners run clockwise.
    private bool Touches((double X, double Y) a, (double X, double Y) b, (double X, double Y) c, (double X, double Y) d)
    {
        var radius = PlateDiameterMm / 2;
        return (IsRight(a, b) && IsRight(b, c) && IsRight(c, d) && IsRight(d, a))
            || DistanceTo(a, b) <= radius || DistanceTo(b, c) <= radius || DistanceTo(c, d) <= radius || DistanceTo(d, a) <= radius;
    }

    private static bool IsRight((double X, double Y) a, (double X, double Y) b) => (b.X - a.X) * -a.Y - (b.Y - a.Y) * -a.X <= 0;

    private static double DistanceTo((double X, double Y) a, (double X, double Y) b)
    {
        var (x, y) = (b.X - a.X, b.Y - a.Y);
        var square = x * x + y * y;
        var share = square == 0 ? 0 : Clamp(-(a.X * x + a.Y * y) / square, 0, 1);
        var (dx, dy) = (a.X + share * x, a.Y + share * y);
        return Sqrt(dx * dx + dy * dy);
    }
}
