using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a camera sees of a scene, counted over a regular grid of sight lines.</summary>
/// <remarks>
/// <code>
/// V = seen / alone                     share of a component's outline that shows             (12)
/// T = seen points / points             of its upper surface, or of a vessel's content        (13)
/// u = sqrt(V (1 - V) / alone) + 1 / (2 alone)    how far V may be off                        (14)
/// </code>
/// <para>Sight lines lie in squares over the rectangle about each thing in the plane through the aim point, so that they count equal
/// areas of the picture; points lie in squares over the thing's outline from above. alone: lines that meet the thing when it
/// stands alone; seen: those on which nothing else comes first. u is the standard error of as many random lines and half a line
/// for the grid: a regular grid undercuts it in smooth cases, and it holds no bound. Everything is opaque but clear walls;
/// nothing bends light. Source: derived in docs/models/plate-view.md.</para>
/// </remarks>
public sealed class SceneView
{
    private const double Touching = 1e-9;
    private const double AtPoint = 1 - 1e-7;

    private readonly ViewScene _scene;
    private readonly ViewRectangle[] _rectangles;
    private readonly LocalLines[] _local;
    private readonly (double NearestMm, double FarthestMm)[] _depths;
    private readonly int[] _others;
    private readonly int _lines;
    private ViewGeometry _camera;

