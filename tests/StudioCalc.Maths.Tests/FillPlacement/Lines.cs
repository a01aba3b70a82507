using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Random sources on random lines, most of them beside their receiver.</summary>
internal static class Lines
{
    public static readonly Gen<Vector> Places = Gen.Select(Gen.Double[-400, 400], Gen.Double[-400, 400], Gen.Double[-100, 300], (x, y, z) => new Vector(x, y, z));

    public static readonly Gen<Vector> Directions = Gen.Select(Gen.Double[-180, 180], Gen.Double[-89, 89], Vector.Towards);

    public static readonly Gen<LightLine> All = Gen.Select(
        Gen.Int[0, 4], Gen.Double[50, 1500], Gen.Double[50, 1500], Directions, Gen.Double[100, 4000], Gen.Double[-180, 180],
        Gen.Select(Places, Places, Directions, Gen.Int[0, 3]))
        .Select(random =>
        {
            var (shape, width, height, direction, distance, roll, (aim, place, normal, kind)) = random;
            var axes = new FaceAxes(aim + direction * distance, aim, roll);
            var face = shape switch
            {
                0 => LightFace.Point(axes),
                1 => LightFace.Of(axes, FaceOutline.Disc(width)),
                2 => LightFace.Of(axes, FaceOutline.Polygon(8, width)),
                3 => LightFace.Of(axes, FaceOutline.Rectangle(width, height), 0.4, 3),
                _ => LightFace.Of(axes, FaceOutline.Rectangle(width, height)),
            };
            var receiver = kind switch
            {
                0 => new LineReceiver(aim, Normal: null, Collector.Flat),
                1 => new LineReceiver(place, Normal: null, Collector.Flat),
                2 => new LineReceiver(place, normal, Collector.Flat),
                _ => new LineReceiver(place, normal, Collector.Dome),
            };
            return new LightLine(face, aim, receiver);
        });

    /// <summary>An octabox 0.90 m across flats that stands 1 m before a flat receiver.</summary>
    public static LightLine Octabox(Vector? normal = null, double elevationDeg = 30)
    {
        var axes = new FaceAxes(Vector.Towards(0, elevationDeg) * 1000, default);
        return new(LightFace.Of(axes, FaceOutline.Polygon(8, 900)), default, new(default, normal, Collector.Flat));
    }
}
