using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light that a matt or a mirroring rectangle sends on from sources, by one reflection and for a reflectance of 1.</summary>
/// <remarks>
/// <code>
/// B1 = sum over patches of (E / pi) e'                                  matt       (72)
/// B1 = light of the sources within the mirror's edges at p', n'         mirror     (73)
/// p' = p - 2 (p - m) . k k,    n' = n - 2 n . k k                                  (74)
/// </code>
/// <para>E: illuminance in a patch's middle, from all sources. e': light of the patch at the receiver by unit luminance, exact (5).
/// p, n: the receiver and its normal. m, k: middle of the mirror and the way that it faces. The patch whose halving both ways changes
/// most is halved next, until what that would change in all is less than 0.0002 of the light and none is wider than its distance from
/// a source, as far as 2048 patches for all sources together go; then halved and whole are extrapolated as (4 halved - whole) / 3. Light that goes to and fro between
/// surfaces is left out, and so is what the surface blocks. Source: derived in docs/models/fill-placement.md.</para>
/// </remarks>
public sealed class BounceLight
{
    private const int Rough = 8;
    private const int Least = 2;
    private const double MostChange = 2e-4;
    private const int MostPatches = 2048;
    private const int FewestPatches = 64;

    private readonly BounceFace _surface;
    private readonly IReadOnlyList<(LightFace Face, double Strength)> _sources;
    private readonly LightPoint _at;
    private readonly double _whole;

    private BounceLight(BounceFace surface, IReadOnlyList<(LightFace Face, double Strength)> sources, in LightPoint at)
    {
        (_surface, _sources, _at) = (surface, sources, at);
        _whole = Even(surface, sources, at, Rough);
    }

    /// <summary>The light B1.</summary>
    public double Light { get; private set; }

    /// <summary>Patches that it is summed over; 0 for a mirror.</summary>
    public int Patches { get; private set; }

    /// <summary>What the last halving changed, over the light.</summary>
    public double Residual { get; private set; }

    /// <summary>Of a matt surface. (72)</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="sources">The sources, each with its luminance or intensity.</param>
    /// <param name="at">The receiver.</param>
    public static BounceLight Matt(BounceFace surface, IReadOnlyList<(LightFace Face, double Strength)> sources, in LightPoint at)
    {
        ArgumentNullException.ThrowIfNull(surface);
        ArgumentNullException.ThrowIfNull(sources);
        var sum = new BounceLight(surface, sources, at);
        if (surface.Face.IsBefore(at.Place))
        {
            sum.Divide();
        }

        return sum;
    }

    /// <summary>Of a mirror. (73)</summary>
    /// <param name="surface">The mirror.</param>
    /// <param name="sources">The sources, each with its luminance or intensity.</param>
    /// <param name="at">The receiver.</param>
    public static double Mirror(BounceFace surface, IReadOnlyList<(LightFace Face, double Strength)> sources, in LightPoint at)
    {
        ArgumentNullException.ThrowIfNull(surface);
        ArgumentNullException.ThrowIfNull(sources);
        var k = surface.Axes.Facing;
        var height = (at.Place - surface.Axes.Centre).Dot(k);
        if (height <= 0)
        {
            return 0;
        }

        var image = new LightPoint(at.Place - k * (2 * height), at.Normal - k * (2 * at.Normal.Dot(k)), at.Collector);
        Span<HalfSpace> within = stackalloc HalfSpace[5];
        within[4] = new(surface.Axes.Centre, k);
        var corners = surface.Face.Corners;
        for (var i = 0; i < 4; i++)
        {
            var edge = (corners[i] - image.Place).Cross(corners[(i + 1) % 4] - image.Place);
            within[i] = new(image.Place, edge.Dot(surface.Axes.Centre - image.Place) < 0 ? -edge : edge);
        }

        var sum = 0.0;
        foreach (var (face, strength) in sources)
        {
            sum += strength * face.LightWithin(image, within);
        }

        return sum;
    }

