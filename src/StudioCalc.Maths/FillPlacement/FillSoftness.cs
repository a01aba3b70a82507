using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How soft and how even the light of a face is over the plate.</summary>
/// <remarks>
/// <code>
/// v = log2(e1 / e2)                                         (38)
/// </code>
/// <para>e1, e2: light at opposite ends of the plate, front and back or right and left, on flat food or on surfaces that face as the
/// way from the plate's middle to the centre of the face. The plate lies on the table about the origin. Angles:
/// <see cref="FaceView"/>; the soft edge: <see cref="ShadowEdge"/>.</para>
/// </remarks>
public sealed record FillSoftness
{
    /// <summary>The largest angle between two points of the face, from the receiver. [deg]</summary>
    public required double SubtenseDeg { get; init; }

    /// <summary>The angle between its left and right edge. [deg]</summary>
    public required double AcrossDeg { get; init; }

    /// <summary>The angle between its lower and upper edge. [deg]</summary>
    public required double UpDeg { get; init; }

    /// <summary>Front less back on surfaces that face the source; null where an end gets none. (38) [stops]</summary>
    public required double? AimedStops { get; init; }

    /// <summary>Front less back on flat food; null where an end gets none. (38) [stops]</summary>
    public required double? FlatStops { get; init; }

    /// <summary>Right less left on flat food; null where an end gets none. (38) [stops]</summary>
    public required double? SidewaysStops { get; init; }

    /// <summary>Width of the soft edge; infinite without an outer end, null without an edge. [mm]</summary>
    public required double? PenumbraMm { get; init; }

    /// <summary>Looks at a face.</summary>
    /// <param name="face">The face where it stands.</param>
    /// <param name="receiver">Where it is seen from. [mm]</param>
    /// <param name="plateDiameterMm">Diameter of the plate. [mm]</param>
    /// <param name="edgeHeightMm">Height of an edge, if there is one. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="field">The answer message that holds it, with a point at its end, for the trail.</param>
    public static FillSoftness Of<TTrail>(
        LightFace face, Vector receiver, double plateDiameterMm, double? edgeHeightMm, ref TTrail trail, string field)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(face);
        var r = Guard.Positive(plateDiameterMm) / 2;
        var (front, back) = (new Vector(0, -r, 0), new Vector(0, r, 0));
        var centre = face.Axes.Centre;
        var aimed = centre.Length > 0 ? centre.Unit() : Vector.Up;
        var (across, up) = FaceView.ExtentsDeg(face, receiver);
        trail.Section("softness");
        return new()
        {
            SubtenseDeg = trail.Given("s", FaceView.SubtenseDeg(face, receiver), "deg", "fill placement (12)", field + "subtense_deg"),
            AcrossDeg = trail.Given("s", across, "deg", "fill placement (35)", field + "subtense_across_deg"),
            UpDeg = trail.Given("s", up, "deg", "fill placement (35)", field + "subtense_up_deg"),
            AimedStops = FallOff(face, new(front, aimed), new(back, aimed), ref trail, field + "fall_off_aimed_stops"),
            FlatStops = FallOff(face, new(front, Vector.Up), new(back, Vector.Up), ref trail, field + "fall_off_flat_stops"),
            SidewaysStops = FallOff(
                face, new(new(r, 0, 0), Vector.Up), new(new(-r, 0, 0), Vector.Up), ref trail, field + "fall_off_sideways_stops"),
            PenumbraMm = edgeHeightMm is { } edge ? ShadowEdge.PenumbraMm(face, edge, ref trail, field + "penumbra_mm") : null,
        };
    }

    private static double? FallOff<TTrail>(LightFace face, LightPoint from, LightPoint to, ref TTrail trail, string answerField)
        where TTrail : struct, ITrail
    {
        var (first, second) = (face.Light(from), face.Light(to));
        if (!(first > 0 && second > 0))
        {
            return null;
        }

        var e1 = trail.Given("e1", first, "", "light at one end of the plate");
        var e2 = trail.Given("e2", second, "", "light at the other end");
        return trail.Let("v", Log2(e1 / e2), "stops", "fill placement (38)", answerField);
    }
}
