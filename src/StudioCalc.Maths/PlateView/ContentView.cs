using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How much of a vessel's content shows over its own rim, in closed form.</summary>
/// <remarks>
/// <code>
/// k = (zc - zq) / (zc - zr)      the rim, projected through the camera on the level of the content, is larger by k   (9)
/// s = (1 - k) c                  and its middle lies there; with a far camera k is 1 and s = -h t / tz               (10)
/// share = area of the content within the projected rim, over the area of the content                                 (11)
/// </code>
/// <para>All in the frame in which the rim has half widths of 1: then both outlines are circles, or both rectangles along the same
/// lines. c: camera; zc, zr, zq: heights of camera, rim and content; h = zr - zq; t: direction to the camera. A camera below
/// the rim sees nothing. Exact for walls that do not bulge inwards. Source: derived in docs/models/plate-view.md.</para>
/// </remarks>
public static class ContentView
{
    private const int Halvings = 50;
    private const double StepDeg = 0.5;

    /// <summary>Share of the content that shows over the vessel's own rim, from 0 to 1. (11)</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="camera">The camera.</param>
    public static double Share(ViewVessel vessel, ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(camera);
        if (ShowsByItself(vessel, camera) is { } share)
        {
            return share;
        }

        return Rim(vessel, camera) is not { } rim ? 0
            : vessel.Shape.IsRectangle
                ? Overlap(rim.X, rim.Scale, vessel.ContentShare) * Overlap(rim.Y, rim.Scale, vessel.ContentShare)
                : Circles.OverlapShare(Sqrt(rim.X * rim.X + rim.Y * rim.Y), rim.Scale, vessel.ContentShare);
    }

    /// <summary>The lowest elevations at which the middle, half and all of the content show, with the camera's azimuth, distance and
    /// aim; to half a degree where it shows over less. Null where it never does. [deg]</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="camera">The camera.</param>
    public static (double? CentreDeg, double? HalfDeg, double? WholeDeg) Elevations(ViewVessel vessel, ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(camera);
        return (
            Lowest(elevation => Margin(vessel, camera.From(camera.AzimuthDeg, elevation), 0) >= 0),
            Lowest(elevation => Share(vessel, camera.From(camera.AzimuthDeg, elevation)) >= 0.5),
            Lowest(elevation => Margin(vessel, camera.From(camera.AzimuthDeg, elevation), vessel.ContentShare) >= -1e-12));
    }

    // A camera that does not aim at the vessel may see it at some elevations and no more from straight above: so in steps first.
    private static double? Lowest(Func<double, bool> shows)
    {
        var high = 0.0;
        while (!shows(high))
        {
            high += StepDeg;
            if (high > 90)
            {
                return null;
            }
        }

        if (high == 0)
        {
            return high;
        }

        var low = high - StepDeg;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = shows(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    // How far the projected rim reaches beyond a concentric part of the content, in half widths of the rim.
    private static double Margin(ViewVessel vessel, ViewGeometry camera, double share)
    {
        if (ShowsByItself(vessel, camera) is { } shows)
        {
            return shows > 0 ? 1 : -1;
        }

        return Rim(vessel, camera) is not { } rim ? -1
            : rim.Scale - share - (vessel.Shape.IsRectangle ? Max(Abs(rim.X), Abs(rim.Y)) : Sqrt(rim.X * rim.X + rim.Y * rim.Y));
    }

    // Without a wall above the content everything shows to a camera over it.
    private static double? ShowsByItself(ViewVessel vessel, ViewGeometry camera)
    {
        if (!vessel.Shape.HasClearWalls && vessel.ContentBelowRimMm > 0)
        {
            return null;
        }

        var isOver = camera.DistanceMm is null ? camera.Towards.Z > 0 : vessel.Frame.Into(camera.Eye).Z > vessel.Shape.ContentHeightMm;
        return isOver ? 1 : 0;
    }

    private static (double X, double Y, double Scale)? Rim(ViewVessel vessel, ViewGeometry camera)
    {
        if (camera.DistanceMm is null)
        {
            var t = vessel.Frame.Direction(camera.Towards);
            return t.Z <= 0 ? null : (-t.X / t.Z * vessel.ContentBelowRimMm, -t.Y / t.Z * vessel.ContentBelowRimMm, 1);
        }

        var c = vessel.Frame.Into(camera.Eye);
        if (c.Z <= vessel.Shape.RimHeightMm)
        {
            return null;
        }

        var k = (c.Z - vessel.Shape.ContentHeightMm) / (c.Z - vessel.Shape.RimHeightMm);
        return ((1 - k) * c.X, (1 - k) * c.Y, k);
    }

    private static double Overlap(double middle, double half, double content) =>
        Max(0, Min(middle + half, content) - Max(middle - half, -content)) / (2 * content);
}
