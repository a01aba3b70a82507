using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What stands on the table: components as solids, and vessels. Things are counted components first.</summary>
/// <param name="Solids">The components.</param>
/// <param name="Vessels">Plates, bowls and glasses.</param>
public sealed record ViewScene(IReadOnlyList<ViewSolid> Solids, IReadOnlyList<ViewVessel> Vessels)
{
    private const double LeastShareBefore = 0.02;

    /// <summary>Components and vessels together.</summary>
    public int Count => Solids.Count + Vessels.Count;

    /// <summary>The t at which a line of sight first meets a thing.</summary>
    /// <param name="thing">Its place: components first, then vessels.</param>
    /// <param name="line">The line.</param>
    public double FirstHit(int thing, in SightLine line) =>
        thing < Solids.Count ? Solids[thing].FirstHit(line) : Vessels[thing - Solids.Count].FirstHit(line);

    internal LocalLines Lines(int thing, ViewGeometry camera) =>
        thing < Solids.Count ? new(Solids[thing], camera) : new(Vessels[thing - Solids.Count], camera);

    /// <summary>The corners of the upright box about a thing.</summary>
    /// <param name="thing">Its place: components first, then vessels.</param>
    /// <param name="corners">Eight places to fill.</param>
    public void Corners(int thing, Span<Vector> corners)
    {
        if (thing < Solids.Count)
        {
            Solids[thing].Corners(corners);
        }
        else
        {
            Vessels[thing - Solids.Count].Corners(corners);
        }
    }

    /// <summary>Whether all of a thing lies before the entrance pupil, by a fiftieth of the camera's distance at least: what comes
    /// closer fills any frame.</summary>
    /// <param name="thing">Its place: components first, then vessels.</param>
    /// <param name="camera">The camera.</param>
    public bool LiesBefore(int thing, ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(camera);
        if (camera.DistanceMm is not { } distance)
        {
            return true;
        }

        Span<Vector> corners = stackalloc Vector[8];
        Corners(thing, corners);
        foreach (var corner in corners)
        {
            if (camera.DepthOf(corner) <= -distance * (1 - LeastShareBefore))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Depth of the nearest and the farthest part of a thing behind the plane through the aim point. [mm]</summary>
    /// <param name="thing">Its place: components first, then vessels.</param>
    /// <param name="camera">The camera.</param>
    public (double NearestMm, double FarthestMm) Depths(int thing, ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(camera);
        var (near, far) = thing < Solids.Count
            ? (Solids[thing].Reach(camera.Towards), Solids[thing].Reach(-camera.Towards))
            : (Vessels[thing - Solids.Count].Reach(camera.Towards), Vessels[thing - Solids.Count].Reach(-camera.Towards));
        var aim = camera.Aim.Dot(camera.Towards);
        return (aim - near, far + aim);
    }

    /// <summary>The rectangle about a thing in the plane through the aim point.</summary>
    /// <param name="thing">Its place: components first, then vessels.</param>
    /// <param name="camera">The camera, before which the thing lies as a whole.</param>
    public ViewRectangle Rectangle(int thing, ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(camera);
        Span<Vector> corners = stackalloc Vector[8];
        Corners(thing, corners);
        var (left, right, low, high) = (double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity);
        foreach (var corner in corners)
        {
            var (x, y) = camera.Project(corner);
            (left, right, low, high) = (Min(left, x), Max(right, x), Min(low, y), Max(high, y));
        }

        return new(left, right, low, high);
    }

    /// <summary>The scene with one component in another's place.</summary>
    /// <param name="solid">Its place among the components.</param>
    /// <param name="other">What stands there instead.</param>
    public ViewScene With(int solid, ViewSolid other)
    {
        ViewSolid[] solids = [.. Solids];
        solids[solid] = other;
        return this with { Solids = solids };
    }

    /// <summary>The scene with the plate turned about the origin.</summary>
    /// <param name="turnDeg">Turn, counter-clockwise seen from above. [deg]</param>
    /// <param name="stays">Which things stay: components first, then vessels.</param>
    public ViewScene Turned(double turnDeg, IReadOnlyList<bool> stays)
    {
        ArgumentNullException.ThrowIfNull(stays);
        var (sin, cos) = SinCos(turnDeg * PI / 180);
        Vector Turn(Vector place) => new(place.X * cos - place.Y * sin, place.X * sin + place.Y * cos, place.Z);
        return new(
            [.. Solids.Select((solid, i) => stays[i] ? solid : solid.At(Turn(solid.Base), solid.TurnDeg + turnDeg))],
            [.. Vessels.Select((vessel, i) => stays[Solids.Count + i] ? vessel : vessel.At(Turn(vessel.Base), vessel.TurnDeg + turnDeg))]);
    }
}

/// <summary>A rectangle in the plane through the aim point.</summary>
/// <param name="LeftMm">Left edge, from the aim point to the right. [mm]</param>
/// <param name="RightMm">Right edge. [mm]</param>
/// <param name="LowMm">Lower edge, from the aim point upwards in the picture. [mm]</param>
/// <param name="HighMm">Upper edge. [mm]</param>
public readonly record struct ViewRectangle(double LeftMm, double RightMm, double LowMm, double HighMm)
{
    /// <summary>Whether two rectangles share any place.</summary>
    public bool Meets(in ViewRectangle other) =>
        LeftMm < other.RightMm && other.LeftMm < RightMm && LowMm < other.HighMm && other.LowMm < HighMm;

    /// <summary>Whether a place lies in it.</summary>
    public bool Holds(double x, double y) => x >= LeftMm && x <= RightMm && y >= LowMm && y <= HighMm;
}
