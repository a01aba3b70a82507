using CsCheck;
using static System.Math;

namespace StudioCalc.Maths.Tests;

public sealed class SceneViewTests
{
    private const int Lines = 96;

    // Independent: random lines of sight, walked in small steps. Four standard errors of the random lines, the uncertainty that the
    // view states, and what a step may jump over at an edge.
    [Fact]
    public void Outline_RandomScene_AgreesWithRandomLinesWalkedInSteps() => Gen.Select(RandomScenes.Scenes, RandomScenes.Cameras, Gen.Int[0, 1_000_000]).Sample(
        (scene, camera, seed) =>
        {
            var view = new SceneView(scene, camera, Lines).Outline(0, new int[scene.Count]);
            var (alone, seen) = Walk(scene, camera, new(seed));
            if (alone < 100)
            {
                return;
            }

            var share = (double)seen / alone;
            Assert.Equal(share, view.Share, 4 * SolidView.UncertaintyOf(share, alone) + view.Uncertainty + 0.03);
        },
        iter: 40);

    [Fact]
    public void Outline_SolidAlone_ShowsAsAWhole() => Gen.Select(RandomScenes.Solids, RandomScenes.Cameras).Sample((solid, camera) =>
    {
        var view = new SceneView(new([solid], []), camera, Lines).Outline(0, []);
        Assert.Equal(1, view.Share);
        Assert.True(view.Alone > 0);
    });

    // A ball of radius r at distance x, on the axis, projects into a circle: r² R² / (x² - r²) in the plane at R. Standard geometry.
    [Fact]
    public void Outline_BallOnTheAxis_CoversItsCircle()
    {
        var camera = new ViewGeometry(new(0, 0, 30), 20, 35, 700, 400, 300);
        var ball = new ViewSolid(SolidKind.Ellipsoid, default, 0, 60, 60, 60);
        var view = new SceneView(new([ball], []), camera, 400).Outline(0, []);
        var circle = PI * 900 * 700 * 700 / (700 * 700 - 900.0);
        Assert.Equal(circle, view.InFrameMm2, 0.003 * circle);
        Assert.Equal(0, view.SumRightMm / view.Seen, 0.1);
        Assert.Equal(0, view.SumUpMm / view.Seen, 0.1);
    }

    [Fact]
    public void Outline_SceneAndCameraTurnedTogether_ShowsTheSame() => Gen.Select(RandomScenes.Scenes, RandomScenes.Cameras, Gen.Double[-180, 180]).Sample(
        (scene, camera, turn) =>
        {
            var (sin, cos) = SinCos(turn * PI / 180);
            var aim = new Vector(camera.Aim.X * cos - camera.Aim.Y * sin, camera.Aim.X * sin + camera.Aim.Y * cos, camera.Aim.Z);
            var turned = new ViewGeometry(aim, camera.AzimuthDeg + turn, camera.ElevationDeg, camera.DistanceMm, camera.FieldWidthMm, camera.FieldHeightMm);
            var both = new SceneView(scene.Turned(turn, new bool[scene.Count]), turned, Lines).Outline(0, []);
            var first = new SceneView(scene, camera, Lines).Outline(0, []);
            Assert.Equal(first.Share, both.Share, 2 * first.Uncertainty);
        });

    [Fact]
    public void Outline_AllLengthsScaled_ShowsTheSame() => Gen.Select(RandomScenes.Solids.List[2, 4], RandomScenes.Cameras, Gen.Double[0.2, 5]).Sample(
        (solids, camera, k) =>
        {
            var scaled = new ViewGeometry(
                camera.Aim * k, camera.AzimuthDeg, camera.ElevationDeg, camera.DistanceMm * k, camera.FieldWidthMm * k, camera.FieldHeightMm * k);
            var larger = new ViewScene(
                [.. solids.Select(solid => new ViewSolid(
                    solid.Kind, solid.Base * k, solid.TurnDeg, solid.WidthMm * k, solid.DepthMm * k, solid.HeightMm * k, solid.TopShare))], []);
            var first = new SceneView(new(solids, []), camera, Lines).Outline(0, []);
            Assert.Equal(first.Share, new SceneView(larger, scaled, Lines).Outline(0, []).Share, 2 * first.Uncertainty);
        });

    // The nearest and the farthest part, found again among many points of the surface.
    [Fact]
    public void Depths_RandomSolid_AreTheReachOfItsPoints() => Gen.Select(RandomScenes.Solids, RandomScenes.Cameras).Sample((solid, camera) =>
    {
        var (near, far) = new SceneView(new([solid], []), camera, 16).Depths(0);
        var depths = Surface(solid).Select(camera.DepthOf).ToList();
        Assert.InRange(depths.Min(), near - 1e-9, near + 1.5);
        Assert.InRange(depths.Max(), far - 1.5, far + 1e-9);
    });

    [Fact]
    public void Top_FromStraightAbove_ShowsAll() => RandomScenes.Solids.Sample(solid =>
    {
        var (seen, points) = new SceneView(new([solid], []), new(default, 0, 90, null, 400, 300), 40).Top(0);
        Assert.Equal(points, seen);
    });

    [Fact]
    public void Hidden_RandomScene_AddsUpToWhatDoesNotShow() => Gen.Select(RandomScenes.Scenes, RandomScenes.Cameras).Sample((scene, camera) =>
    {
        var hidden = new int[scene.Count];
        var view = new SceneView(scene, camera, Lines).Outline(0, hidden);
        Assert.Equal(view.Alone - view.Seen, hidden.Sum());
        Assert.Equal(0, hidden[0]);
    });

    private static IEnumerable<Vector> Surface(ViewSolid solid)
    {
        for (var i = 0; i < 72; i++)
        {
            for (var j = 0; j <= 36; j++)
            {
                var (sin, cos) = SinCos(i * 5 * PI / 180);
                var (up, out_) = SinCos((j - 18) * 5 * PI / 180);
                var square = Max(Abs(sin), Abs(cos));
                var z = j / 36.0;
                yield return solid.Kind switch
                {
                    SolidKind.Box => solid.OnSet(cos / square, sin / square, z * solid.HeightMm),
                    SolidKind.ConeFrustum => solid.OnSet(
                        cos * (1 + (solid.TopShare - 1) * z), sin * (1 + (solid.TopShare - 1) * z), z * solid.HeightMm),
                    SolidKind.Ellipsoid => solid.OnSet(cos * out_, sin * out_, (up + 1) / 2 * solid.HeightMm),
                    _ => solid.OnSet(cos * Abs(out_), sin * Abs(out_), Abs(up) * solid.HeightMm),
                };
            }
        }
    }

    private static (int Alone, int Seen) Walk(ViewScene scene, ViewGeometry camera, Random random)
    {
        var walked = new MarchedScene(scene);
        var box = scene.Rectangle(0, camera);
        var (alone, seen) = (0, 0);
        for (var k = 0; k < 300; k++)
        {
            var line = camera.Through(
                box.LeftMm + (box.RightMm - box.LeftMm) * random.NextDouble(), box.LowMm + (box.HighMm - box.LowMm) * random.NextDouble());
            var middle = (camera.Aim - line.From).Length;
            if (walked.First(line, middle - 300, middle + 300, thing => thing == 0) != 0)
            {
                continue;
            }

            alone++;
            seen += walked.First(line, middle - 300, middle + 300, _ => true) == 0 ? 1 : 0;
        }

        return (alone, seen);
    }
}
