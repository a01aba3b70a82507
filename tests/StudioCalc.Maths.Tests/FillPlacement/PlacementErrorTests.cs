using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class PlacementErrorTests
{
    [Fact]
    public void Rate_BeforeADisc_IsThatOfItsClosedForm() => Gen.Select(Gen.Double[50, 600], Gen.Double[100, 5000]).Sample((radius, distance) =>
    {
        var rate = RateAt(LightFace.Of(Axes(1000), FaceOutline.Disc(2 * radius)), distance);
        var expected = -2 / Math.Log(2) * distance / (distance * distance + radius * radius);
        Assert.Equal(expected, rate.RateStopsPerMm, 1e-4 * Math.Abs(expected));
        Assert.Equal(-2 / Math.Log(2) / distance, rate.PointRateStopsPerMm, 1e-12);
    });

    [Fact]
    public void Rate_OfAPoint_IsItsOwn()
    {
        var rate = RateAt(LightFace.Point(Axes(1000)), 700);
        Assert.Equal(rate.PointRateStopsPerMm, rate.RateStopsPerMm);
    }

    [Fact]
    public void Rate_HasNothingToDoWithPoseAndRoll() => Gen.Select(Faces.Any, Gen.Double[300, 3000]).Sample((lit, distance) =>
    {
        var aim = lit.Axes.Centre + lit.Axes.Facing * 900;
        var none = default(NoTrail);
        var there = PlacementError.RateAt(lit.Face, aim, distance, ref none);
        var here = RateAt(LightFace.Of(Axes(1000), lit.Outline), distance);
        Assert.Equal(here.RateStopsPerMm, there.RateStopsPerMm, 1e-8);
    });

    // Seeded draws of a reading and a distance, each normal.
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.5)]
    public void Error_IsTheSpreadOfRandomReadingsAndDistances(double metres)
    {
        const int Draws = 200_000;
        var (distance, radius) = (1000 * metres, 450.0);
        var none = default(NoTrail);
        var rate = RateAt(LightFace.Of(Axes(1000), FaceOutline.Disc(2 * radius)), distance);
        var error = PlacementError.Of([rate], 10, 0.1, 1, ref none);
        var random = new Random(12);
        var (sum, squares) = (0.0, 0.0);
        for (var i = 0; i < Draws; i++)
        {
            var d = distance + 10 * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
            var x = -Math.Log2(d * d + radius * radius) + 0.1 * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
            sum += x;
            squares += x * x;
        }

        var mean = sum / Draws;
        Assert.Equal(Math.Sqrt(squares / Draws - mean * mean), error.ErrorStops, 6 * error.ErrorStops / Math.Sqrt(2 * Draws));
    }

    [Fact]
    public void Error_LiesBetweenItsLargestShareAndTheWorst() =>
        Gen.Select(Gen.Double[0, 50], Gen.Double[0, 1], Gen.Int[0, 8], Gen.Double[200, 3000].Array[1, 8]).Sample((tape, meter, readings, distances) =>
        {
            var none = default(NoTrail);
            var face = LightFace.Of(Axes(1000), FaceOutline.Polygon(8, 900));
            var rates = distances.Select(distance => RateAt(face, distance)).ToList();
            var error = PlacementError.Of(rates, tape, meter, readings, ref none);
            Assert.InRange(error.ErrorStops, Math.Max(error.MeterStops, error.TapeStops) - 1e-12, error.WorstStops + 1e-12);
            Assert.True(error.RatioFactor >= 1);
        });

    private static FaceAxes Axes(double distance) => new(new(0, -distance, 0), default);

    private static DistanceRate RateAt(LightFace face, double distance)
    {
        var none = default(NoTrail);
        return PlacementError.RateAt(face, default, distance, ref none);
    }
}
