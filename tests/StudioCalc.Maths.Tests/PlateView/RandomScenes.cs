using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Random scenes that a camera may look at.</summary>
internal static class RandomScenes
{
    private static readonly Gen<Vector> Places = Gen.Select(Gen.Double[-90, 90], Gen.Double[-90, 90], (x, y) => new Vector(x, y, 0));

    public static readonly Gen<ViewSolid> Solids = Gen.Select(
        Gen.Enum<SolidKind>(), Places, Gen.Double[-180, 180], Gen.Double[15, 70], Gen.Double[15, 70], Gen.Double[10, 90], Gen.Double[0, 1],
        (kind, place, turn, width, depth, height, top) => new ViewSolid(kind, place, turn, width, depth, height, top));

    public static readonly Gen<ViewVessel> Vessels = Gen.Select(
        Gen.Bool, Places, Gen.Double[-180, 180], Gen.Double[60, 200], Gen.Double[60, 200], Gen.Double[0.3, 1], Gen.Double[20, 80], Gen.Double[0, 0.9],
        (isRectangle, place, turn, width, depth, floor, rim, content) => new ViewVessel(
            new()
            {
                IsRectangle = isRectangle,
                RimWidthMm = width,
                RimDepthMm = depth,
                FloorShare = floor,
                RimHeightMm = rim,
                ContentHeightMm = content * rim,
            },
            place, turn));

    public static readonly Gen<ViewGeometry> Cameras = Gen.Select(
        Gen.Double[5, 85], Gen.Double[-180, 180], Gen.Double[500, 1500], Gen.Double[-20, 20], Gen.Double[0, 60], Gen.Bool,
        (elevation, azimuth, distance, x, z, isFar) =>
            new ViewGeometry(new(x, 0, z), azimuth, elevation, isFar ? null : distance, 400, 300));

    public static readonly Gen<ViewScene> Scenes = Gen.Select(
        Solids.List[1, 4], Vessels.List[0, 1], (solids, vessels) => new ViewScene(solids, vessels));
}
