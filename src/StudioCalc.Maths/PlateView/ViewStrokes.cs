using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The lines in which a camera sees a scene: outlines, edges, rims and the edges of contents, in the plane through the aim
/// point.</summary>
/// <remarks>The outline of a solid is the hull of places on its surface as they are seen; edges that it hides itself are left out. A
/// stretch of line is hidden where another thing is met before its middle.</remarks>
public static class ViewStrokes
{
    private const int Round = 72;
    private const int Levels = 18;
    private const int Pieces = 12;
    private const double Before = 1 - 1e-6;
    private const double AboveMm = 1e-3;

    // Straight pieces of curves lie within the body, at its sides by up to this share of its depth.
    private const double Inside = 0.08;
    private const double Touching = 1e-3;

    private static readonly (double X, double Y)[] Corners = [(-1, -1), (1, -1), (1, 1), (-1, 1), (-1, -1)];

    /// <summary>The lines of all things, farthest things first.</summary>
    /// <param name="scene">The scene, of which every thing lies before the entrance pupil.</param>
    /// <param name="camera">The camera.</param>
    public static IReadOnlyList<ViewStroke> Of(ViewScene scene, ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(camera);
        var strokes = new List<ViewStroke>();
        foreach (var thing in Enumerable.Range(0, scene.Count).OrderByDescending(i => scene.Depths(i, camera).FarthestMm))
        {
            if (thing < scene.Solids.Count)
            {
                Draw(strokes, scene, camera, thing, scene.Solids[thing]);
            }
            else
            {
                Draw(strokes, scene, camera, thing, scene.Vessels[thing - scene.Solids.Count]);
            }
        }

        return strokes;
    }

    private static void Draw(List<ViewStroke> strokes, ViewScene scene, ViewGeometry camera, int thing, ViewSolid solid)
    {
        Split(strokes, scene, camera, thing, Hull(camera, [.. Surface(solid)]), OwnHides.Nothing);
        if (solid.Kind == SolidKind.Box)
        {
            var corners = new Vector[8];
            solid.Corners(corners);
            foreach (var (from, to) in (ReadOnlySpan<(int, int)>)[(0, 1), (2, 3), (4, 5), (6, 7), (0, 2), (1, 3), (4, 6), (5, 7), (0, 4), (1, 5), (2, 6), (3, 7)])
            {
                Split(strokes, scene, camera, thing, [corners[from], corners[to]], OwnHides.LeavesOut);
            }
        }
        else if (solid.Kind == SolidKind.ConeFrustum && solid.TopShare > 0)
        {
            Split(strokes, scene, camera, thing, Ring(solid, solid.HeightMm), OwnHides.LeavesOut);
        }

        // Where it rises out of the content in which it is sunk.
        foreach (var vessel in scene.Vessels)
        {
            var above = vessel.Base.Z + vessel.Shape.ContentHeightMm - solid.Base.Z + AboveMm;
            if (above > AboveMm && above < solid.HeightMm && vessel.IsOverContent(solid.Base))
            {
                Split(strokes, scene, camera, thing, Ring(solid, above), OwnHides.LeavesOut);
            }
        }
    }

    private static List<Vector> Ring(ViewSolid solid, double height)
    {
        var share = solid.WidthAt(height);
        return solid.Kind == SolidKind.Box
            ? [.. Corners.Select(at => solid.OnSet(at.X, at.Y, height))]
            : Circle((x, y) => solid.OnSet(x * share, y * share, height));
    }

    private static void Draw(List<ViewStroke> strokes, ViewScene scene, ViewGeometry camera, int thing, ViewVessel vessel)
    {
        var shape = vessel.Shape;
        List<Vector> Ring(double share, double height) => shape.IsRectangle
            ? [.. Corners.Select(at => vessel.OnSet(at.X * share, at.Y * share, height))]
            : Circle((x, y) => vessel.OnSet(x * share, y * share, height));
        var (rim, floor) = (Ring(1, shape.RimHeightMm), Ring(shape.FloorShare, shape.FloorHeightMm));
        if (shape.FloorHeightMm > 0)
        {
            Split(strokes, scene, camera, thing, Hull(camera, [.. floor, .. Ring(shape.FloorShare, 0)]), OwnHides.LeavesOut);
        }

        Split(strokes, scene, camera, thing, Hull(camera, [.. rim, .. floor]), OwnHides.LeavesOut);
        Split(strokes, scene, camera, thing, rim, OwnHides.LeavesOut);
        Split(strokes, scene, camera, thing, Ring(vessel.ContentShare, shape.ContentHeightMm), OwnHides.Hides);
    }