    /// <summary>A view of a scene.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="camera">The camera, before whose entrance pupil every thing lies.</param>
    /// <param name="lines">Sight lines along the longer side of the rectangle about each thing.</param>
    public SceneView(ViewScene scene, ViewGeometry camera, int lines)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(camera);
        (_scene, _camera, _lines) = (scene, camera, lines);
        _rectangles = new ViewRectangle[scene.Count];
        _local = new LocalLines[scene.Count];
        _depths = new (double, double)[scene.Count];
        _others = new int[scene.Count];
        Look(camera);
    }

    /// <summary>Looks at the same scene with another camera.</summary>
    /// <param name="camera">The camera, before whose entrance pupil every thing lies.</param>
    public void Look(ViewGeometry camera)
    {
        ArgumentNullException.ThrowIfNull(camera);
        _camera = camera;
        for (var i = 0; i < _scene.Count; i++)
        {
            _rectangles[i] = _scene.Rectangle(i, camera);
            _depths[i] = _scene.Depths(i, camera);
            _local[i] = _scene.Lines(i, camera);
        }
    }

    /// <summary>Depth of the nearest and the farthest part of a thing behind the plane through the aim point. [mm]</summary>
    /// <param name="thing">Its place: components first, then vessels.</param>
    public (double NearestMm, double FarthestMm) Depths(int thing) => _depths[thing];

    /// <summary>What shows of a component.</summary>
    /// <param name="solid">Its place among the components.</param>
    /// <param name="hidden">Gets how many lines each thing hides, components first; or empty.</param>
    public SolidView Outline(int solid, Span<int> hidden)
    {
        var box = _rectangles[solid];
        var (width, height) = (box.RightMm - box.LeftMm, box.HighMm - box.LowMm);
        var (columns, rows) = Cells(width, height);
        var (stepX, stepY) = (width / columns, height / rows);
        var others = Others(solid, box);
        ref readonly var own = ref _local[solid];
        var (halfWidth, halfHeight) = (_camera.FieldWidthMm / 2, _camera.FieldHeightMm / 2);
        var (alone, seen, seenInFrame, outside) = (0, 0, 0, 0);
        var (sumRight, sumUp) = (0.0, 0.0);
        for (var j = 0; j < rows; j++)
        {
            var y = box.LowMm + (j + 0.5) * stepY;
            for (var i = 0; i < columns; i++)
            {
                var x = box.LeftMm + (i + 0.5) * stepX;
                var t = own.FirstHit(x, y);
                if (double.IsPositiveInfinity(t))
                {
                    continue;
                }

                alone++;
                var isInFrame = Abs(x) <= halfWidth && Abs(y) <= halfHeight;
                outside += isInFrame ? 0 : 1;
                if (hidden.IsEmpty ? IsHidden(others, x, y, t * (1 - Touching)) : Hides(others, x, y, t * (1 - Touching), hidden))
                {
                    continue;
                }

                seen++;
                seenInFrame += isInFrame ? 1 : 0;
                (sumRight, sumUp) = (sumRight + x, sumUp + y);
            }
        }

        return new(alone, seen, seenInFrame, outside, sumRight, sumUp, stepX * stepY);
    }

    /// <summary>How many points of a component's upper surface show, of how many. (13)</summary>
    /// <param name="solid">Its place among the components.</param>
    public (int Seen, int Points) Top(int solid)
    {
        var own = _scene.Solids[solid];
        var others = Others(solid, _rectangles[solid]);
        var (seen, points) = (0, 0);
        for (var j = 0; j < _lines; j++)
        {
            for (var i = 0; i < _lines; i++)
            {
                if (own.Top(Middle(i), Middle(j)) is not { } point)
                {
                    continue;
                }

                points++;
                var (x, y, t) = _camera.SightOf(point);
                seen += _local[solid].FirstHit(x, y) >= t * AtPoint && !IsHidden(others, x, y, t * AtPoint) ? 1 : 0;
            }
        }

        return (seen, points);
    }

    /// <summary>How many points of a vessel's content show, of how many. (13)</summary>
    /// <param name="vessel">Its place among the vessels.</param>
    /// <param name="hidden">Gets how many points each thing hides, components first; its own near wall by the vessel itself.</param>
    public (int Seen, int Points) Content(int vessel, Span<int> hidden)
    {
        var thing = _scene.Solids.Count + vessel;
        var own = _scene.Vessels[vessel];
        var others = Others(thing, _rectangles[thing]);
        var (seen, points) = (0, 0);
        for (var j = 0; j < _lines; j++)
        {
            for (var i = 0; i < _lines; i++)
            {
                if (own.Content(Middle(i), Middle(j)) is not { } point)
                {
                    continue;
                }

                points++;
                var (x, y, t) = _camera.SightOf(point);
                var isWallBefore = own.HidesContent(_camera.To(point));
                var by = Nearest(others, x, y, isWallBefore ? _local[thing].FirstHit(x, y) : t * AtPoint);
                if (by < 0 && !isWallBefore)
                {
                    seen++;
                }
                else
                {
                    hidden[by < 0 ? thing : by]++;
                }
            }
        }

        return (seen, points);
    }

    private double Middle(int cell) => (2 * cell + 1.0) / _lines - 1;

    private (int Columns, int Rows) Cells(double width, double height)
    {
        var step = Max(width, height) / _lines;
        return (Max(4, (int)Ceiling(width / step - 1e-9)), Max(4, (int)Ceiling(height / step - 1e-9)));
    }

    // What may stand before a thing: its rectangle meets the thing's, and some of it is nearer than the thing's farthest part.
    private ReadOnlySpan<int> Others(int thing, in ViewRectangle box)
    {
        var count = 0;
        for (var i = 0; i < _others.Length; i++)
        {
            if (i != thing && _depths[i].NearestMm < _depths[thing].FarthestMm && _rectangles[i].Meets(box))
            {
                _others[count++] = i;
            }
        }

        return _others.AsSpan(0, count);
    }

    private bool IsHidden(ReadOnlySpan<int> others, double x, double y, double before)
    {
        foreach (var other in others)
        {
            if (_rectangles[other].Holds(x, y) && _local[other].FirstHit(x, y) < before)
            {
                return true;
            }
        }

        return false;
    }

    private bool Hides(ReadOnlySpan<int> others, double x, double y, double before, Span<int> hidden)
    {
        var by = Nearest(others, x, y, before);
        if (by >= 0)
        {
            hidden[by]++;
        }

        return by >= 0;
    }

    private int Nearest(ReadOnlySpan<int> others, double x, double y, double before)
    {
        var by = -1;
        foreach (var other in others)
        {
            if (_rectangles[other].Holds(x, y) && _local[other].FirstHit(x, y) is var t && t < before)
            {
                (before, by) = (t, other);
            }
        }

        return by;
    }
}
