using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How much of a source's light at a receiver things in the way take.</summary>
/// <param name="Light">Its light e without them, by unit luminance or intensity.</param>
/// <param name="Left">Its light with them.</param>
/// <param name="Least">The least that it may be.</param>
/// <param name="Most">The most that it may be.</param>
/// <param name="Blocking">Which of the things stand in its light.</param>
/// <remarks>
/// <code>
/// e    = sum of ec                       cells                                (80)
/// left = sum of ec where no thing meets the way to the cell's middle          (81)
/// g    = h min(1, (|m - p| + R) / (|s - p| - h))                              (82)
/// S    = 1 - left / e                    shaded share                         (83)
/// </code>
/// <para>ec: light of a cell, exact and cut at the receiver's horizon, (5) or (6). The face is divided into equal cells along its right
/// and its up. s: a cell's middle, h: the farthest of its corners from there. p: receiver. m, R: a thing's middle and reach.
/// A cell is surely dark where one thing shrunk by g still blocks it, and surely lit where none grown by g does; one that is
/// neither is divided into four, twice over, and what is then left open bounds the error. A point has one ray and no error.
/// Source: derived in docs/models/fill-placement.md.</para>
/// </remarks>
public readonly record struct FaceShadow(double Light, double Left, double Least, double Most, IReadOnlyList<bool> Blocking)
{
    private const int Halvings = 2;

    /// <summary>Shaded share S, from 0 to 1; 0 without light. (83)</summary>
    public double ShadedShare => Light > 0 ? Clamp(1 - Left / Light, 0, 1) : 0;

    /// <summary>How far that share may be off.</summary>
    public double ShareError => Light > 0 ? Max(Most - Left, Left - Least) / Light : 0;

    /// <summary>Traces a source.</summary>
    /// <param name="face">The source.</param>
    /// <param name="blockers">The things.</param>
    /// <param name="at">The receiver.</param>
    /// <param name="cells">Cells along a side.</param>
    public static FaceShadow Trace(LightFace face, IReadOnlyList<LightBlocker> blockers, in LightPoint at, int cells)
    {
        ArgumentNullException.ThrowIfNull(face);
        ArgumentNullException.ThrowIfNull(blockers);
        var blocking = new bool[blockers.Count];
        if (face.IsPoint)
        {
            var light = face.Light(at);
            var dark = false;
            for (var i = 0; light > 0 && i < blocking.Length; i++)
            {
                blocking[i] = blockers[i].Blocks(at.Place, face.Axes.Centre);
                dark |= blocking[i];
            }

            var left = dark ? 0 : light;
            return new(light, left, left, left, blocking);
        }

        if (!face.IsBefore(at.Place))
        {
            return new(0, 0, 0, 0, blocking);
        }

        var trace = new Tracing(face.Axes, blockers, at, blocking);
        foreach (var (corners, weight) in face.Layers())
        {
            trace.Divide(corners, weight, cells);
        }

        return new(trace.Light, trace.Left, trace.Least, trace.Most, blocking);
    }

    private sealed class Tracing(FaceAxes axes, IReadOnlyList<LightBlocker> blockers, LightPoint at, bool[] blocking)
    {
        public double Light { get; private set; }

        public double Left { get; private set; }

        public double Least { get; private set; }

        public double Most { get; private set; }

        // A face into cells along its right and its up: columns first.
        public void Divide(Vector[] corners, double weight, int cells)
        {
            var (left, right) = Extent(corners, axes.Right);
            var (low, high) = Extent(corners, axes.Up);
            for (var i = 0; i < cells; i++)
            {
                var column = Strip(corners, axes.Right, left + (right - left) * i / cells, left + (right - left) * (i + 1) / cells);
                for (var j = 0; j < cells && column.Length >= 3; j++)
                {
                    Add(Strip(column, axes.Up, low + (high - low) * j / cells, low + (high - low) * (j + 1) / cells), weight, 0);
                }
            }
        }

        private void Add(Vector[] cell, double weight, int depth)
        {
            var light = cell.Length < 3 ? 0 : PolygonLight.Light(cell, at) * weight;
            if (!(light > 0))
            {
                return;
            }

            var middle = default(Vector);
            foreach (var corner in cell)
            {
                middle += corner * (1.0 / cell.Length);
            }

            var half = 0.0;
            foreach (var corner in cell)
            {
                half = Max(half, (corner - middle).Length);
            }

            var (dark, surelyDark, surelyLit) = Look(middle, half);
            if (!surelyDark && !surelyLit && depth < Halvings)
            {
                Quarter(cell, weight, depth);
                return;
            }

            Light += light;
            Left += dark ? 0 : light;
            Least += surelyLit ? light : 0;
            Most += surelyDark ? 0 : light;
        }

        private void Quarter(Vector[] cell, double weight, int depth)
        {
            var (left, right) = Extent(cell, axes.Right);
            var (low, high) = Extent(cell, axes.Up);
            foreach (var column in (Vector[][])[Strip(cell, axes.Right, left, (left + right) / 2), Strip(cell, axes.Right, (left + right) / 2, right)])
            {
                if (column.Length >= 3)
                {
                    Add(Strip(column, axes.Up, low, (low + high) / 2), weight, depth + 1);
                    Add(Strip(column, axes.Up, (low + high) / 2, high), weight, depth + 1);
                }
            }
        }

        private (bool Dark, bool SurelyDark, bool SurelyLit) Look(Vector middle, double half)
        {
            var (dark, surelyDark, surelyLit) = (false, false, true);
            var away = (middle - at.Place).Length;
            for (var i = 0; i < blocking.Length; i++)
            {
                var thing = blockers[i];
                var reach = ((thing.Middle - at.Place).Length + thing.ReachMm) / Max(away - half, 1e-9);
                var margin = half * Min(1, reach);
                if (!thing.Blocks(at.Place, middle, margin))
                {
                    continue;
                }

                surelyLit = false;
                surelyDark |= thing.Blocks(at.Place, middle, -margin);
                if (thing.Blocks(at.Place, middle))
                {
                    dark = blocking[i] = true;
                }
            }

            return (dark, surelyDark, surelyLit);
        }

        private (double From, double To) Extent(Vector[] corners, Vector axis)
        {
            var (from, to) = (double.PositiveInfinity, double.NegativeInfinity);
            foreach (var corner in corners)
            {
                var along = (corner - axes.Centre).Dot(axis);
                (from, to) = (Min(from, along), Max(to, along));
            }

            return (from, to);
        }

        private Vector[] Strip(Vector[] corners, Vector axis, double from, double to) => HalfSpace.Cut(
            corners, [new(axes.Centre + axis * from, axis), new(axes.Centre + axis * to, -axis)]);
    }
}
