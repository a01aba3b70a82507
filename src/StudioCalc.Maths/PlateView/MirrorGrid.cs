using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Sight lines over a glossy surface, closer where something else begins to mirror.</summary>
internal sealed class MirrorGrid
{
    private const int Parts = 4;
    private const int MostZooms = 8;
    private const int EnoughLines = 16;
    private const int Beside = -2;

    private readonly MirrorShape _shape;
    private readonly IReadOnlyList<MirrorThing> _things;
    private readonly Vector _camera;
    private readonly double[] _edges;

    public MirrorGrid(MirrorShape shape, IReadOnlyList<MirrorThing> things, Vector camera, int lines, CancellationToken stop)
    {
        (_shape, _things, _camera, _edges, CellSize) = (shape, things, camera, new double[things.Count], 1.0 / lines);
        if (shape.WaveDeg > 0)
        {
            Wave(lines, stop);
            return;
        }

        Divide(lines, stop);
        for (var thing = 0; thing < things.Count; thing++)
        {
            stop.ThrowIfCancellationRequested();
            Zoom(thing);
        }
    }

    /// <summary>The sight lines.</summary>
    public List<MirrorLine> Lines { get; } = [];

    /// <summary>Size of a cell that is not divided.</summary>
    public double CellSize { get; }

    /// <summary>Cells over the surface that the camera sees, before any was divided.</summary>
    public int Cells { get; private set; }

    /// <summary>The weight of the cells through which the edge of a thing's reflection runs, as far as half of each goes.</summary>
    public double EdgeWeight(int thing) => _edges[thing];

    /// <summary>The sight line at a place of the grid, or just beside the surface.</summary>
    public MirrorLine? Around(double across, double along) =>
        _shape.Around(_camera, across, along) is { } point ? Trace(across, along, 0, point, point.Normal, 0) : null;

    private MirrorLine? At(double across, double along, double size) =>
        _shape.At(_camera, across, along) is { } point ? Trace(across, along, size, point, point.Normal, point.Weight * size * size) : null;

    private MirrorLine Trace(double across, double along, double size, MirrorPoint point, Vector normal, double weight)
    {
        var sight = (point.Place - _camera).Unit();
        var way = MirrorLaw.Reflect(sight, normal);
        var (thing, reach) = (-1, double.PositiveInfinity);

        // A slope that turns from the camera, or sends the ray into the surface, mirrors nothing.
        if (sight.Dot(normal) < 0 && way.Dot(point.Normal) > 0)
        {
            for (var i = 0; i < _things.Count; i++)
            {
                if (_things[i].Reach(point.Place, way) is var one && one < reach)
                {
                    (thing, reach) = (_things[i].IsDarkFrom(point.Place) ? -1 : i, one);
                }
            }
        }

        return new(across, along, size, point, way, weight, thing, reach);
    }

    private void Wave(int lines, CancellationToken stop)
    {
        for (var i = 0; i < lines * lines; i++)
        {
            if (i % lines == 0)
            {
                stop.ThrowIfCancellationRequested();
            }

            var (across, along, size) = ((i % lines + 0.5) / lines, (i / lines + 0.5) / lines, CellSize);
            var seen = _shape.At(_camera, across, along);
            Cells += seen is null ? 0 : 1;
            for (var slope = 0; seen is { } point && slope < MirrorView.Slopes; slope++)
            {
                Lines.Add(Trace(across, along, size, point, MirrorSlopes.Tilted(point.Normal, _shape.WaveDeg, slope, i), point.Weight * size * size / MirrorView.Slopes));
            }
        }
    }

    private void Divide(int lines, CancellationToken stop)
    {
        var cells = new MirrorLine?[lines * lines];
        for (var i = 0; i < cells.Length; i++)
        {
            if (i % lines == 0)
            {
                stop.ThrowIfCancellationRequested();
            }

            cells[i] = At((i % lines + 0.5) / lines, (i / lines + 0.5) / lines, CellSize);
        }

        Cells = cells.Count(cell => cell is not null);
        for (var i = 0; i < cells.Length; i++)
        {
            var (column, row) = (i % lines, i / lines);
            if (column == 0 || row == 0 || column == lines - 1 || row == lines - 1
                || Differs(i, i - 1) || Differs(i, i + 1) || Differs(i, i - lines) || Differs(i, i + lines))
            {
                Split((column + 0.5) / lines, (row + 0.5) / lines, CellSize);
            }
            else if (cells[i] is { } line)
            {
                Lines.Add(line);
            }
        }

        bool Differs(int one, int other) => (cells[one]?.Thing ?? Beside) != (cells[other]?.Thing ?? Beside);
    }

