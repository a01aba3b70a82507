using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class BounceTests
{
    private static readonly LightFace Octabox = LightFace.Of(
        new(new(-500, -700, 600), new(0, 200, 100)), FaceOutline.Polygon(8, 900), 0.4, 3);

    private static readonly BounceFace Card = new(new(new(150, 300, 150), new(0, -100, 60), 20), 500, 350);

    private static readonly Gen<Vector> Near = Gen.Select(Gen.Double[-200, 200], Gen.Double[-200, 200], Gen.Double[-20, 100], (x, y, z) => new Vector(x, y, z));

    // Rays from the receiver to evenly spread points of the card, and from there to evenly spread points of the source, with a seed.
    [Theory]
    [InlineData(Collector.Flat, 1)]
    [InlineData(Collector.Dome, 2)]
    public void MattCard_AgainstRandomRays_IsWithinFourStandardErrors(Collector collector, int seed)
    {
        var at = new LightPoint(new(0, 0, 30), (Card.Axes.Centre - new Vector(0, 0, 30)).Unit(), collector);
        var random = new Random(seed);
        var (sum, square) = (0.0, 0.0);
        const int Rays = 200_000;
        for (var i = 0; i < Rays; i++)
        {
            var on = Card.Axes.At((random.NextDouble() - 0.5) * Card.WidthMm, (random.NextDouble() - 0.5) * Card.HeightMm);
            var one = RandomLight(random, new(on, Card.Axes.Facing)) / Math.PI * Transfer(on, Card.Axes.Facing, at) * Card.WidthMm * Card.HeightMm;
            sum += one;
            square += one * one;
        }

        var mean = sum / Rays;
        var error = Math.Sqrt((square / Rays - mean * mean) / Rays);
        var exact = BounceLight.Matt(Card, [(Octabox, 1)], at);
        Assert.InRange(exact.Light, mean - 4 * error, mean + 4 * error);
        Assert.InRange(error / mean, 0, 0.005);
        Assert.InRange(exact.Residual, 0, 3e-4);
    }

    // Nearer than that the source would pass through the card.
    [Fact]
    public void MattCard_OfAnySourceAndPlace_IsTheSumOverManyEvenPatches() => Gen.Select(Near, Near, Gen.Double[170, 900], Gen.Bool).Sample(
        (place, aim, distance, isPoint) =>
        {
            var axes = new FaceAxes(Card.Axes.Centre + (new Vector(-0.5, -1, 0.7) * distance), Card.Axes.Centre);
            var face = isPoint ? LightFace.Point(axes) : LightFace.Of(axes, FaceOutline.Rectangle(300, 120));
            var at = new LightPoint(place, (Card.Axes.Centre + aim - place).Unit());
            var halved = BounceLight.Matt(Card, [(face, 1)], at).Light;
            var even = BounceLight.Even(Card, [(face, 1)], at, 160);
            Assert.True(Math.Abs(halved - even) <= 5e-4 * even, $"{halved} instead of {even}");
        },
        iter: 60);

    [Fact]
    public void Mirror_OfAPoint_FollowsInverseSquareOverTheWholePath_WithinItsEdges()
    {
        var lamp = LightFace.Point(new(new(-400, -300, 0), default));
        var mirror = new BounceFace(new(new(0, 500, 0), default), 300, 300);
        var path = Math.Sqrt(400 * 400 + 1300 * 1300);
        var at = new LightPoint(new(0, 0, 0), new(0, 1, 0));
        Assert.Equal(0, BounceLight.Mirror(mirror, [(lamp, 1)], at));

        var wide = new BounceFace(mirror.Axes, 600, 300); // The ray meets the mirror 154 mm to its side.
        Assert.Equal(1300 / path / path / path, BounceLight.Mirror(wide, [(lamp, 1)], at), 1e-15);
        Assert.Equal(0, BounceLight.Mirror(wide, [(lamp, 1)], new(new(0, 600, 0), new(0, -1, 0))));
    }

    // Half the image shows over the mirror's edge, which passes through the receiver's axis.
    [Fact]
    public void Mirror_WhoseEdgeHalvesTheImage_GivesHalfItsLight()
    {
        var face = LightFace.Of(new(new(0, -800, 0), default), FaceOutline.Disc(500), 0.5, 4);
        var half = new BounceFace(new(new(0, 400, 500), new(0, 0, 500)), 1000, 1000);
        var at = new LightPoint(default, new(0, 1, 0));
        var whole = face.Light(new(new(0, 800, 0), new(0, -1, 0)));
        Assert.Equal(whole / 2, BounceLight.Mirror(half, [(face, 1)], at), whole * 1e-9);
        var dome = at with { Collector = Collector.Dome };
        Assert.Equal(face.Light(new(new(0, 800, 0), new(0, -1, 0), Collector.Dome)) / 2, BounceLight.Mirror(half, [(face, 1)], dome), whole * 1e-9);
    }

    [Fact]
    public void Mirror_AgainstRandomRays_ShowsThePartOfTheSourceThatTheyHit()
    {
        var mirror = new BounceFace(new(new(150, 300, 150), new(-230, -200, 330), 20), 260, 180);
        var at = new LightPoint(new(0, 0, 30), (mirror.Axes.Centre - new Vector(0, 0, 30)).Unit());
        var random = new Random(3);
        var (sum, square) = (0.0, 0.0);
        const int Rays = 200_000;
        for (var i = 0; i < Rays; i++)
        {
            var on = mirror.Axes.At((random.NextDouble() - 0.5) * mirror.WidthMm, (random.NextDouble() - 0.5) * mirror.HeightMm);
            var way = (on - at.Place).Unit();
            var k = mirror.Axes.Facing;
            var back = way - k * (2 * way.Dot(k));
            var down = back.Dot(Octabox.Axes.Facing);
            var along = (Octabox.Axes.Centre - on).Dot(Octabox.Axes.Facing) / down;
            var one = down < 0 && along > 0 ? Luminance(on + back * along) * Transfer(on, k, at) * mirror.WidthMm * mirror.HeightMm : 0;
            sum += one;
            square += one * one;
        }

        var mean = sum / Rays;
        var error = Math.Sqrt((square / Rays - mean * mean) / Rays);
        Assert.True(mean > 0);
        Assert.InRange(BounceLight.Mirror(mirror, [(Octabox, 1)], at), mean - 4 * error, mean + 4 * error);
    }

    [Fact]
    public void SmallFarCard_GivesTheProductOfTwoInverseSquares()
    {
        var lamp = LightFace.Point(new(new(-2000, -3000, 1000), default));
        var card = new BounceFace(new(new(0, 2000, 500), new(0, 0, 0)), 20, 20);
        var at = new LightPoint(default, new Vector(0.2, 1, 0.1).Unit());
        var exact = 0.85 * BounceLight.Matt(card, [(lamp, 7)], at).Light;
        Assert.Equal(exact, BounceOutcome.FarEstimate(card, lamp, 7, 0.85, at)!.Value, exact * 1e-4);
        Assert.Null(BounceOutcome.FarEstimate(card, lamp, 7, 0.85, at with { Normal = new(0, -1, 0) }));
    }

    // A far small lamp and a far small receiver: the matt card faces midway, weighed by cosine times cosine.
    [Fact]
    public void BestDirection_OfASmallCardBetweenTwoFarPoints_IsHalfWayBetweenThem()
    {
        var lamp = LightFace.Point(new(new(-3000, -1000, 800), default));
        var card = new BounceFace(new(new(0, 2000, 0), default), 10, 10);
        var at = new LightPoint(default, new(0, 1, 0));
        var best = BounceAim.Find(facing => BounceLight.Even(card.Turned(facing, 0), [(lamp, 1)], at, 2), [])!.Value;
        var middle = ((lamp.Axes.Centre - card.Axes.Centre).Unit() + (at.Place - card.Axes.Centre).Unit()).Unit();
        Assert.InRange(FaceView.AngleDeg(best, middle), 0, 0.1);
        Assert.Null(BounceAim.Find(_ => 0, [middle]));
    }

    [Fact]
    public void Surface_IsBetweenPlaces_WhenTheirWayPassesIt()
    {
        var wall = new BounceFace(new(new(0, 500, 0), default), 200, 100);
        Assert.True(wall.IsBetween(default, new(0, 900, 0)));
        Assert.True(wall.IsBetween(new(180, 1000, 80), default));
        Assert.False(wall.IsBetween(new(220, 1000, 80), default));
        Assert.False(wall.IsBetween(default, new(0, 400, 0)));
        Assert.Equal(500, wall.DistanceMm(default), 1e-9);
        Assert.Equal(5, wall.DistanceMm(new(103, 504, 50)), 1e-9);
        Assert.True(wall.Holds(new(99, 500, 49)));
        Assert.False(wall.Holds(new(99, 501, 49)));
    }

    private static double Transfer(Vector on, Vector facing, in LightPoint at)
    {
        var way = on - at.Place;
        var (square, length) = (way.Dot(way), way.Length);
        var cosine = way.Dot(at.Normal) / length;
        return Math.Max(0, -way.Dot(facing)) / length * (at.Collector == Collector.Dome ? (1 + cosine) / 2 : Math.Max(0, cosine)) / square;
    }

    // Light at a point from one random point of the octabox's bounding square.
    private static double RandomLight(Random random, in LightPoint at)
    {
        const double Side = 900 / 0.9238795325112867;
        var place = Octabox.Axes.At((random.NextDouble() - 0.5) * Side, (random.NextDouble() - 0.5) * Side);
        return Luminance(place) * Transfer(place, Octabox.Axes.Facing, at) * Side * Side;
    }

    private static double Luminance(Vector place)
    {
        var way = place - Octabox.Axes.Centre;
        var (x, y) = (Math.Abs(way.Dot(Octabox.Axes.Right)), Math.Abs(way.Dot(Octabox.Axes.Up)));
        var reach = Math.Max(Math.Max(x, y), (x + y) / Math.Sqrt(2));
        return reach <= 180 ? 3 : reach <= 450 ? 1 : 0;
    }
}
