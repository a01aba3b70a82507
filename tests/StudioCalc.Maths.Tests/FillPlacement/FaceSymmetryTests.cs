using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>What holds of the light of any face: it adds up, scales, turns and costs no memory.</summary>
public sealed class FaceSymmetryTests
{
    [Fact]
    public void HotCentre_OfAnyFace_IsTheRimAndASmallerFace() =>
        Gen.Select(Faces.Any, Gen.Double[0.05, 0.95], Gen.Double[1, 100], Gen.Bool).Sample((lit, share, ratio, dome) =>
        {
            var at = lit.At with { Collector = dome ? Collector.Dome : Collector.Flat };
            var small = LightFace.Of(lit.Axes, Array.ConvertAll(lit.Outline, corner => (corner.Right * share, corner.Up * share)));
            Near(lit.Face.Light(at) + (ratio - 1) * small.Light(at), LightFace.Of(lit.Axes, lit.Outline, share, ratio).Light(at), 1e-12 * ratio);
        });

    [Fact]
    public void Face_CutInTwo_GivesTheSumOfItsParts() =>
        Gen.Select(Faces.Any, Gen.Double[100, 1500], Gen.Double[100, 1500], Gen.Double[0.1, 0.9]).Sample((lit, width, height, cut) =>
        {
            var x = width * (cut - 0.5);
            var whole = LightFace.Of(lit.Axes, FaceOutline.Rectangle(width, height));
            var left = LightFace.Of(lit.Axes, [(-width / 2, -height / 2), (x, -height / 2), (x, height / 2), (-width / 2, height / 2)]);
            var right = LightFace.Of(lit.Axes, [(x, -height / 2), (width / 2, -height / 2), (width / 2, height / 2), (x, height / 2)]);
            Near(whole.Light(lit.At), left.Light(lit.At) + right.Light(lit.At), 1e-12);
        });

    [Fact]
    public void Set_OfAnotherSize_GivesTheSameLight() => Gen.Select(Faces.Any, Gen.Double[0.01, 100]).Sample((lit, scale) =>
    {
        var axes = new FaceAxes(lit.Axes.Centre * scale, lit.Axes.Centre * scale + lit.Axes.Facing);
        var face = LightFace.Of(axes, Array.ConvertAll(lit.Outline, corner => Turned(lit.Axes, axes, corner, scale)));
        Near(lit.Face.Light(lit.At), face.Light(lit.At with { Place = lit.At.Place * scale }), 1e-9);
    });

    [Fact]
    public void Set_TurnedAndMoved_GivesTheSameLight() =>
        Gen.Select(Faces.Any, Faces.Direction, Faces.Direction, Gen.Double[-5000, 5000]).Where((_, a, b, _) => a.Cross(b).Length > 0.1)
            .Sample((lit, first, second, away) =>
            {
                var z = first;
                var x = first.Cross(second).Unit();
                var y = z.Cross(x);
                Vector Turn(Vector v) => x * v.X + y * v.Y + z * v.Z;
                Vector Move(Vector v) => Turn(v) + second * away;
                var corners = lit.Corners;
                var moved = Array.ConvertAll(corners, Move);
                var (place, normal) = (Move(lit.At.Place), Turn(lit.At.Normal));
                Near(
                    PolygonLight.Factor(corners, lit.At.Place, lit.At.Normal), PolygonLight.Factor(moved, place, normal), 1e-10);
                Near(
                    PolygonLight.SignedFactor(corners, lit.At.Place, lit.At.Normal), PolygonLight.SignedFactor(moved, place, normal), 1e-10);
                Near(PolygonLight.SolidAngle(corners, lit.At.Place), PolygonLight.SolidAngle(moved, place), 1e-10);
            });

    [Fact]
    public void Face_MovedToOtherAxes_IsAsBuiltThere() => Gen.Select(Faces.Any, Faces.Any).Sample((lit, other) =>
    {
        var built = LightFace.Of(other.Axes, lit.Outline, 0.4, 3);
        var moved = LightFace.Of(lit.Axes, lit.Outline, 0.4, 3).MovedTo(other.Axes);
        Near(built.Light(other.At), moved.Light(other.At), 1e-9);
    });

    // A place on the floor of a closed room sees its other faces and nothing else.
    [Fact]
    public void ClosedRoom_SeenFromItsFloor_FillsTheView() =>
        Gen.Select(Gen.Double[100, 5000], Gen.Double[100, 5000], Gen.Double[100, 5000], Gen.Double[0.01, 0.99], Gen.Double[0.01, 0.99])
            .Sample((width, depth, height, across, along) =>
            {
                var at = new LightPoint(new(width * across, depth * along, 0), Vector.Up);
                var sum = Room(width, depth, height).Sum(face => face.Light(at) / Math.PI);
                Near(1, sum, 1e-12);
            });

    [Fact]
    public void Light_OfAFace_AllocatesNothing()
    {
        var face = LightFace.Of(new(new(0, -900, 500), default), FaceOutline.Polygon(8, 900), 0.4, 3);
        LightPoint[] places =
        [
            new(new(20, 30, 0), Vector.Up),
            new(new(20, 30, 0), Vector.Towards(0, 5), Collector.Dome),
            new(new(-400, 100, 0), Vector.Towards(60, -10)),
        ];
        var sum = Add(face, places);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++)
        {
            sum += Add(face, places);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }

    private static double Add(LightFace face, LightPoint[] places)
    {
        var sum = 0.0;
        foreach (var at in places)
        {
            sum += face.Light(at);
        }

        return sum;
    }

    private static LightFace[] Room(double width, double depth, double height)
    {
        var middle = new Vector(width / 2, depth / 2, height / 2);
        return
        [
            Wall(new(width / 2, depth / 2, height), width, depth),
            Wall(new(0, depth / 2, height / 2), depth, height),
            Wall(new(width, depth / 2, height / 2), depth, height),
            Wall(new(width / 2, 0, height / 2), width, height),
            Wall(new(width / 2, depth, height / 2), width, height),
        ];

        LightFace Wall(Vector at, double wide, double high) => LightFace.Of(new(at, middle), FaceOutline.Rectangle(wide, high));
    }

    // A corner in a face's own directions, on a face that looks the same way without a roll.
    private static (double Right, double Up) Turned(FaceAxes from, FaceAxes to, (double Right, double Up) corner, double scale)
    {
        var way = (from.At(corner.Right, corner.Up) - from.Centre) * scale;
        return (way.Dot(to.Right), way.Dot(to.Up));
    }

    private static void Near(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, FormattableString.Invariant($"{expected:R} and {actual:R}"));
}
