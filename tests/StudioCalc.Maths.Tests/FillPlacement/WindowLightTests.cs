using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class WindowLightTests
{
    private static readonly WindowSky Uniform = new(SkyKind.Uniform);
    private static readonly WindowSky Overcast = new(SkyKind.Overcast);
    private static readonly WindowSky Diffusion = new(SkyKind.Diffusion);
    private static readonly Vector ToWindow = new(0, 1, 0);

    private static readonly Gen<Vector> Direction = Gen.Select(Gen.Double[-180, 180], Gen.Double[-90, 90])
        .Select((azimuth, elevation) => Vector.Towards(azimuth, elevation));

    private static readonly Gen<(WindowOpening Opening, WindowPoint At)> Anywhere = Gen.Select(
        Gen.Double[50, 8000], Gen.Double[50, 5000], Gen.Double[-3000, 3000], Gen.Double[20, 6000], Gen.Double[-6000, 6000], Direction,
        Gen.Bool,
        (width, height, sill, distance, right, normal, isDome) =>
            (new WindowOpening(width, height, sill), new WindowPoint(distance, right, 0, normal, isDome ? Collector.Dome : Collector.Flat)));

    [Fact]
    public void GaussPoints_IntegratePowersExactly()
    {
        for (var power = 0; power < 2 * GaussPoints.Count; power++)
        {
            var sum = 0.0;
            foreach (var (point, weight) in GaussPoints.All)
            {
                sum += weight * Math.Pow(point, power);
            }

            Assert.Equal(power % 2 == 0 ? 2.0 / (power + 1) : 0, sum, 1e-14);
        }
    }

    [Fact]
    public void Diffusion_AtAnyPlace_IsTheLightOfAPolygon() => Anywhere.Sample(
        given => Close(Polygon(given.Opening, given.At), WindowLight.At(given.Opening, Diffusion, WindowGlass.None, given.At)), iter: 3000);

    [Fact]
    public void UniformSky_AtAnyPlace_IsTheLightOfThePolygonAboveTheHorizon() => Anywhere.Sample(
        given =>
        {
            var above = Math.Max(0, given.Opening.SillOverTableMm);
            var seen = new WindowOpening(given.Opening.WidthMm, Math.Max(1e-9, given.Opening.SillOverTableMm + given.Opening.HeightMm - above), above);
            Close(Polygon(seen, given.At), WindowLight.At(given.Opening, Uniform, WindowGlass.None, given.At));
        },
        iter: 3000);

    [Fact]
    public void Skyline_OfTheSameLuminanceInAUniformSky_ChangesNothing() => Gen.Select(Anywhere, Gen.Double[0, 89]).Sample(
        (given, skyline) => Close(
            WindowLight.At(given.Opening, Diffusion, WindowGlass.SingleClear, given.At),
            WindowLight.At(given.Opening, new(SkyKind.Uniform, skyline, 1), WindowGlass.SingleClear, given.At),
            1e-6),
        iter: 2000);

    [Fact]
    public void AnySky_IsTheSumOverSmallPiecesOfTheGlass() => Gen.Select(Anywhere, Gen.Double[0, 70], Gen.Double[0, 1]).Sample(
        (given, skyline, share) =>
        {
            var sky = new WindowSky(SkyKind.Overcast, skyline, share);
            var byDirection = WindowLight.At(given.Opening, sky, WindowGlass.DoubleClear, given.At);

            // Pieces are coarse where a receiver close to a large window looks along it.
            Assert.Equal(ByPieces(given.Opening, sky, given.At), byDirection, 5e-3);
        },
        iter: 60);

    // Walsh's sky component: unglazed, level receiver in line with the sill, opposite a jamb.
    [Fact]
    public void OvercastSky_OppositeAJamb_IsWalshsClosedForm() => Gen.Select(Gen.Double[20, 20000], Gen.Double[20, 20000], Gen.Double[20, 20000]).Sample(
        (width, height, distance) =>
        {
            var (b, g, c) = (Math.Atan(width / distance), Math.Atan(height / distance), Math.Atan(width / Math.Sqrt(height * height + distance * distance)));
            var walsh = 3 / (14 * Math.PI) * (b - c * Math.Cos(g)) + 2 / (7 * Math.PI) * Math.Asin(Math.Sin(b) * Math.Sin(g))
                - 1 / (7 * Math.PI) * Math.Sin(2 * g) * Math.Sin(c);
            var share = WindowLight.At(
                new(width, height, 0), Overcast, WindowGlass.None, new(distance, width / 2, 0, Vector.Up)) / Overcast.OpenHorizontal!.Value;
            Assert.Equal(walsh, share, 1e-9);
        },
        iter: 2000);

    [Fact]
    public void ClearGlass_BeforeAnEndlessUniformView_PassesItsDiffuseShare()
    {
        var at = new WindowPoint(1, 0, 0, ToWindow);
        var wide = new WindowOpening(2e5, 2e5, -1e5);
        var open = WindowLight.At(wide, Diffusion, WindowGlass.None, at);
        Assert.Equal(Math.PI, open, 1e-4);
        Assert.Equal(0.8, WindowLight.At(wide, Diffusion, WindowGlass.SingleClear, at) / open, 1e-4);
        Assert.Equal(0.7, WindowLight.At(wide, Diffusion, WindowGlass.DoubleClear, at) / open, 1e-4);
        Assert.Equal(0.6, WindowLight.At(wide, Diffusion, new(0.6, GoesByAngle: false), at) / open, 1e-12);
    }

    [Fact]
    public void LevelReceiver_WithTheSillOverThePlate_IsBrightestAtADistance()
    {
        var opening = new WindowOpening(1200, 1500, 400);
        var (near, far) = (200.0, 900.0);
        while (far - near > 1e-6)
        {
            var (a, b) = (near + (far - near) / 3, far - (far - near) / 3);
            (near, far) = Light(a) < Light(b) ? (a, far) : (near, b);
        }

        Assert.Equal(440.9339149, near, 0.01);

        double Light(double distance) => WindowLight.At(opening, Uniform, WindowGlass.None, new(distance, 0, 0, Vector.Up));
    }

    [Fact]
    public void Light_OfAWindow_AllocatesNothing()
    {
        var opening = new WindowOpening(1200, 1500, 100);
        var sky = new WindowSky(SkyKind.Overcast, 20, 0.1);
        var at = new WindowPoint(1000, 200, 0, Vector.Towards(150, 30));
        var sum = WindowLight.At(opening, sky, WindowGlass.SingleClear, at);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
        {
            sum += WindowLight.At(opening, sky, WindowGlass.SingleClear, at);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }

    private static void Close(double expected, double actual, double tolerance = 1e-9) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance * Math.Max(1, expected), $"{actual:R} instead of {expected:R}");

    // The receiver stands in the origin and the glass faces it.
    private static double Polygon(WindowOpening opening, in WindowPoint at)
    {
        var axes = new FaceAxes(
            new(-at.RightMm, at.DistanceMm, opening.SillOverTableMm + opening.HeightMm / 2),
            new(-at.RightMm, 0, opening.SillOverTableMm + opening.HeightMm / 2));
        return LightFace.Of(axes, FaceOutline.Rectangle(opening.WidthMm, opening.HeightMm)).Light(new(default, at.Normal, at.Collector));
    }

    private static double ByPieces(WindowOpening opening, WindowSky sky, in WindowPoint at)
    {
        const int Pieces = 600;
        var sum = 0.0;
        var area = opening.WidthMm * opening.HeightMm / Pieces / Pieces;
        for (var i = 0; i < Pieces; i++)
        {
            for (var j = 0; j < Pieces; j++)
            {
                var way = new Vector(
                    (-0.5 + (i + 0.5) / Pieces) * opening.WidthMm - at.RightMm,
                    at.DistanceMm,
                    opening.SillOverTableMm + (j + 0.5) / Pieces * opening.HeightMm);
                var (length, ray) = (way.Length, way.Unit());
                var skyline = sky.SkylineDeg * Math.PI / 180;
                var luminance = ray.Z >= Math.Sin(skyline) ? sky.Luminance(ray.Z) : sky.BelowSkylineShare * sky.Luminance(Math.Sin(skyline));
                var cosine = ray.Dot(at.Normal);
                var collected = at.Collector == Collector.Dome ? (1 + cosine) / 2 : Math.Max(0, cosine);
                sum += luminance * WindowGlass.DoubleClear.Transmittance(ray.Y) * collected * ray.Y * area / (length * length);
            }
        }

        return sum;
    }
}
