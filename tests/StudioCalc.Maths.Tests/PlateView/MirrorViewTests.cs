using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Shares of a surface in which things mirror.</summary>
public sealed class MirrorViewTests
{
    // Random sight lines by way of the camera's image behind the plane, each met by hand.
    [Fact]
    public void Plane_CoveredShare_IsThatOfRandomLinesFromTheImage() => Gen.Select(
        Mirrors.Cameras, Gen.Double[-300, 300], Gen.Double[200, 900], Gen.Double[50, 500], Gen.Int[0, 1000]).Sample(
        (camera, right, height, size, seed) =>
        {
            var thing = new MirrorFace(LightFace.Of(new(new(right, 300, height), new(right, 300, 0)), FaceOutline.Rectangle(size, size)));
            var view = Mirrors.View(Mirrors.Flat(200, 150), camera, 64, thing);
            var random = new Random(seed);
            var image = camera with { Z = -camera.Z };
            var (all, met) = (0.0, 0.0);
            const int Lines = 100_000;
            for (var i = 0; i < Lines; i++)
            {
                var place = new Vector((random.NextDouble() - 0.5) * 200, (random.NextDouble() - 0.5) * 150, 0);
                var way = place - image;
                var weight = way.Z / Math.Pow(way.Length, 3);
                var at = image + way * ((height - image.Z) / way.Z);
                all += weight;
                met += Math.Abs(at.X - right) <= size / 2 && Math.Abs(at.Y - 300) <= size / 2 ? weight : 0;
            }

            var (share, found) = (met / all, view.Reflections.Count > 0 ? view.Reflections[0] : null);
            Assert.InRange((found?.CoveredShare ?? 0) - share, -(found?.UncertaintyShare ?? 0) - 0.008, (found?.UncertaintyShare ?? 0) + 0.008);
        },
        iter: 40);

    // The uncertainty is an estimate and no bound: nine in ten stay within it, and none is far off.
    [Fact]
    public void CoveredShare_AgainstFarMoreLines_IsMostlyWithinItsUncertainty()
    {
        var (all, beyond) = (0, 0);
        Gen.Select(Mirrors.Shapes, Mirrors.Cameras, Mirrors.Things, Mirrors.Things).Sample(
            (shape, camera, one, other) =>
            {
                var (coarse, fine) = (Mirrors.View(shape, camera, 32, one, other), Mirrors.View(shape, camera, 230, one, other));
                foreach (var found in coarse.Reflections)
                {
                    var best = fine.Reflections.Single(reflection => reflection.Thing == found.Thing);
                    var off = Math.Abs(best.CoveredShare - found.CoveredShare);
                    Assert.InRange(off, 0, found.UncertaintyShare + best.UncertaintyShare + 0.02);
                    Interlocked.Increment(ref all);
                    Interlocked.Add(ref beyond, off > found.UncertaintyShare + best.UncertaintyShare + 0.002 ? 1 : 0);
                }

                // A coarse grid may miss what covers next to nothing.
                Assert.All(
                    fine.Reflections.Where(reflection => coarse.Reflections.All(found => found.Thing != reflection.Thing)),
                    missed => Assert.InRange(missed.CoveredShare, 0, 0.002));
            },
            iter: 40);
        Assert.True(10 * beyond <= all, $"{beyond} of {all} beyond");
    }

    [Fact]
    public void SceneAndCamera_TurnedTogether_MirrorAlike() => Gen.Select(Mirrors.Cameras, Mirrors.Places, Gen.Double[-180, 180], Gen.Int[0, 2]).Sample(
        (camera, place, turn, kind) =>
        {
            var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
            var (first, second) = (See(vector => vector), See(vector => new(vector.X * cos - vector.Y * sin, vector.X * sin + vector.Y * cos, vector.Z)));
            Assert.Equal(Mirrors.Share(first, 0), Mirrors.Share(second, 0), 2e-4);

            MirrorView See(Func<Vector, Vector> move)
            {
                var at = move(new(40, 30, 0));
                MirrorShape shape = kind switch
                {
                    0 => new MirrorFlat(new(at, at + move(new(0, 30, 100))), 200, 120),
                    1 => new MirrorCylinder(at, 70, 90),
                    _ => new MirrorDome(at, 60),
                };
                return Mirrors.View(shape, move(camera), 48, Mirrors.Rectangle(move(place), 500, 400));
            }
        });

    [Fact]
    public void Lengths_AllScaled_MirrorAlike() => Gen.Select(Mirrors.Cameras, Mirrors.Places, Gen.Double[0.2, 5], Gen.Int[0, 2]).Sample(
        (camera, place, by, kind) =>
        {
            Assert.Equal(Mirrors.Share(See(1), 0), Mirrors.Share(See(by), 0), 2e-4);

            MirrorView See(double by)
            {
                MirrorShape shape = kind switch
                {
                    0 => Mirrors.Flat(200 * by, 120 * by),
                    1 => new MirrorCylinder(default, 70 * by, 90 * by),
                    _ => new MirrorDome(default, 60 * by),
                };
                return Mirrors.View(shape, camera * by, 48, Mirrors.Rectangle(place * by, 500 * by, 400 * by));
            }
        });

