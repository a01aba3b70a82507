using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class FallOffMapTests
{
    private static readonly FallOffArea Plate = new(new(0, 0, 20), 280, 200, 9, 5);

    [Fact]
    public void Points_RunFromEdgeToEdgeAlike() =>
        Gen.Select(Gen.Double[1, 10000], Gen.Double[1, 10000], Gen.Int[2, 200], Gen.Int[2, 200]).Sample((width, depth, columns, rows) =>
        {
            var area = new FallOffArea(default, width, depth, columns, rows);
            Assert.Equal(new(-width / 2, -depth / 2, 0), area.At(0, 0));
            Assert.Equal(new(width / 2, depth / 2, 0), area.At(columns - 1, rows - 1));
            Assert.Equal(-area.At(1, 1), area.At(columns - 2, rows - 2));
            Assert.True(area.Holds(area.At(columns / 2, rows / 3)));
            Assert.False(area.Holds(area.At(columns / 2, rows / 3) + new Vector(0, 0, 0.001)));
        });

    [Fact]
    public void LightFromTheMiddle_FallsOffAlikeToBothSides() => Gen.Double[200, 2000].Sample(height =>
    {
        var map = Map(LightFace.Of(new(new(0, 0, height), default), FaceOutline.Rectangle(700, 500)));
        for (var row = 0; row < Plate.Rows; row++)
        {
            for (var column = 0; column < Plate.Columns; column++)
            {
                Assert.Equal(map.StopsAt(column, row)!.Value, map.StopsAt(Plate.Columns - 1 - column, Plate.Rows - 1 - row)!.Value, 1e-12);
            }
        }

        Assert.Equal(0, map.FrontToBackStops!.Value, 1e-12);
        Assert.Equal(0, map.RightToLeftStops!.Value, 1e-12);
        Assert.Equal(Plate.Middle, map.Brightest);
    });

    [Fact]
    public void PointSource_FallsOffBySquareAndCosine()
    {
        var map = Map(LightFace.Point(new(new(-300, -900, 700), default)));
        for (var column = 0; column < Plate.Columns; column++)
        {
            Assert.Equal(Math.Log2(Light(Plate.At(column, 1)) / Light(Plate.Middle)), map.StopsAt(column, 1)!.Value, 1e-12);
        }

        static double Light(Vector place)
        {
            var (x, y, z) = (place.X + 300, place.Y + 900, 700 - place.Z);
            return z / Math.Pow(x * x + y * y + z * z, 1.5);
        }
    }

    [Fact]
    public void TwoAlike_OnOneSideAndTheOther_ComeOutLikeOneOfTwiceTheWeight()
    {
        var face = LightFace.Of(new(new(-300, -900, 700), default), FaceOutline.Polygon(8, 900));
        var none = default(NoTrail);
        var two = FallOffMap.Of(Plate, [new(face, 1.5), new(face, 1.5)], Up, Collector.Flat, ref none);
        var one = FallOffMap.Of(Plate, [new(face, 3)], Up, Collector.Flat, ref none);
        Assert.Equal(one.Middle, two.Middle, 1e-12);
        Assert.Equal(one.SpreadStops!.Value, two.SpreadStops!.Value, 1e-12);
    }

    [Fact]
    public void CancelledMap_EndsAtARow()
    {
        var none = default(NoTrail);
        Assert.Throws<OperationCanceledException>(() => FallOffMap.Of(
            Plate, [new(LightFace.Point(new(new(0, -900, 700), default)), 1)], Up, Collector.Flat, ref none, new CancellationToken(canceled: true)));
    }

    private static AreaFacing Up => new(Vector.Up, IsPlace: false);

    private static FallOffMap Map(LightFace face)
    {
        var none = default(NoTrail);
        return FallOffMap.Of(Plate, [new(face, 1)], Up, Collector.Flat, ref none);
    }
}
