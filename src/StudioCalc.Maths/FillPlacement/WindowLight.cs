using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light of a window at a place, summed over the directions that it is seen in.</summary>
/// <remarks>
/// <code>
/// e = integral of L(a) T(cos(a) cos(f)) w cos(a) da df        (56)
/// sinh(t) = x / D,   tan(a) = (z / D) cos(f),   cos(f) = 1 / cosh(t)   (57)
/// </code>
/// <para>e: light by unit luminance of the sky straight up. a: altitude. f: azimuth from the glass's normal. w: cosine at the receiver,
/// 0 from behind it; (1 + cosine) / 2 for a dome. x, z: a point of the glass, seen from the receiver at the distance D. The sum
/// runs over t from jamb to jamb and over a from sill to head, by Gauss points, in pieces that meet where the skyline or
/// the receiver's horizon crosses an edge, each no longer than 1 in t. Against the polygon of <see cref="PolygonLight"/> it
/// is within 1e-9, and within 1e-6 with clear glass, whose (54) is cut at 0. Nothing in the room counts: no reflected light, no reveal. Source: derived in
/// docs/models/fill-placement.md.</para>
/// </remarks>
public static class WindowLight
{
    private const double LongestPiece = 1;
    private const int MostBreaks = 32;

    // Between these the receiver's horizon bends little.
    private static readonly double[] Levels = [-1024, -256, -64, -16, -4, -1, 0, 1, 4, 16, 64, 256, 1024];

    /// <summary>Light e at a place. (56)</summary>
    /// <param name="opening">The glass.</param>
    /// <param name="sky">What is seen through it.</param>
    /// <param name="glass">What it passes.</param>
    /// <param name="at">The receiver.</param>
    public static double At(WindowOpening opening, WindowSky sky, WindowGlass glass, in WindowPoint at)
    {
        ArgumentNullException.ThrowIfNull(sky);
        ArgumentNullException.ThrowIfNull(glass);
        var view = new View(opening, sky, glass, at);
        Span<double> breaks = stackalloc double[MostBreaks];
        var count = view.Breaks(breaks);
        var sum = 0.0;
        for (var i = 1; i < count; i++)
        {
            var pieces = Ceiling((breaks[i] - breaks[i - 1]) / LongestPiece);
            var half = (breaks[i] - breaks[i - 1]) / pieces / 2;
            for (var piece = 0; piece < pieces; piece++)
            {
                var middle = breaks[i - 1] + (2 * piece + 1) * half;
                foreach (var (point, weight) in GaussPoints.All)
                {
                    sum += weight * half * view.Column(middle + half * point);
                }
            }
        }

        return sum;
    }

    /// <summary>A window as it is seen from a place, with lengths over the distance to the glass.</summary>
    private readonly ref struct View
    {
        private readonly WindowSky _sky;
        private readonly WindowGlass _glass;
        private readonly Vector _normal;
        private readonly bool _isDome;
        private readonly double _left, _right, _sill, _head, _skyline, _tanSkyline;

        public View(WindowOpening opening, WindowSky sky, WindowGlass glass, in WindowPoint at)
        {
            var distance = Guard.Positive(at.DistanceMm);
            (_sky, _glass, _normal, _isDome) = (sky, glass, at.Normal, at.Collector == Collector.Dome);
            _left = (-opening.WidthMm / 2 - at.RightMm) / distance;
            _right = (opening.WidthMm / 2 - at.RightMm) / distance;
            _sill = opening.SillOverMm(at.HeightMm) / distance;
            _head = opening.HeadOverMm(at.HeightMm) / distance;
            _skyline = sky.Kind == SkyKind.Diffusion ? -PI / 2 : sky.SkylineDeg * PI / 180;
            _tanSkyline = sky.Kind == SkyKind.Diffusion ? double.NegativeInfinity : Tan(_skyline);
        }

        // The jambs, and where a bend of the sum crosses an upper or lower edge, in order.
        public int Breaks(Span<double> breaks)
        {
            var (left, right) = (_left, _right);
            breaks[0] = left;
            var count = 1;
            foreach (var z in (ReadOnlySpan<double>)[_sill, _head])
            {
                if (z > _tanSkyline && _tanSkyline > 0)
                {
                    var x = Sqrt(z / _tanSkyline * (z / _tanSkyline) - 1);
                    Take(x, breaks);
                    Take(-x, breaks);
                }

                Take(HorizonAt(z), breaks);
            }

            foreach (var z in Levels)
            {
                if (z > _sill && z < _head)
                {
                    Take(HorizonAt(z), breaks);
                }
            }

            if (!_isDome && _tanSkyline >= 0)
            {
                var up = _normal.Z * _tanSkyline;
                var a = _normal.X * _normal.X - up * up;
                var root = Sqrt(up * up * (_normal.X * _normal.X + _normal.Y * _normal.Y - up * up));
                Take((-_normal.X * _normal.Y + root) / a, breaks);
                Take((-_normal.X * _normal.Y - root) / a, breaks);
            }

            breaks[count++] = right;
            breaks[..count].Sort();
            for (var i = 0; i < count; i++)
            {
                breaks[i] = Asinh(breaks[i]);
            }

            return count;

            void Take(double x, Span<double> into)
            {
                if (x > left && x < right)
                {
                    into[count++] = x;
                }
            }
        }

        // Where the receiver's horizon crosses a height; no number for a dome, and where it is level.
        private double HorizonAt(double z) => _isDome || _normal.X == 0 ? double.NaN : -(_normal.Y + _normal.Z * z) / _normal.X;

        // The sum over the altitudes of one azimuth, by unit t.
        public double Column(double t)
        {
            var cosF = 1 / Cosh(t);
            var level = _normal.X * Tanh(t) + _normal.Y * cosF;
            var (low, high) = (Atan(_sill * cosF), Atan(_head * cosF));
            if (!_isDome)
            {
                if (_normal.Z == 0 && level <= 0)
                {
                    return 0;
                }

                var horizon = Atan(-level / _normal.Z);
                low = _normal.Z > 0 ? Max(low, horizon) : low;
                high = _normal.Z < 0 ? Min(high, horizon) : high;
            }

            var below = _sky.BelowSkylineShare > 0
                ? _sky.BelowSkylineShare * _sky.Luminance(Sin(_skyline)) * Piece(low, Min(high, _skyline), cosF, level, isSky: false)
                : 0;
            return cosF * (below + Piece(Max(low, _skyline), high, cosF, level, isSky: true));
        }

        private double Piece(double low, double high, double cosF, double level, bool isSky)
        {
            if (!(high > low))
            {
                return 0;
            }

            var (middle, half) = ((low + high) / 2, (high - low) / 2);
            var sum = 0.0;
            foreach (var (point, weight) in GaussPoints.All)
            {
                var (sin, cos) = SinCos(middle + half * point);
                var cosine = level * cos + _normal.Z * sin;
                var collected = _isDome ? (1 + cosine) / 2 : Max(0, cosine);
                sum += weight * (isSky ? _sky.Luminance(sin) : 1) * _glass.Transmittance(cos * cosF) * collected * cos;
            }

            return sum * half;
        }
    }
}
