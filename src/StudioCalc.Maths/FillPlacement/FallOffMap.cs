using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How light falls off over an area.</summary>
/// <remarks>
/// <code>
/// Q = sum of v                                                      (19)
/// x = log2(Q / Qm)                                                  (19)
/// </code>
/// <para>v: light of a source at a point, (18). Q: of all of them; Qm: in the middle of the area. x: stops over the middle. Edges are
/// compared in their own middles, which need not be points of the grid.</para>
/// </remarks>
public sealed record FallOffMap
{
    private readonly double[] _lights;

    private FallOffMap(FallOffArea area, double[] lights) => (Area, _lights) = (area, lights);

    /// <summary>The area.</summary>
    public FallOffArea Area { get; }

    /// <summary>Light in the middle, Qm.</summary>
    public required double Middle { get; init; }

    /// <summary>Middle of the front edge over that of the back edge; null where either is dark. [stops]</summary>
    public required double? FrontToBackStops { get; init; }

    /// <summary>Middle of the right edge over that of the left edge; null where either is dark. [stops]</summary>
    public required double? RightToLeftStops { get; init; }

    /// <summary>The brightest point over the darkest; null where that is dark. [stops]</summary>
    public double? SpreadStops => Stops(_lights.Max(), _lights.Min());

    /// <summary>The brightest point, the first of several alike.</summary>
    public Vector Brightest => PointOf(_lights.Max());

    /// <summary>The darkest point, the first of several alike.</summary>
    public Vector Darkest => PointOf(_lights.Min());

    /// <summary>Whether a point gets no light.</summary>
    /// <param name="column">Its column, from the left.</param>
    /// <param name="row">Its row, from the front.</param>
    public bool IsDark(int column, int row) => !(_lights[row * Area.Columns + column] > 0);

    /// <summary>A point over the middle; null where either is dark. (19) [stops]</summary>
    /// <param name="column">Its column, from the left.</param>
    /// <param name="row">Its row, from the front.</param>
    public double? StopsAt(int column, int row) => Stops(_lights[row * Area.Columns + column], Middle);

    /// <summary>Maps. (19)</summary>
    /// <param name="area">The area.</param>
    /// <param name="faces">The sources.</param>
    /// <param name="facing">Which way its surface faces.</param>
    /// <param name="collector">What its points collect.</param>
    /// <param name="trail">Follows the sum in the middle.</param>
    /// <param name="cancellation">Looked at before each row.</param>
    /// <exception cref="OperationCanceledException">The caller has given up.</exception>
    public static FallOffMap Of<TTrail>(
        FallOffArea area,
        IReadOnlyList<WeighedFace> faces,
        AreaFacing facing,
        Collector collector,
        ref TTrail trail,
        CancellationToken cancellation = default)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(area);
        ArgumentNullException.ThrowIfNull(faces);
        WeighedFace[] all = [.. faces];
        var lights = new double[area.Columns * area.Rows];
        for (var row = 0; row < area.Rows; row++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (var column = 0; column < area.Columns; column++)
            {
                lights[row * area.Columns + column] = Light(area.At(column, row));
            }
        }

        var Qm = trail.Given("Qm", 0, "", "light in the middle");
        foreach (var face in all)
        {
            var v = face.Light(new LightPoint(area.Middle, facing.From(area.Middle), collector), ref trail);
            Qm = trail.Let("Qm", Qm + v, "", "fill placement (19)");
        }

        var map = new FallOffMap(area, lights)
        {
            Middle = Qm,
            FrontToBackStops = Compare(("Qf", area.Front), ("Qb", area.Back), "front_to_back_stops", ref trail),
            RightToLeftStops = Compare(("Qr", area.Right), ("Ql", area.Left), "right_to_left_stops", ref trail),
        };
        map.Follow(ref trail);
        return map;

        double Light(Vector place)
        {
            var at = new LightPoint(place, facing.From(place), collector);
            var sum = 0.0;
            foreach (var face in all)
            {
                sum += face.Weight * face.Face.Light(at);
            }

            return sum;
        }

        double? Compare((string Symbol, Vector Place) one, (string Symbol, Vector Place) other, string field, ref TTrail trail)
        {
            var (a, b) = (Light(one.Place), Light(other.Place));
            trail.Given(one.Symbol, a, "", "fill placement (19), in the middle of an edge");
            trail.Given(other.Symbol, b, "", "fill placement (19), in the middle of the opposite edge");
            return Stops(a, b) is { } stops
                ? trail.Let("x", stops, "stops", "fill placement (19)", field, $"Log2({one.Symbol} / {other.Symbol})")
                : null;
        }
    }

    private static double? Stops(double light, double against) => light > 0 && against > 0 ? Log2(light / against) : null;

    private void Follow<TTrail>(ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var Qh = trail.Given("Qh", _lights.Max(), "", "fill placement (19), the brightest point of the grid");
        var Qd = trail.Given("Qd", _lights.Min(), "", "fill placement (19), the darkest point of the grid");
        if (SpreadStops is not null)
        {
            trail.Let("x", Log2(Qh / Qd), "stops", "fill placement (19)", "spread_stops");
        }

        trail.Given("xh", Brightest.X, "mm", "fill placement (17), of the brightest point", "brightest.x_mm");
        trail.Given("yh", Brightest.Y, "mm", "fill placement (17), of the brightest point", "brightest.y_mm");
    }

    private Vector PointOf(double light)
    {
        var index = Array.IndexOf(_lights, light);
        return Area.At(index % Area.Columns, index / Area.Columns);
    }
}
