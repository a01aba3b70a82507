using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>The series against tables of its roots, a finite-difference solution, and its limits.</summary>
public sealed class ConductionTests
{
    // First root and coefficient: standard tables as in Incropera and DeWitt, table 5.1, and Cengel, table 4-2, second-hand.
    [Theory]
    [InlineData(SolidShape.Slab, 0.1, 0.3111, 1.0161)]
    [InlineData(SolidShape.Slab, 0.5, 0.6533, 1.0701)]
    [InlineData(SolidShape.Slab, 1, 0.8603, 1.1191)]
    [InlineData(SolidShape.Slab, 2, 1.0769, 1.1785)]
    [InlineData(SolidShape.Slab, 10, 1.4289, 1.2620)]
    [InlineData(SolidShape.Cylinder, 0.1, 0.4417, 1.0246)]
    [InlineData(SolidShape.Cylinder, 0.5, 0.9408, 1.1143)]
    [InlineData(SolidShape.Cylinder, 2, 1.5994, 1.3384)]
    [InlineData(SolidShape.Cylinder, 10, 2.1795, 1.5677)]
    [InlineData(SolidShape.Cylinder, 50, 2.3572, 1.6002)]
    [InlineData(SolidShape.Ball, 0.1, 0.5423, 1.0298)]
    [InlineData(SolidShape.Ball, 0.5, 1.1656, 1.1441)]
    [InlineData(SolidShape.Ball, 1, 1.5708, 1.2732)]
    [InlineData(SolidShape.Ball, 2, 2.0288, 1.4793)]
    [InlineData(SolidShape.Ball, 10, 2.8363, 1.9249)]
    [InlineData(SolidShape.Ball, 50, 3.0788, 1.9962)]
    public void FirstRoot_IsThatOfTheTables(SolidShape shape, double biot, double root, double coefficient)
    {
        var (z, c) = new Conduction(shape, biot).First;
        Assert.Equal(root, z, 1e-4);
        Assert.Equal(coefficient, c, 1e-4);
    }

    [Fact]
    public void BesselFunctions_AreThoseOfALibrary() => Gen.Double[0, 250].Sample(x =>
    {
        Assert.Equal(MathNet.Numerics.SpecialFunctions.BesselJ(0, x), Bessel.J0(x), 1e-12);
        Assert.Equal(MathNet.Numerics.SpecialFunctions.BesselJ(1, x), Bessel.J1(x), 1e-12);
    });

    [Theory]
    [InlineData(SolidShape.Slab, 0)]
    [InlineData(SolidShape.Cylinder, 1)]
    [InlineData(SolidShape.Ball, 2)]
    public void AnyBiot_IsThatOfFiniteDifferences(SolidShape shape, int dimension) =>
        Gen.Select(Gen.Double[0.05, 20], Gen.Double[0.02, 1]).Sample(
            (biot, fourier) =>
            {
                var series = new Conduction(shape, biot);
                var (surface, core) = Differences(dimension, biot, fourier);
                Assert.Equal(surface, series.Surface(fourier), 1e-3);
                Assert.Equal(core, series.Core(fourier), 1e-3);
            },
            iter: 40);

    [Theory]
    [InlineData(SolidShape.Slab)]
    [InlineData(SolidShape.Cylinder)]
    [InlineData(SolidShape.Ball)]
    public void EarlyOn_TheSurfaceIsThatOfAThickPiece(SolidShape shape)
    {
        // The curvature of round pieces shows soon; a slab's far side does not for long.
        var series = new Conduction(shape, 0.4);
        var tolerance = shape == SolidShape.Slab ? 1e-6 : 2e-3;
        Assert.Equal(EarlySurface.Theta(0.4, 2e-3), series.Surface(2e-3), tolerance);
    }

    [Fact]
    public void OneTerm_IsSevenHundredthsWrongEarlyOn()
    {
        // Computed once with 60 roots in double precision: 0.93683 by the series, 0.86624 by one term.
        var series = new Conduction(SolidShape.Slab, 0.4167);
        var (z, c) = series.First;
        Assert.Equal(0.93683, series.Surface(0.02), 2e-5);
        Assert.Equal(0.86624, c * Math.Cos(z) * Math.Exp(-z * z * 0.02), 2e-5);
    }

