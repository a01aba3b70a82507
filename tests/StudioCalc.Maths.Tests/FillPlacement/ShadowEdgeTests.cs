using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ShadowEdgeTests
{
    // Rays over the edge from points all over the face land within the soft edge, and nearly at both its ends.
    [Fact]
    public void Penumbra_OfRandomFaces_HoldsEveryRay() => Gen.Select(
        Gen.Double[-180, 180], Gen.Double[20, 89], Gen.Double[800, 3000], Gen.Double[-180, 180], Gen.Double[50, 600], Gen.Double[50, 600], Gen.Double[5, 80]).Sample(
        (azimuth, elevation, distance, roll, width, height, edge) =>
        {
            var axes = new FaceAxes(Vector.Towards(azimuth, elevation) * distance, default, roll);
            var face = LightFace.Of(axes, FaceOutline.Rectangle(width, height));
            var none = default(NoTrail);
            var penumbra = ShadowEdge.PenumbraMm(face, edge, ref none);
            var way = new Vector(axes.Centre.X, axes.Centre.Y, 0).Unit();
            var at = axes.Centre * (edge / axes.Centre.Z);
            var (low, high, open) = (double.PositiveInfinity, double.NegativeInfinity, false);
            for (var i = 0; i <= 20; i++)
            {
                for (var j = 0; j <= 20; j++)
                {
                    var from = axes.At((i / 20.0 - 0.5) * width, (j / 20.0 - 0.5) * height);
                    open |= from.Z <= edge;
                    var lands = (from + (at - from) * (from.Z / (from.Z - edge))).Dot(way);
                    (low, high) = (Math.Min(low, lands), Math.Max(high, lands));
                }
            }

            Assert.Equal(open, double.IsInfinity(penumbra));
            if (!open)
            {
                Assert.Equal(high - low, penumbra, 1e-6 * (1 + penumbra));
            }
        });

    [Fact]
    public void Penumbra_OfAPoint_IsSharp()
    {
        var none = default(NoTrail);
        Assert.Equal(0, ShadowEdge.PenumbraMm(LightFace.Point(new FaceAxes(new(0, -500, 500), default)), 50, ref none));
    }

    [Fact]
    public void Penumbra_WhereTheCentreIsNoHigherThanTheEdge_IsOpen()
    {
        var none = default(NoTrail);
        Assert.True(double.IsInfinity(ShadowEdge.PenumbraMm(LightFace.Point(new FaceAxes(new(0, -500, 50), default)), 50, ref none)));
    }

    [Fact]
    public void Extents_OfAFaceAside_AreTheAnglesBetweenItsEdges()
    {
        var face = LightFace.Of(new FaceAxes(new(0, -1000, 0), new(0, 0, 0)), FaceOutline.Rectangle(600, 800));
        var (across, up) = FaceView.ExtentsDeg(face, new(300, 0, 400));
        var far = Math.Sqrt(1000 * 1000 + 400 * 400);
        Assert.Equal(Math.Atan(600 / far) * 180 / Math.PI, across, 1e-9);
        far = Math.Sqrt(1000 * 1000 + 300 * 300);
        Assert.Equal(Math.Atan(800 / far) * 180 / Math.PI, up, 1e-9);
        Assert.Equal((0.0, 0.0), FaceView.ExtentsDeg(LightFace.Point(face.Axes), default));
        Assert.Equal(0, FaceView.SubtenseDeg(LightFace.Point(face.Axes), default));
    }
}
