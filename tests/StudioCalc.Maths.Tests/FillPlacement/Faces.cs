using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>A face and a receiver before it, as random tests draw them.</summary>
public sealed record LitPoint((double Right, double Up)[] Outline, FaceAxes Axes, LightPoint At)
{
    public LightFace Face => LightFace.Of(Axes, Outline);

    public Vector[] Corners => Array.ConvertAll(Outline, corner => Axes.At(corner.Right, corner.Up));
}

/// <summary>Random faces of some 100 to 1500 mm, convex and not, and receivers from a third of a metre on, facing anywhere.</summary>
internal static class Faces
{
    public static readonly Gen<(double Right, double Up)[]> Convex = Gen.OneOf(
        Gen.Select(Gen.Double[100, 1500], Gen.Double[100, 1500], FaceOutline.Rectangle),
        Gen.Select(Gen.Int[3, 12], Gen.Double[100, 1200], FaceOutline.Polygon));

    // Corners at random distances around the centre: it sees each of them, but the outline goes in and out.
    public static readonly Gen<(double Right, double Up)[]> Star = Gen.Double[50, 700].Array[5, 12].Select(radii =>
        radii.Select((radius, i) =>
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / radii.Length);
            return (radius * cos, radius * sin);
        }).ToArray());

    public static readonly Gen<Vector> Direction =
        from azimuth in Gen.Double[-180, 180]
        from height in Gen.Double[-1, 1]
        select Vector.Towards(azimuth, Math.Asin(height) * 180 / Math.PI);

    public static readonly Gen<LitPoint> Any = Lit(Gen.OneOf(Convex, Star), Direction);

    public static readonly Gen<LitPoint> Concave = Lit(Star, Direction);

    // A horizon through the face: the receiver's normal is across the way to a place near the face's centre.
    public static readonly Gen<LitPoint> Clipped =
        from lit in Any
        from turn in Direction
        from right in Gen.Double[-40, 40]
        from up in Gen.Double[-40, 40]
        let across = (lit.Axes.At(right, up) - lit.At.Place).Cross(turn)
        where across.Length > 1
        select lit with { At = lit.At with { Normal = across.Unit() } };

    private static Gen<LitPoint> Lit(Gen<(double Right, double Up)[]> outlines, Gen<Vector> normals) =>
        from outline in outlines
        from x in Gen.Double[-1500, 1500]
        from y in Gen.Double[-1500, 1500]
        from z in Gen.Double[-500, 2500]
        from way in Direction
        from roll in Gen.Double[-180, 180]
        from before in Gen.Double[350, 3000]
        from right in Gen.Double[-1200, 1200]
        from up in Gen.Double[-1200, 1200]
        from normal in normals
        let centre = new Vector(x, y, z)
        let axes = new FaceAxes(centre, centre + way * 1000, roll)
        select new LitPoint(outline, axes, new(axes.At(right, up) + axes.Facing * before, normal));
}
