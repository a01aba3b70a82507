using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ShadowTests
{
    private static readonly Gen<Vector> About = Gen.Select(Gen.Double[-300, 300], Gen.Double[-300, 300], Gen.Double[50, 400], (x, y, z) => new Vector(x, y, z));

    private static readonly Gen<LightBlocker> Things = Gen.OneOf<LightBlocker>(
        Gen.Select(About, Gen.Double[5, 300], LightBlocker (centre, size) => new BallBlocker(centre, size)),
        Gen.Select(About, About, Gen.Double[5, 200], LightBlocker (from, to, size) => new TubeBlocker(from, to, size)),
        Gen.Select(About, Gen.Double[10, 300], Gen.Double[10, 300], Gen.Double[-180, 180], LightBlocker (at, width, depth, turn) => new BoxBlocker(at, width, depth, 120, turn)));

    private static readonly LightPoint Up = new(default, Vector.Up);

    [Fact]
    public void WallWhoseEdgeHalvesAFace_TakesHalfItsLight()
    {
        var face = LightFace.Of(new(new(0, 0, 900), default), FaceOutline.Disc(600), 0.5, 3);
        var wall = new BoxBlocker(new(500, 0, 300), 1000, 2000, 10);
        foreach (var collector in (Collector[])[Collector.Flat, Collector.Dome])
        {
            var shadow = FaceShadow.Trace(face, [wall], Up with { Collector = collector }, 24);
            Assert.Equal(0.5, shadow.ShadedShare, 1e-9);
            Assert.Equal([true], shadow.Blocking);
            Assert.InRange(shadow.ShareError, 0, 0.04);
        }
    }

    // A ball on the axis hides a cone; its share of a disc's light is sin² over sin² of the half angles.
    [Theory]
    [InlineData(60)]
    [InlineData(150)]
    public void BallOnTheAxis_TakesItsConeOfADisc(double diameter)
    {
        var face = LightFace.Of(new(new(0, 0, 900), default), FaceOutline.Disc(600));
        var ball = new BallBlocker(new(0, 0, 400), diameter);
        var hidden = Math.Pow(diameter / 2 / 400, 2);
        var share = hidden / (300.0 * 300 / (300.0 * 300 + 900.0 * 900));
        var shadow = FaceShadow.Trace(face, [ball], Up, 48);
        Assert.InRange(Math.Abs(shadow.ShadedShare - share), 0, shadow.ShareError);
        Assert.Equal(share, shadow.ShadedShare, 0.004);
    }

    [Fact]
    public void AnyScene_AgainstRandomRays_IsWithinTheStatedError() => Gen.Select(Things.List[1, 3], About, Gen.Bool, Gen.Int[0, 1000]).Sample(
        (things, aim, isDome, seed) =>
        {
            var axes = new FaceAxes(new(-300, 500, 700), aim * 0.2, 15);
            var face = LightFace.Of(axes, FaceOutline.Rectangle(500, 800), 0.5, 2);
            var at = new LightPoint(new(0, 0, -30), new Vector(0.1, 0.5, 1).Unit(), isDome ? Collector.Dome : Collector.Flat);
            var shadow = FaceShadow.Trace(face, things, at, 16);
            var random = new Random(seed);
            var (all, dark, square) = (0.0, 0.0, 0.0);
            const int Rays = 20_000;
            for (var i = 0; i < Rays; i++)
            {
                var (x, y) = (random.NextDouble() - 0.5, random.NextDouble() - 0.5);
                var way = axes.At(x * 500, y * 800) - at.Place;
                var cosine = way.Dot(at.Normal) / way.Length;
                var one = (Math.Abs(x) < 0.25 && Math.Abs(y) < 0.25 ? 2 : 1) * Math.Max(0, -way.Dot(axes.Facing)) / Math.Pow(way.Length, 3)
                    * (isDome ? (1 + cosine) / 2 : Math.Max(0, cosine));
                var blocked = things.Any(thing => thing.Blocks(at.Place, at.Place + way));
                (all, dark, square) = (all + one, dark + (blocked ? one : 0), square + one * one);
            }

            var share = dark / all;
            var error = Math.Sqrt(square) / all;
            Assert.InRange(shadow.ShadedShare, share - shadow.ShareError - 5 * error, share + shadow.ShareError + 5 * error);
            Assert.Equal(face.Light(at), shadow.Light, 1e-9 * face.Light(at));
            Assert.True(shadow.Least <= shadow.Left && shadow.Left <= shadow.Most);
        },
        iter: 150);

    [Fact]
    public void MoreThings_NeverLeaveMoreLight() => Gen.Select(Things, Things).Sample(
        (one, other) =>
        {
            var face = LightFace.Of(new(new(-300, 500, 700), default), FaceOutline.Polygon(8, 600));
            var (alone, both) = (FaceShadow.Trace(face, [one], Up, 12), FaceShadow.Trace(face, [one, other], Up, 12));
            Assert.True(both.Most <= alone.Most + 1e-12 && both.Least <= alone.Least + 1e-12);
        },
        iter: 100);

    [Fact]
    public void Thing_GrownAndShrunk_HoldsWhatItsSurfaceIsNearTo() => Gen.Select(Things, About, About, Gen.Double[0, 60]).Sample(
        (thing, from, to, by) =>
        {
            if (from == to)
            {
                return;
            }

            Assert.True(!thing.Blocks(from, to, -by) || thing.Blocks(from, to));
            Assert.True(!thing.Blocks(from, to) || thing.Blocks(from, to, by));

            // A way that meets the thing still meets it, grown, when moved by as much.
            var aside = new Vector(0.6, 0, 0.8) * by;
            Assert.True(!thing.Blocks(from, to) || thing.Blocks(from + aside, to + aside, by * (1 + 1e-9)));
            Assert.True(!thing.Blocks(from, to, -by) || thing.Blocks(from + aside, to + aside, 1e-9));
            Assert.Equal(thing.Blocks(from, to), thing.Blocks(to, from));
        },
        iter: 5000);

    [Fact]
    public void WayThatMissesOrStopsShort_IsNotBlocked()
    {
        var tube = new TubeBlocker(new(0, 0, 100), new(0, 0, 200), 20);
        Assert.True(tube.Blocks(default, new(0, 0, 100)));
        Assert.False(tube.Blocks(default, new(0, 0, 99)));
        Assert.True(tube.Blocks(new(-50, 9.9, 150), new(50, 9.9, 150)));
        Assert.False(tube.Blocks(new(-50, 10.1, 150), new(50, 10.1, 150)));
        Assert.False(tube.Blocks(new(-50, 0, 201), new(50, 0, 201)));
        var box = new BoxBlocker(default, 100, 20, 30, 90);
        Assert.True(box.Blocks(new(-50, 45, 10), new(50, 45, 10)));
        Assert.False(box.Blocks(new(11, 0, -10), new(11, 0, 50)));
        Assert.True(box.Blocks(new(9, 0, -10), new(9, 0, 50)));
        Assert.True(new BallBlocker(default, 10).Blocks(new(-20, 4.9, 0), new(20, 4.9, 0)));
        Assert.False(new BallBlocker(default, 10).Blocks(new(-20, 0, 0), new(-6, 0, 0)));
    }

    [Fact]
    public void PointSource_IsLitOrDark()
    {
        var lamp = LightFace.Point(new(new(0, 0, 900), default));
        var dark = FaceShadow.Trace(lamp, [new BallBlocker(new(0, 3, 400), 10)], Up, 4);
        Assert.Equal((1, 0), (dark.ShadedShare, dark.ShareError));
        Assert.Equal(0, FaceShadow.Trace(lamp, [new BallBlocker(new(0, 6, 400), 10)], Up, 4).ShadedShare);
        Assert.Equal(0, FaceShadow.Trace(lamp, [new BallBlocker(new(0, 3, 400), 10)], Up with { Normal = -Vector.Up }, 4).ShadedShare);
    }
}