    [Fact]
    public void Things_AllTogether_NeverCoverMoreThanTheSurface() => Gen.Select(Mirrors.Shapes, Mirrors.Cameras, Mirrors.Things.List[1, 5]).Sample(
        (shape, camera, things) =>
        {
            var view = Mirrors.View(shape, camera, 24, [.. things]);
            Assert.InRange(view.Reflections.Sum(reflection => reflection.CoveredShare), 0, 1 + 1e-9);
            Assert.All(view.Reflections, reflection => Assert.InRange(reflection.MirroredShare, 0.02, 1));
        },
        iter: 100);

    [Fact]
    public void Face_FromBehind_IsDarkAndHides_UnlessItHasTwoSides()
    {
        var camera = new Vector(0, -500, 500);
        var behind = new Vector(0, 500, 500);
        var back = new MirrorFace(LightFace.Of(new(behind, behind * 2), FaceOutline.Rectangle(2000, 2000)));
        var card = new MirrorFace(LightFace.Of(new(behind, behind * 2), FaceOutline.Rectangle(2000, 2000)), hasTwoSides: true);
        var window = Mirrors.Rectangle(behind * 2, 3000, 3000);
        var shape = Mirrors.Flat(100, 100);
        Assert.Empty(Mirrors.View(shape, camera, 16, back, window).Reflections);
        Assert.Equal(1, Mirrors.Share(Mirrors.View(shape, camera, 16, card, window), 0));
        Assert.Equal(1, Mirrors.Share(Mirrors.View(shape, camera, 16, window), 0));
    }

    [Fact]
    public void Lamp_FarSmallerThanACell_IsFound()
    {
        var camera = new Vector(0, -600, 300);
        var lamp = new MirrorBall(new(1500, 500, 2500), 30);
        var found = Assert.Single(Mirrors.View(new MirrorDome(default, 24), camera, 16, lamp).Reflections);
        var fine = Assert.Single(Mirrors.View(new MirrorDome(default, 24), camera, 500, lamp).Reflections);
        Assert.Equal(fine.CoveredShare, found.CoveredShare, 0.2 * fine.CoveredShare);
        Assert.InRange((fine.Middle - found.Middle).Length, 0, 0.1);
    }

    [Fact]
    public void Surface_SeenFromBehind_MirrorsNothing()
    {
        var thing = new MirrorBall(new(0, 0, -500), 300);
        Assert.Empty(Mirrors.View(Mirrors.Flat(100, 100), new(0, -300, -200), 16, thing).Reflections);
        Assert.Null(Mirrors.Flat(100, 100).Middle(new(0, -300, -200)));
        Assert.Null(new MirrorCylinder(default, 100, 50).Middle(new(10, 10, 400)));
        Assert.Null(new MirrorDome(default, 100).Middle(new(10, 10, -400)));
        Assert.NotNull(new MirrorDome(default, 100).Middle(new(70, 10, -400)));
    }

    [Fact]
    public void Waves_SpreadAReflection_AndSmallOnesLeaveIt()
    {
        var camera = new Vector(0, -500, 500);
        var thing = Mirrors.Rectangle(new(0, 700, 700), 300, 300);
        var flat = Mirrors.Share(Mirrors.View(Mirrors.Flat(100, 100), camera, 64, thing), 0);
        Assert.Equal(1, flat, 1e-12);
        Assert.Equal(flat, Mirrors.Share(Mirrors.View(Mirrors.Flat(100, 100, wave: 0.01), camera, 64, thing), 0), 1e-3);

        // A small surface: the mirrored directions fill a disc of twice the slope.
        var view = Assert.Single(Mirrors.View(Mirrors.Flat(1, 1, wave: 20), camera, 64, thing).Reflections);
        var directions = 0;
        const int Slopes = 200_000;
        var random = new Random(1);
        for (var i = 0; i < Slopes; i++)
        {
            var (tilt, turn) = (20 * Math.PI / 180 * Math.Sqrt(random.NextDouble()), 2 * Math.PI * random.NextDouble());
            var normal = new Vector(Math.Sin(tilt) * Math.Cos(turn), Math.Sin(tilt) * Math.Sin(turn), Math.Cos(tilt));
            directions += double.IsFinite(thing.Reach(default, MirrorLaw.Reflect(-camera.Unit(), normal))) ? 1 : 0;
        }

        Assert.Equal((double)directions / Slopes, view.CoveredShare, 2 * view.UncertaintyShare + 0.002);
    }
}
