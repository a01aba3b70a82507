namespace StudioCalc.Maths;

/// <summary>A receiver of a source that moves.</summary>
/// <param name="Place">Where it is. [mm]</param>
/// <param name="Normal">The unit direction that it faces; null for one that faces the source's centre wherever that is.</param>
/// <param name="Collector">What it collects.</param>
public readonly record struct LineReceiver(Vector Place, Vector? Normal, Collector Collector);

/// <summary>A source that moves along the line through its centre and its aim point, and keeps its aim.</summary>
/// <remarks>
/// <code>
/// c = a + d j,   j = (c0 - a) / |c0 - a|                    (30)
/// </code>
/// <para>a: aim point. c0: centre of the face where it stands now; c: at distance d. j: direction of the line. The light is
/// worked out with the face at rest and the receiver moved the other way, which is the same.</para>
/// </remarks>
public sealed class LightLine
{
    private readonly LightFace _face;

    /// <summary>Takes the line of a face.</summary>
    /// <param name="face">The face where it stands now, facing its aim point.</param>
    /// <param name="aim">The aim point. [mm]</param>
    /// <param name="receiver">The receiver.</param>
    public LightLine(LightFace face, Vector aim, LineReceiver receiver)
    {
        ArgumentNullException.ThrowIfNull(face);
        (_face, Aim, Receiver) = (face, aim, receiver);
        NowMm = Guard.Positive((face.Axes.Centre - aim).Length);
        Direction = -face.Axes.Facing;
        FootMm = (receiver.Place - aim).Dot(Direction);
        AsideMm = (receiver.Place - aim - Direction * FootMm).Length;
    }

    /// <summary>The aim point a. [mm]</summary>
    public Vector Aim { get; }

    /// <summary>The direction j of the line, from the aim point to the source.</summary>
    public Vector Direction { get; }

    /// <summary>The receiver.</summary>
    public LineReceiver Receiver { get; }

    /// <summary>Distance from the aim point to the centre of the face now. [mm]</summary>
    public double NowMm { get; }

    /// <summary>Distance at which the plane of the face goes through the receiver. [mm]</summary>
    public double FootMm { get; }

    /// <summary>How far the receiver lies beside the line. [mm]</summary>
    public double AsideMm { get; }

    /// <summary>Whether the source is a point that comes to the receiver itself before it comes to the aim point.</summary>
    public bool MeetsPoint => _face.IsPoint && AsideMm < 1e-6 && FootMm > -1e-6 && FootMm < NowMm;

    /// <summary>Distances at which the first and the last part of the face crosses the receiver's horizon; none for one that turns.</summary>
    public IEnumerable<double> HorizonMm()
    {
        if (Receiver.Normal is not { } normal || Math.Abs(normal.Dot(Direction)) < 1e-12)
        {
            return [];
        }

        var (first, last) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var corner in _face.IsPoint ? [_face.Axes.Centre] : _face.Corners)
        {
            var crossing = NowMm - (corner - Receiver.Place).Dot(normal) / Direction.Dot(normal);
            (first, last) = (Math.Min(first, crossing), Math.Max(last, crossing));
        }

        return [first, last];
    }

    /// <summary>The face at a distance. (30)</summary>
    /// <param name="distanceMm">Distance d. [mm]</param>
    public LightFace FaceAt(double distanceMm) => _face.ShiftedBy(Shift(distanceMm));

    /// <summary>The receiver as it faces a source at a distance.</summary>
    /// <param name="distanceMm">Distance d. [mm]</param>
    public LightPoint ReceiverAt(double distanceMm)
    {
        var rest = AtRest(distanceMm);
        return rest with { Place = Receiver.Place };
    }

    /// <summary>Light e at the receiver, by unit luminance of the rim or by unit intensity.</summary>
    /// <param name="distanceMm">Distance d. [mm]</param>
    public double Light(double distanceMm)
    {
        var none = default(NoTrail);
        return Light(distanceMm, ref none);
    }

    /// <summary>The same, followed step by step; infinite where a point meets the receiver.</summary>
    /// <param name="distanceMm">Distance d. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public double Light<TTrail>(double distanceMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var rest = AtRest(distanceMm);
        return _face.IsPoint && rest.Place == _face.Axes.Centre ? double.PositiveInfinity : _face.Light(rest, ref trail);
    }

    /// <summary>The same in stops; minus infinity without light.</summary>
    /// <param name="distanceMm">Distance d. [mm]</param>
    public double LightStops(double distanceMm) => Math.Log2(Light(distanceMm));

    private Vector Shift(double distanceMm) => Direction * (distanceMm - NowMm);

    private LightPoint AtRest(double distanceMm)
    {
        var place = Receiver.Place - Shift(distanceMm);
        if (Receiver.Normal is { } normal)
        {
            return new(place, normal, Receiver.Collector);
        }

        var way = _face.Axes.Centre - place;
        return new(place, way.Length > 0 ? way.Unit() : Direction, Receiver.Collector);
    }
}
