using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The law of mirrors.</summary>
/// <remarks>
/// <code>
/// m = v - 2 (v . n) n                                     (33)
/// E = asin mz       Z = atan2(mx, -my)                    (34)
/// </code>
/// <para>v: unit direction of the ray that comes in. n: unit normal. m: unit direction in which it goes on. E, Z: its elevation and
/// azimuth. The ray runs from the camera to what it sees; light runs the other way along it. Source: law of reflection.</para>
/// </remarks>
public static class MirrorLaw
{
    private const double Degrees = 180 / PI;

    /// <summary>The direction in which a ray goes on m. (33)</summary>
    /// <param name="way">Its direction v.</param>
    /// <param name="normal">The unit normal n.</param>
    public static Vector Reflect(Vector way, Vector normal) => way - normal * (2 * way.Dot(normal));

    /// <summary>The same, followed step by step, with its elevation and azimuth. (33), (34)</summary>
    /// <param name="way">Its unit direction v.</param>
    /// <param name="normal">The unit normal n.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerPrefix">Path of the message that holds the direction.</param>
    /// <returns>Cosine between ray and normal, azimuth and elevation. [deg]</returns>
    public static (double Cosine, double AzimuthDeg, double ElevationDeg) Follow<TTrail>(
        Vector way, Vector normal, ref TTrail trail, string answerPrefix)
        where TTrail : struct, ITrail
    {
        var vx = trail.Given("vx", way.X, "", "direction from the camera, to the right");
        var vy = trail.Given("vy", way.Y, "", "direction from the camera, away from the front");
        var vz = trail.Given("vz", way.Z, "", "direction from the camera, up");
        var nx = trail.Given("nx", normal.X, "", "normal, to the right");
        var ny = trail.Given("ny", normal.Y, "", "normal, away from the front");
        var nz = trail.Given("nz", normal.Z, "", "normal, up");
        var c = trail.Let("c", Max(0, Min(1, -vx * nx - vy * ny - vz * nz)), "", "cosine between ray and normal");
        var mx = trail.Let("mx", vx + 2 * c * nx, "", "plate view (33)");
        var my = trail.Let("my", vy + 2 * c * ny, "", "plate view (33)");
        var mz = trail.Let("mz", vz + 2 * c * nz, "", "plate view (33)");
        var degrees = trail.Given("degrees", Degrees, "deg", "degrees to a radian");
        var elevation = trail.Let("E", Asin(Max(-1, Min(1, mz))) * degrees, "deg", "plate view (34)", answerPrefix + "mirror_elevation_deg");
        return (c, trail.Given("Z", AzimuthDeg(new(mx, my, mz)), "deg", "plate view (34)", answerPrefix + "mirror_azimuth_deg"), elevation);
    }

    /// <summary>Azimuth of a direction Z; 0 for one that goes straight up or down. (34) [deg]</summary>
    public static double AzimuthDeg(Vector way) => Abs(way.X) + Abs(way.Y) < 1e-12 ? 0 : Atan2(way.X, -way.Y) * Degrees;

    /// <summary>Elevation of a unit direction E. (34) [deg]</summary>
    public static double ElevationDeg(Vector way) => Asin(Max(-1, Min(1, way.Z))) * Degrees;
}