    [Fact]
    public void ThinPiece_IsALump()
    {
        // Bi to 0: theta = exp(-Bi Fo V / A ...): for a slab exp(-Bi Fo), cylinder exp(-2 Bi Fo), ball exp(-3 Bi Fo).
        foreach (var (shape, factor) in new[] { (SolidShape.Slab, 1), (SolidShape.Cylinder, 2), (SolidShape.Ball, 3) })
        {
            var series = new Conduction(shape, 1e-4);
            Assert.Equal(Math.Exp(-factor * 1e-4 * 5000), series.Mean(5000), 1e-4);
        }
    }

    [Fact]
    public void StrongConvection_TakesTheSurfaceToTheAir() =>
        Assert.Equal(0, new Conduction(SolidShape.Slab, 1e5).Surface(0.1), 1e-3);

    [Theory]
    [InlineData(SolidShape.Slab, 1)]
    [InlineData(SolidShape.Cylinder, 2)]
    [InlineData(SolidShape.Ball, 3)]
    public void HeatLost_IsWhatTheSurfaceGaveOff(SolidShape shape, int areaOverVolume)
    {
        // d(mean)/dFo = -Bi (A L / V) surface, by Simpson's rule.
        const double biot = 1.3;
        var series = new Conduction(shape, biot);
        var (from, to, steps) = (0.05, 0.6, 2000);
        var lost = 0.0;
        for (var i = 0; i <= steps; i++)
        {
            var weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
            lost += weight * series.Surface(from + (to - from) * i / steps) * (to - from) / steps / 3;
        }

        Assert.Equal(series.Mean(from) - series.Mean(to), areaOverVolume * biot * lost, 1e-9);
    }

    // Crank and Nicolson on nodes from the core (0) to the surface (1); the surface's node has half a cell.
    private static (double Surface, double Core) Differences(int dimension, double biot, double fourier)
    {
        const int nodes = 160;
        const int steps = 1500;
        var (h, dt) = (1.0 / nodes, fourier / steps);
        double Face(double r) => Math.Pow(r, dimension);
        double Volume(int i) => (Math.Pow(Math.Min(1, (i + 0.5) * h), dimension + 1) - Math.Pow(Math.Max(0, (i - 0.5) * h), dimension + 1)) / (dimension + 1);
        var t = Enumerable.Repeat(1.0, nodes + 1).ToArray();
        var (low, diagonal, high, right) = (new double[nodes + 1], new double[nodes + 1], new double[nodes + 1], new double[nodes + 1]);
        for (var step = 0; step < steps; step++)
        {
            // The first steps are implicit, for the start is not smooth.
            var implicitness = step < 4 ? 1 : 0.5;
            for (var i = 0; i <= nodes; i++)
            {
                var (inner, outer) = (i > 0 ? Face((i - 0.5) * h) / h : 0, i < nodes ? Face((i + 0.5) * h) / h : 0);
                var loss = i == nodes ? biot : 0;
                var rate = dt / Volume(i);
                low[i] = -implicitness * rate * inner;
                high[i] = -implicitness * rate * outer;
                diagonal[i] = 1 + implicitness * rate * (inner + outer + loss);
                right[i] = t[i] + (1 - implicitness) * rate * (
                    inner * ((i > 0 ? t[i - 1] : 0) - t[i]) + outer * ((i < nodes ? t[i + 1] : 0) - t[i]) - loss * t[i]);
            }

            for (var i = 1; i <= nodes; i++)
            {
                var factor = low[i] / diagonal[i - 1];
                diagonal[i] -= factor * high[i - 1];
                right[i] -= factor * right[i - 1];
            }

            t[nodes] = right[nodes] / diagonal[nodes];
            for (var i = nodes - 1; i >= 0; i--)
            {
                t[i] = (right[i] - high[i] * t[i + 1]) / diagonal[i];
            }
        }

        return (t[nodes], t[0]);
    }
}