    // Divides a cell into parts, and notes the edges that run between them.
    private void Split(double across, double along, double size)
    {
        var parts = new MirrorLine?[Parts * Parts];
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] = At(
                across + ((i % Parts + 0.5) / Parts - 0.5) * size, along + ((i / Parts + 0.5) / Parts - 0.5) * size, size / Parts);
            if (parts[i] is { } line)
            {
                Lines.Add(line);
            }
        }

        for (var i = 0; i < parts.Length; i++)
        {
            Note(parts[i], i % Parts < Parts - 1 ? parts[i + 1] : parts[i]);
            Note(parts[i], i / Parts < Parts - 1 ? parts[i + Parts] : parts[i]);
        }
    }

    // Of four lines between and beside four parts three lie inside the cell: hence 4/3 of half a part.
    private void Note(MirrorLine? one, MirrorLine? other)
    {
        var (from, to) = (one?.Thing ?? Beside, other?.Thing ?? Beside);
        if (from == to)
        {
            return;
        }

        var weight = Max(one?.Weight ?? 0, other?.Weight ?? 0) * 2 / 3;
        foreach (var thing in (ReadOnlySpan<int>)[from, to])
        {
            if (thing >= 0)
            {
                _edges[thing] += weight;
            }
        }
    }

    // A thing too small for the grid is looked for where a sight line passes it closest, until some meet it.
    private void Zoom(int thing)
    {
        if (Lines.Exists(line => line.Thing == thing))
        {
            return;
        }

        for (var zoom = 0; zoom < MostZooms; zoom++)
        {
            var met = Lines.FindAll(line => line.Thing == thing);
            if (met.Count >= EnoughLines || (met.Count > 0 ? met[met.Count / 2] : Closest(_things[thing].Middle)) is not { } about
                || about.Size < 1e-4 * CellSize || (met.Count == 0 && IsBeyond(about, _things[thing].Middle)))
            {
                return;
            }

            SplitAbout(about, met.Count > 0 ? 3 : 1);
        }
    }

    // Whether a place lies farther from a line than the lines about it spread, three times over: no finer line will meet it.
    private bool IsBeyond(MirrorLine line, Vector place)
    {
        var (spread, corners) = (0.0, 0);
        foreach (var (across, along) in (ReadOnlySpan<(int, int)>)[(-1, 0), (1, 0), (0, -1), (0, 1)])
        {
            if (_shape.Around(_camera, line.Across + across * line.Size / 2, line.Along + along * line.Size / 2) is { } point)
            {
                corners++;
                spread = Max(spread, Off(point.Place, MirrorLaw.Reflect((point.Place - _camera).Unit(), point.Normal)));
            }
        }

        return corners == 4 && Off(line.Point.Place, line.Way) > 3 * spread;

        // By the chord between the two directions, as the line's own direction to the place changes too.
        double Off(Vector from, Vector way) => (way - (from == line.Point.Place ? (place - from).Unit() : line.Way + Shift(from))).Length;

        Vector Shift(Vector from) => (place - from).Unit() - (place - line.Point.Place).Unit();
    }

    private MirrorLine? Closest(Vector place)
    {
        var (closest, cosine) = (default(MirrorLine?), 0.0);
        foreach (var line in Lines)
        {
            var way = place - line.Point.Place;
            if (way.Dot(line.Way) > cosine * way.Length)
            {
                (closest, cosine) = (line, way.Dot(line.Way) / way.Length);
            }
        }

        return closest;
    }

    // Divides what lies within some cells of a line until it is finer than that one.
    private void SplitAbout(MirrorLine about, double cells)
    {
        bool any;
        do
        {
            any = false;
            for (var i = Lines.Count - 1; i >= 0; i--)
            {
                var near = cells * about.Size + Lines[i].Size / 2;
                if (Lines[i].Size > about.Size * 0.99 && Abs(Lines[i].Across - about.Across) < near && Abs(Lines[i].Along - about.Along) < near)
                {
                    Replace(i);
                    any = true;
                }
            }
        }
        while (any);
    }

    private void Replace(int index)
    {
        var line = Lines[index];
        Lines[index] = Lines[^1];
        Lines.RemoveAt(Lines.Count - 1);
        Split(line.Across, line.Along, line.Size);
    }
}