    private static List<Vector> Circle(Func<double, double, Vector> at) => [.. Enumerable.Range(0, Round + 1).Select(i =>
    {
        var (sin, cos) = SinCos(2 * PI * i / Round);
        return at(cos, sin);
    })];

    private static IEnumerable<Vector> Surface(ViewSolid solid)
    {
        switch (solid.Kind)
        {
            case SolidKind.Box:
                var corners = new Vector[8];
                solid.Corners(corners);
                return corners;
            case SolidKind.ConeFrustum:
                return [.. Ring(solid, 0), .. Ring(solid, solid.HeightMm)];
            default:
                return Enumerable.Range(0, Levels + 1).SelectMany(level => Ring(solid, solid.Kind == SolidKind.Ellipsoid
                    ? (1 - Cos(PI * level / Levels)) / 2 * solid.HeightMm
                    : Sin(PI / 2 * level / Levels) * solid.HeightMm));
        }
    }

    // The places whose pictures make the convex hull, in order round it, the first one again at the end.
    private static List<Vector> Hull(ViewGeometry camera, List<Vector> places)
    {
        var seen = places.Select(place => (camera.Project(place), place)).OrderBy(at => at.Item1.RightMm).ThenBy(at => at.Item1.UpMm).ToList();
        var hull = new List<((double X, double Y) At, Vector Place)>();
        foreach (var side in (IEnumerable<IEnumerable<((double X, double Y) At, Vector Place)>>)[seen, Enumerable.Reverse(seen)])
        {
            var start = hull.Count;
            foreach (var next in side)
            {
                while (hull.Count >= start + 2 && Turn(hull[^2].At, hull[^1].At, next.At) <= 0)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(next);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        return [.. hull.Select(at => at.Place), hull[0].Place];
    }

    private static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
        (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);

    private static void Split(List<ViewStroke> strokes, ViewScene scene, ViewGeometry camera, int thing, List<Vector> line, OwnHides own)
    {
        var run = new List<(double, double)>();
        bool? hidden = null;
        for (var i = 1; i < line.Count; i++)
        {
            var pieces = line.Count > Pieces * 2 ? 1 : Pieces * 2;
            for (var k = 0; k < pieces; k++)
            {
                var (from, to) = (Between(line[i - 1], line[i], k, pieces), Between(line[i - 1], line[i], k + 1, pieces));
                var middle = (from + to) * 0.5;
                var isOwn = own != OwnHides.Nothing && HidesItself(scene, camera, thing, middle, own);
                bool? state = isOwn && own == OwnHides.LeavesOut ? null : isOwn || IsHidden(scene, camera, thing, middle);
                if (state != hidden)
                {
                    End();
                    hidden = state;
                }

                if (state is null)
                {
                    continue;
                }

                if (run.Count == 0)
                {
                    run.Add(camera.Project(from));
                }

                run.Add(camera.Project(to));
            }
        }

        End();

        void End()
        {
            if (run.Count > 1)
            {
                strokes.Add(new(thing, hidden!.Value, [.. run]));
            }

            run.Clear();
        }
    }

    private static Vector Between(Vector from, Vector to, int piece, int pieces) => from + (to - from) * ((double)piece / pieces);

    private static bool IsHidden(ViewScene scene, ViewGeometry camera, int thing, Vector place)
    {
        var line = camera.To(place);
        for (var other = 0; other < scene.Count; other++)
        {
            if (other != thing && scene.FirstHit(other, line) < Before)
            {
                return true;
            }
        }

        return false;
    }

    private static bool HidesItself(ViewScene scene, ViewGeometry camera, int thing, Vector place, OwnHides own)
    {
        var line = camera.To(place);
        if (own == OwnHides.Hides)
        {
            return scene.Vessels[thing - scene.Solids.Count].HidesContent(line);
        }

        var (near, far) = scene.Depths(thing, camera);
        var within = HasStraightEdges(scene, thing) ? Touching : Inside;
        return (1 - scene.FirstHit(thing, line)) * line.Along.Length > within * (far - near);
    }

    private static bool HasStraightEdges(ViewScene scene, int thing) => thing < scene.Solids.Count
        ? scene.Solids[thing].Kind == SolidKind.Box
        : scene.Vessels[thing - scene.Solids.Count].Shape.IsRectangle;

    private enum OwnHides
    {
        Nothing,
        LeavesOut,
        Hides,
    }
}

/// <summary>A line as it is seen.</summary>
/// <param name="Thing">Whose line it is: components first, then vessels.</param>
/// <param name="IsHidden">Whether something stands before it.</param>
/// <param name="Places">Where it runs, in the plane through the aim point: to the right and upwards. [mm]</param>
public sealed record ViewStroke(int Thing, bool IsHidden, IReadOnlyList<(double RightMm, double UpMm)> Places);
