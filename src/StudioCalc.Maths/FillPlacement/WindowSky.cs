using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How bright what is seen through a window is over its height.</summary>
public enum SkyKind
{
    /// <summary>Equally bright all over.</summary>
    Uniform,

    /// <summary>Three times as bright straight up as at the horizon.</summary>
    Overcast,

    /// <summary>No sky, but diffusion that fills the window: equally bright below the horizon, too.</summary>
    Diffusion,
}

/// <summary>What is seen through a window.</summary>
/// <remarks>
/// <code>
/// L(a) = 1                       uniform, diffusion     (50)
/// L(a) = (1 + 2 sin(a)) / 3      overcast               (51)
/// L(a) = q L(s)                  below the skyline s    (52)
/// Eh = pi,   Eh = 7 pi / 9       uniform, overcast      (53)
/// </code>
/// <para>L: luminance over that straight up. a: altitude over the horizon. q: luminance of what stands below the skyline over that
/// of the sky just above it; what lies below the horizon counts to it. Eh: light of the open sky on a horizontal surface.
/// Source: sky type 16 of CIE S 011 / ISO 15469 as documented in an open colour-science library, second-hand; (53) is its
/// integral.</para>
/// </remarks>
/// <param name="Kind">Its kind.</param>
/// <param name="SkylineDeg">Altitude of roofs and trees s, from 0, below 90. Not for diffusion. [deg]</param>
/// <param name="BelowSkylineShare">q. Not for diffusion.</param>
public sealed record WindowSky(SkyKind Kind, double SkylineDeg = 0, double BelowSkylineShare = 0)
{
    /// <summary>Light of the open sky on a horizontal surface Eh; null for diffusion, which is not outdoors.</summary>
    public double? OpenHorizontal => Kind switch
    {
        SkyKind.Uniform => PI,
        SkyKind.Overcast => 7 * PI / 9,
        _ => null,
    };

    /// <summary>Luminance of the sky at an altitude whose sine is given.</summary>
    public double Luminance(double sinAltitude) => Kind == SkyKind.Overcast ? (1 + 2 * sinAltitude) / 3 : 1;
}
