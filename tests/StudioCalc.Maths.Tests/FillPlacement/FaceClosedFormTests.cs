using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>The light of faces against closed forms of discs and rectangles, as catalogues of configuration factors have them.</summary>
public sealed class FaceClosedFormTests
{
    // A disc is a polygon of many corners with its area.
    private const double DiscTolerance = 2e-5;

    private static readonly FaceAxes Down = new(default, new(0, 0, -1));

    [Fact]
    public void Disc_OnItsAxis_FollowsRadiusAndDistance() => Gen.Select(Gen.Double[50, 800], Gen.Double[150, 5000]).Sample((r, d) =>
    {
        var at = new LightPoint(new(0, 0, -d), Vector.Up);
        Near(r * r / (r * r + d * d), Factor(Disc(r), at), 1e-5);
    });

    [Fact]
    public void Disc_TiltedReceiverThatSeesAllOfIt_FollowsTheCosine() =>
        Gen.Select(Gen.Double[50, 800], Gen.Double[150, 5000], Gen.Double[0, 0.99], Gen.Double[-180, 180]).Sample((r, d, share, azimuth) =>
        {
            var tilt = share * Math.Atan2(d, r) * 180 / Math.PI;
            var at = new LightPoint(new(0, 0, -d), Vector.Towards(azimuth, 90 - tilt));
            Near(Math.Cos(tilt * Math.PI / 180) * r * r / (r * r + d * d), Factor(Disc(r), at), 1e-5);
        });

    [Fact]
    public void Disc_ParallelReceiverOffItsAxis_FollowsTheClosedForm() =>
        Gen.Select(Gen.Double[50, 800], Gen.Double[150, 3000], Gen.Double[1, 3000], Gen.Double[-180, 180]).Sample((r, d, a, azimuth) =>
        {
            var (h, R) = (d / a, r / a);
            var z = 1 + h * h + R * R;
            var expected = (1 - (z - 2 * R * R) / Math.Sqrt(z * z - 4 * R * R)) / 2;
            Near(expected, Factor(Disc(r), new(Vector.Towards(azimuth, 0) * a + new Vector(0, 0, -d), Vector.Up)), DiscTolerance);
        });

    [Fact]
    public void Disc_PerpendicularReceiverThatFacesItsAxis_FollowsTheClosedForm() =>
        Gen.Select(Gen.Double[50, 800], Gen.Double[150, 3000], Gen.Double[1.01, 4], Gen.Double[-180, 180]).Sample((r, d, out_, azimuth) =>
        {
            var a = out_ * r;
            var (h, R) = (d / a, r / a);
            var z = 1 + h * h + R * R;
            var expected = h / 2 * (z / Math.Sqrt(z * z - 4 * R * R) - 1);
            var way = Vector.Towards(azimuth, 0);
            Near(expected, Factor(Disc(r), new(way * a + new Vector(0, 0, -d), -way)), DiscTolerance);
        });

    [Fact]
    public void Rectangle_ParallelReceiverUnderItsCorner_FollowsTheClosedForm() =>
        Gen.Select(Gen.Double[10, 5000], Gen.Double[10, 5000], Gen.Double[10, 5000]).Sample((a, b, c) =>
        {
            var (x, y) = (a / c, b / c);
            var (sx, sy) = (Math.Sqrt(1 + x * x), Math.Sqrt(1 + y * y));
            var expected = (x / sx * Math.Atan(y / sx) + y / sy * Math.Atan(x / sy)) / (2 * Math.PI);
            Near(expected, Factor(Rectangle(a, b), new(new(a / 2, b / 2, -c), Vector.Up)), 1e-12);
        });

    [Fact]
    public void Rectangle_PerpendicularReceiverLevelWithItsBase_FollowsTheClosedForm() =>
        Gen.Select(Gen.Double[10, 5000], Gen.Double[10, 5000], Gen.Double[10, 5000]).Sample((width, height, c) =>
        {
            var (x, y) = (height / width, c / width);
            var root = Math.Sqrt(x * x + y * y);
            var expected = (Math.Atan(1 / y) - y / root * Math.Atan(1 / root)) / (2 * Math.PI);
            var face = LightFace.Of(new(new(0, 0, height / 2), new(0, -1, height / 2)), FaceOutline.Rectangle(width, height));
            Near(expected, Factor(face, new(new(width / 2, -c, 0), Vector.Up)), 1e-12);
        });

    [Theory]
    [InlineData(1)]
    [InlineData(1e6)]
    public void Rectangle_OfAnEndlessSize_FillsAQuarterOverItsCorner(double c)
    {
        var size = 1e9 * c;
        Near(0.25, Factor(Rectangle(size, size), new(new(size / 2, size / 2, -c), Vector.Up)), 1e-8);
    }

    [Fact]
    public void PointSource_Anywhere_FollowsCosineAndSquare() => Gen.Select(Faces.Any, Faces.Direction).Sample((lit, _) =>
    {
        var way = lit.Axes.Centre - lit.At.Place;
        var cosine = Math.Cos(FaceView.AngleDeg(way, lit.At.Normal) * Math.PI / 180);
        var point = LightFace.Point(lit.Axes);
        var square = way.Length * way.Length;
        Near(Math.Max(0, cosine), point.Light(lit.At) * square, 1e-7);
        Near((1 + cosine) / 2, point.Light(lit.At with { Collector = Collector.Dome }) * square, 1e-7);
    });

    [Fact]
    public void FarFace_OfAnyOutline_IsAPointOfItsArea() => Faces.Any.Sample(lit =>
    {
        var far = lit.Axes.Centre + lit.Axes.Facing * 1e7;
        var light = lit.Face.Light(new(far, -lit.Axes.Facing));
        Near(1, light * 1e14 / Math.Abs(FaceOutline.Area(lit.Outline)), 1e-6);
    });

    private static double Factor(LightFace face, LightPoint at) => face.Light(at) / Math.PI;

    private static LightFace Disc(double radius) => LightFace.Of(Down, FaceOutline.Disc(2 * radius));

    // Its width runs along x, its height along y.
    private static LightFace Rectangle(double alongX, double alongY) => LightFace.Of(Down, FaceOutline.Rectangle(alongX, alongY));

    private static void Near(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, FormattableString.Invariant($"{expected:R} and {actual:R}"));
}
