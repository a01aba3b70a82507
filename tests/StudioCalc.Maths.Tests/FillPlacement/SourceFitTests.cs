using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class SourceFitTests
{
    private static readonly Gen<double[]> Distances =
        from first in Gen.Double[100, 1500]
        from steps in Gen.Double[1.3, 2].Array[1, 5]
        select (double[])[first, .. steps.Select((_, i) => first * steps.Take(i + 1).Aggregate(1.0, (a, b) => a * b))];

    [Fact]
    public void SoftFace_ReadExactly_IsFoundAgain() => Gen.Select(Distances, Gen.Double[0.2, 2], Gen.Double[-5, 15]).Sample((distances, share, level) =>
    {
        var radius = share * distances[0];
        var fit = Fits(distances, d => level - Math.Log2(d * d + radius * radius))[0];
        Assert.Equal(FallOffModel.SoftFace, fit.Model);
        Assert.Equal(radius, fit.SizeMm!.Value, 1e-6 * radius);
        Assert.True(fit.ResidualStops < 1e-9);
    });

    [Fact]
    public void Beam_ReadExactly_IsFoundAgain() => Gen.Select(Distances, Gen.Double[-0.7, 2]).Where((_, share) => Math.Abs(share) > 0.1).Sample((distances, share) =>
    {
        var depth = share * distances[0];
        var fits = Fits(distances, d => 7 - 2 * Math.Log2(d + depth));
        var beam = fits.Single(fit => fit.Model == FallOffModel.Beam);
        Assert.Equal(depth, beam.SizeMm!.Value, 1e-6 * distances[0]);
        Assert.True(beam.ResidualStops < 1e-9);
        if (share < 0)
        {
            Assert.False(fits.Single(fit => fit.Model == FallOffModel.SoftFace).HasSolution);
        }
    });

    [Fact]
    public void Point_ReadExactly_IsEveryModelWithoutASize() => Distances.Sample(distances =>
    {
        var fits = Fits(distances, d => 7 - 2 * Math.Log2(d));
        Assert.Equal([FallOffModel.SoftFace, FallOffModel.Beam, FallOffModel.Point], fits.Select(fit => fit.Model));
        Assert.All(fits, fit => Assert.Equal(0, fit.SizeMm ?? 0, 1e-4 * distances[0]));
    });

    // Another solver: trying many sizes close by.
    [Fact]
    public void UnsteadyReadings_AreFittedNoWorseThanByAnySizeNear() =>
        Gen.Select(Distances.Where(distances => distances.Length > 3), Gen.Double[-0.15, 0.15].Array[6], Gen.Double[0.3, 1.5]).Sample((distances, errors, share) =>
        {
            var radius = share * distances[0];
            var lights = distances.Select((d, i) => new DistanceLight(d, 5 - Math.Log2(d * d + radius * radius) + errors[i])).ToList();
            var none = default(NoTrail);
            foreach (var fit in SourceFit.All(lights, [], ref none).Where(fit => fit.SizeMm is not null))
            {
                foreach (var step in new[] { -0.01, -0.001, 0.001, 0.01 })
                {
                    Assert.True(Residual(fit.Model, lights, fit.SizeMm!.Value + step * distances[0]) >= fit.ResidualStops - 1e-12);
                }
            }
        });

    [Fact]
    public void LightThatGrowsWithDistance_HasNoSolutionButAPoint() => Distances.Sample(distances =>
        Assert.Equal([FallOffModel.Point], Fits(distances, d => Math.Log2(d)).Where(fit => fit.HasSolution).Select(fit => fit.Model)));

    [Fact]
    public void Prediction_AtAReading_IsThatReading() => Gen.Select(Distances, Gen.Double[0.2, 2]).Sample((distances, share) =>
    {
        var radius = share * distances[0];
        var fit = Fits(distances, d => 3 - Math.Log2(d * d + radius * radius))[0];
        for (var i = 0; i < distances.Length; i++)
        {
            var expected = Math.Log2((distances[0] * distances[0] + radius * radius) / (distances[i] * distances[i] + radius * radius));
            Assert.Equal(expected, fit.PredictedStops[i]!.Value, 1e-9);
        }
    });

    [Fact]
    public void OneDistance_IsRefused()
    {
        var none = default(NoTrail);
        Assert.Throws<ArgumentException>(() => SourceFit.All([new(500, 3), new(500, 4)], [], ref none));
    }

    private static IReadOnlyList<SourceFit> Fits(double[] distances, Func<double, double> light)
    {
        var none = default(NoTrail);
        return SourceFit.All([.. distances.Select(d => new DistanceLight(d, light(d)))], distances, ref none);
    }

    private static double Residual(FallOffModel model, List<DistanceLight> lights, double size)
    {
        var sums = lights.Select(one => one.LightStops + (model == FallOffModel.SoftFace
            ? Math.Log2(one.DistanceMm * one.DistanceMm + size * size)
            : 2 * Math.Log2(one.DistanceMm + size))).ToList();
        var mean = sums.Average();
        return Math.Sqrt(sums.Average(sum => (sum - mean) * (sum - mean)));
    }
}