    /// <summary>Of a matt surface in equal patches without halving: quick, and good enough to compare directions.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="sources">The sources, each with its luminance or intensity.</param>
    /// <param name="at">The receiver.</param>
    /// <param name="side">Patches along a side.</param>
    public static double Even(BounceFace surface, IReadOnlyList<(LightFace Face, double Strength)> sources, in LightPoint at, int side)
    {
        ArgumentNullException.ThrowIfNull(surface);
        ArgumentNullException.ThrowIfNull(sources);
        if (!surface.Face.IsBefore(at.Place))
        {
            return 0;
        }

        var (halfRight, halfUp) = (surface.WidthMm / 2 / side, surface.HeightMm / 2 / side);
        var sum = 0.0;
        for (var i = 0; i < side; i++)
        {
            for (var j = 0; j < side; j++)
            {
                sum += Patch(surface, sources, at, new(
                    (2 * i + 1) * halfRight - surface.WidthMm / 2, (2 * j + 1) * halfUp - surface.HeightMm / 2, halfRight, halfUp));
            }
        }

        return sum;
    }

    // The part whose halving changes most is halved next; one that is too wide comes before all others.
    private void Divide()
    {
        Patches = Rough * Rough;
        if (_whole == 0)
        {
            return;
        }

        var most = Max(FewestPatches, MostPatches / _sources.Count) / 4;
        var parts = new PriorityQueue<Part, double>();
        var (open, halved) = (0.0, 0.0);
        Push(new(0, 0, _surface.WidthMm / 2, _surface.HeightMm / 2), 0);
        while (parts.Count < most && parts.TryPeek(out var next, out _) && (next.IsWide || open > MostChange * halved))
        {
            parts.Dequeue();
            (open, halved) = (open - next.Change, halved - next.Halved);
            for (var i = 0; i < 4; i++)
            {
                Push(next.Area.Quarter(i), next.Depth + 1);
            }
        }

        var change = 0.0;
        foreach (var (part, _) in parts.UnorderedItems)
        {
            Light += Max(0, (4 * part.Halved - part.Light) / 3);
            change += part.Change / 3;
        }

        (Patches, Residual) = (4 * parts.Count, Light > 0 ? change / Light : 0);

        void Push(Area area, int depth)
        {
            var quarters = 0.0;
            for (var i = 0; i < 4; i++)
            {
                quarters += Patch(area.Quarter(i));
            }

            var part = new Part(area, depth, Patch(area), quarters, depth < Least || !IsSmall(area));
            (open, halved) = (open + part.Change, halved + part.Halved);
            parts.Enqueue(part, part.IsWide ? -1e300 / (1L << depth) : -part.Change);
        }
    }

    private bool IsSmall(Area area)
    {
        var middle = _surface.Axes.At(area.Right, area.Up);
        var nearest = double.PositiveInfinity;
        foreach (var (face, _) in _sources)
        {
            nearest = Min(nearest, (face.Axes.Centre - middle).Length);
            var corners = face.Corners;
            for (var i = 0; i < corners.Length; i += 1 + corners.Length / 16)
            {
                nearest = Min(nearest, (corners[i] - middle).Length);
            }
        }

        return Max(area.HalfRight, area.HalfUp) <= nearest / 2;
    }

    private double Patch(Area area) => Patch(_surface, _sources, _at, area);

    private static double Patch(
        BounceFace surface, IReadOnlyList<(LightFace Face, double Strength)> sources, in LightPoint at, Area area)
    {
        var axes = surface.Axes;
        var middle = new LightPoint(axes.At(area.Right, area.Up), axes.Facing);
        var illuminance = 0.0;
        foreach (var (face, strength) in sources)
        {
            // A point source in the very middle of a patch gives it none: it lies in its plane.
            var light = strength * face.Light(middle);
            illuminance += double.IsFinite(light) ? light : 0;
        }

        if (illuminance <= 0)
        {
            return 0;
        }

        ReadOnlySpan<Vector> corners =
        [
            axes.At(area.Right - area.HalfRight, area.Up - area.HalfUp), axes.At(area.Right + area.HalfRight, area.Up - area.HalfUp),
            axes.At(area.Right + area.HalfRight, area.Up + area.HalfUp), axes.At(area.Right - area.HalfRight, area.Up + area.HalfUp),
        ];
        return illuminance / PI * PolygonLight.Light(corners, at);
    }

    private readonly record struct Area(double Right, double Up, double HalfRight, double HalfUp)
    {
        public Area Quarter(int index) => new(
            Right + (index % 2 == 0 ? -HalfRight : HalfRight) / 2, Up + (index < 2 ? -HalfUp : HalfUp) / 2, HalfRight / 2, HalfUp / 2);
    }

    private readonly record struct Part(Area Area, int Depth, double Light, double Halved, bool IsWide)
    {
        public double Change => Abs(Halved - Light);
    }
}
