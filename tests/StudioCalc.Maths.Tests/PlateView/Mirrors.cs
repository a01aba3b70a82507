using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Glossy surfaces on the table, cameras before them and things about them.</summary>
internal static class Mirrors
{
    public static readonly Gloss Water = new(1.33);

    public static readonly Gen<Vector> Cameras = Gen.Select(
        Gen.Double[-60, 60], Gen.Double[15, 80], Gen.Double[300, 900], (azimuth, elevation, distance) => Vector.Towards(azimuth, elevation) * distance);

    public static readonly Gen<Vector> Places = Gen.Select(
        Gen.Double[-180, 180], Gen.Double[10, 85], Gen.Double[500, 1500], (azimuth, elevation, distance) => Vector.Towards(azimuth, elevation) * distance);

    public static readonly Gen<MirrorShape> Shapes = Gen.OneOf<MirrorShape>(
        Gen.Select(Gen.Double[20, 300], Gen.Double[20, 300], Gen.Bool, MirrorShape (width, depth, isOval) => Flat(width, depth, isOval)),
        Gen.Select(Gen.Double[20, 100], Gen.Double[20, 150], MirrorShape (diameter, height) => new MirrorCylinder(default, diameter, height)),
        Gen.Double[10, 150].Select(MirrorShape (diameter) => new MirrorDome(default, diameter)));

    public static readonly Gen<MirrorThing> Things = Gen.OneOf<MirrorThing>(
        Gen.Select(Places, Gen.Double[50, 900], Gen.Double[50, 900], MirrorThing (place, width, height) => Rectangle(place, width, height)),
        Gen.Select(Places, Gen.Double[50, 400], MirrorThing (place, diameter) => new MirrorBall(place, diameter)));

    public static MirrorFlat Flat(double width, double depth, bool isOval = false, double wave = 0) =>
        new(new(default, new(0, 0, 100)), width, depth, isOval, wave);

    public static MirrorFace Rectangle(Vector place, double width, double height, bool hasTwoSides = false) =>
        new(LightFace.Of(new(place, default), FaceOutline.Rectangle(width, height)), hasTwoSides);

    public static MirrorView View(MirrorShape shape, Vector camera, int lines, params MirrorThing[] things) =>
        MirrorView.Trace(shape, Water, things, camera, lines);

    public static double Share(MirrorView view, int thing) =>
        view.Reflections.SingleOrDefault(reflection => reflection.Thing == thing)?.CoveredShare ?? 0;
}
