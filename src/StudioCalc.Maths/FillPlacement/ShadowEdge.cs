using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The soft edge of a shadow on the table.</summary>
/// <remarks>
/// <code>
/// l = E + (E - s) t / (z - t)                               (36)
/// b = largest l - least l                                   (37)
/// </code>
/// <para>A level edge, such as a rim, at height t over the table stands across the vertical plane through the plate's middle and
/// the centre of the face, where the ray from that centre lands on the plate's middle. s, z: how far a corner of the face lies
/// from the middle along that plane, and how high. E: the same way for the edge. l: where its ray over the edge
/// lands. b: width of the soft edge, which the outermost rays bound; over a convex face corners are outermost. Where a part of the face
/// lies no higher than the edge its rays never land: the soft edge has no outer end. Not the width across the ray over the sine of
/// its elevation, which is up to a third short close by.</para>
/// </remarks>
public static class ShadowEdge
{
    /// <summary>Width b of the soft edge; infinite where it has no outer end. (37) [mm]</summary>
    /// <param name="face">The face.</param>
    /// <param name="edgeHeightMm">Height t of the edge over the table, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double PenumbraMm<TTrail>(LightFace face, double edgeHeightMm, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(face);
        var t = Guard.Positive(edgeHeightMm);
        var centre = face.Axes.Centre;
        if (centre.Z <= t)
        {
            return double.PositiveInfinity;
        }

        if (face.IsPoint)
        {
            return trail.Given("b", 0, "mm", "a point casts a sharp edge", answerField);
        }

        var level = new Vector(centre.X, centre.Y, 0);
        var way = level.Length > 1e-9 * centre.Z ? level.Unit() : new Vector(0, -1, 0);
        var edge = level.Length * t / centre.Z;
        var (near, far) = (face.Corners[0], face.Corners[0]);
        foreach (var corner in face.Corners)
        {
            if (corner.Z <= t)
            {
                return double.PositiveInfinity;
            }

            near = Lands(corner) < Lands(near) ? corner : near;
            far = Lands(corner) > Lands(far) ? corner : far;
        }

        t = trail.Given("t", t, "mm", "edge_height_mm");
        var E = trail.Given("E", edge, "mm", "the edge, from the plate's middle");
        var s = trail.Given("s", near.Dot(way), "mm", "corner whose ray lands nearest to the source");
        var z = trail.Given("z", near.Z, "mm", "its height");
        var l = trail.Let("l", E + (E - s) * t / (z - t), "mm", "fill placement (36)");
        var s2 = trail.Given("s2", far.Dot(way), "mm", "corner whose ray lands furthest from there");
        var z2 = trail.Given("z2", far.Z, "mm", "its height");
        var l2 = trail.Let("l2", E + (E - s2) * t / (z2 - t), "mm", "fill placement (36)");
        return trail.Let("b", l2 - l, "mm", "fill placement (37)", answerField);

        double Lands(Vector corner) => edge + (edge - corner.Dot(way)) * t / (corner.Z - t);
    }
}
