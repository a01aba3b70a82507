using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Published mean configuration factors, by the public call at many receivers: an answer has no mean of its own. And the
/// published best height of a lamp, by trying heights.</summary>
public sealed class MeanFactorTests
{
    private const int Most = 200;

    // Gauss-Legendre points of an interval from 0 to 1, by halving it in panels that shrink towards 0.
    private static readonly double[] Nodes = [0.033765242898423975, 0.16939530676686776, 0.3806904069584015, 0.6193095930415985, 0.8306046932331322, 0.966234757101576];
    private static readonly double[] Weights = [0.08566224618958525, 0.1803807865240693, 0.23395696728634546, 0.23395696728634546, 0.1803807865240693, 0.08566224618958525];

    [Theory]
    // Element on a disc to a coaxial disc, after Howell B-22; coaxial discs, after Siegel and Howell, 4th edition, p. 845.
    // Both as given in the help of an equation solver's heat-transfer library.
    [InlineData(500, 1000, 2000, 0.1922)]
    [InlineData(100, 200, 500, 0.1339)]
    public void CoaxialDiscs_ReceivingAndGiving_HaveThePublishedMean(double receiver, double source, double apart, double mean)
    {
        // Rings of equal area: the mean over the square of the radius.
        var face = Facing(new LightSource { Disc = new() { DiameterMm = 2 * source } }, Place(0, 0, apart), Place(0, 0, 0));
        Assert.Equal(mean, Mean(face, Panels(0), square => (receiver * Math.Sqrt(square), 0, 0)), 6e-5);
    }

    [Fact]
    public void Strip_BeforeAParallelRectangle_HasThePublishedMean()
    {
        // 3 m by 2 m at 0.5 m; a strip along the edge of 2 m. After Siegel and Howell, 4th edition, p. 842.
        var face = Facing(Rectangle(3000, 2000), Place(1500, 1000, 500), Place(1500, 1000, 0));
        Assert.Equal(0.3886, Mean(face, Panels(0), share => (0, 2000 * share, 0)), 6e-5);
    }

    [Fact]
    public void Strip_BeforeAPerpendicularRectangle_HasThePublishedMean()
    {
        // 1 m high and 2 m wide at 0.5 m. After Siegel and Howell, 4th edition, pp. 842 and 843.
        var face = Facing(Rectangle(2000, 1000), Place(1000, 500, 500), Place(1000, 0, 500));
        Assert.Equal(0.2153, Mean(face, Panels(0), share => (2000 * share, 0, 0)), 6e-5);
    }

    [Theory]
    // After Howell C-13, in the help of an equation solver; the unit cube from memory, Howell C-11.
    [InlineData(100, 50, 0.4153, 6e-5)]
    [InlineData(1000, 1000, 0.199825, 2e-6)]
    public void OpposedSquares_HaveThePublishedMean(double side, double apart, double mean, double tolerance)
    {
        var face = Facing(Rectangle(side, side), Place(side / 2, side / 2, apart), Place(side / 2, side / 2, 0));
        Assert.Equal(mean, Panels(0).Sum(row => row.Weight * Mean(face, Panels(0), share => (side * share, side * row.At, 0))), tolerance);
    }

    [Fact]
    public void SquaresWithACommonEdge_HaveThePublishedMean()
    {
        // The unit cube from memory, Howell C-14; finer towards the common edge.
        var face = Facing(Rectangle(1000, 1000), Place(0, 500, 500), Place(1000, 500, 500));
        Assert.Equal(0.200044, Panels(8).Sum(row => row.Weight * Mean(face, Ends(6), share => (1000 * row.At, 1000 * share, 0))), 3e-6);
    }

    [Fact]
    public void PentagonAndSquareWithACommonEdge_HaveThePublishedMean()
    {
        // Narayanaswamy, Int. J. Heat Mass Transfer 91 (2015) 841-847, test case C, as quoted by an equation solver's help. The pentagon
        // is cut into columns; each is a square's part with the common edge's length and a gable above it.
        var face = Facing(Rectangle(1000, 1000), Place(0, 500, 500), Place(1000, 500, 500));
        var columns = Panels(16).Select(one => (At: one.At / 2, Weight: one.Weight / 2))
            .Concat(Panels(0).Select(one => (At: (1 + one.At) / 2, Weight: one.Weight / 2)));
        var sum = columns.Sum(column =>
        {
            var gable = Math.Min(2 * column.At, 2 - 2 * column.At);
            return column.Weight * (Mean(face, Ends(16), share => (1000 * column.At, 1000 * share, 0))
                + gable * Mean(face, Panels(16), share => (1000 * column.At, 1000 * (1 + gable * share), 0)));
        });
        Assert.Equal(0.1541243, sum / 1.5, 5e-7);
    }

    [Fact]
    public void SmallLampOverATable_LightsItsRimMostFromThePublishedHeight()
    {
        // Irodov, Problems in General Physics, problem 5.6 (pt-15): as high as the table's radius, 1 m.
        var heights = Enumerable.Range(0, 41).Select(i => 980.0 + i).ToList();
        var brightest = heights.MaxBy(height => Calls.FillPlacement.EvaluateLight(new()
        {
            Sources = { WithLuminance(Facing(Rectangle(10, 10), Place(0, 0, height), Place(0, 0, 0))) },
            Receivers = { new LightReceiver { Place = Place(1000, 0, 0), Up = true } },
        }).Receivers[0].IlluminanceLx);
        Assert.Equal(1000, brightest, 1.0);
    }

    private static double Mean(LightSource source, IReadOnlyList<(double At, double Weight)> points, Func<double, (double X, double Y, double Z)> place)
    {
        var sum = 0.0;
        foreach (var chunk in points.Chunk(Most))
        {
            var request = new EvaluateLightRequest { Sources = { source } };
            request.Receivers.Add(chunk.Select(point => new LightReceiver { Place = Place(place(point.At)), Up = true }));
            sum += Calls.FillPlacement.EvaluateLight(request).Receivers
                .Zip(chunk, (received, point) => point.Weight * received.Sources[0].ConfigurationFactor).Sum();
        }

        return sum;
    }

    private static List<(double At, double Weight)> Panels(int halvings)
    {
        List<(double At, double Weight)> points = [];
        for (var i = 0; i <= halvings; i++)
        {
            var (low, high) = (i == halvings ? 0 : Math.Pow(2, -i - 1), Math.Pow(2, -i));
            points.AddRange(Nodes.Zip(Weights, (node, weight) => (low + (high - low) * node, (high - low) * weight)));
        }

        return points;
    }

    // Finer towards both ends.
    private static List<(double At, double Weight)> Ends(int halvings) =>
    [
        .. Panels(halvings).SelectMany(one => new[] { (one.At / 2, one.Weight / 2), (1 - one.At / 2, one.Weight / 2) }),
    ];

    private static LightSource Rectangle(double width, double height) => new() { Rectangle = new() { WidthMm = width, HeightMm = height } };

    private static LightSource Facing(LightSource source, Point position, Point aim)
    {
        source.Pose = new() { Position = position, AimPoint = aim };
        return source;
    }

    private static LightSource WithLuminance(LightSource source)
    {
        source.Calibration = new() { LuminanceCdPerM2 = 1e6 };
        return source;
    }

    private static Point Place((double X, double Y, double Z) at) => Place(at.X, at.Y, at.Z);

    private static Point Place(double x, double y, double z) => new() { XMm = x, YMm = y, ZMm = z };
}
