using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>The light of faces against adding up their area, in order and at random, for random poses.</summary>
public sealed class FaceLightTests
{
    // The light of a face that fills the view is pi.
    private const double Tolerance = 4e-6;

    [Fact]
    public void Light_OfAnyFace_IsThatOfItsArea() => Faces.Any.Sample(
        lit => Near(FaceQuadrature.Light(lit, FaceQuadrature.Flat), lit.Face.Light(lit.At)), iter: 100);

    [Fact]
    public void Light_WithTheHorizonThroughTheFace_IsThatOfTheAreaBeforeIt() => Faces.Clipped.Sample(
        lit => Near(FaceQuadrature.Light(lit, FaceQuadrature.Flat), lit.Face.Light(lit.At)), iter: 40);

    [Fact]
    public void Light_OnADome_IsThatOfTheWholeArea() => Faces.Any.Sample(
        lit => Near(
            FaceQuadrature.Light(lit, FaceQuadrature.Dome), lit.Face.Light(lit.At with { Collector = Collector.Dome })),
        iter: 100);

    [Fact]
    public void Light_OfAnyFace_IsThatOfRandomSpots() =>
        Gen.OneOf(Faces.Any, Faces.Clipped, Faces.Concave).Sample(IsThatOfRandomSpots, iter: 60);

    [Fact]
    public void Light_BehindTheFace_IsNone() => Faces.Any.Sample(
        lit =>
        {
            var behind = lit.At with { Place = lit.At.Place - lit.Axes.Facing * (2 * (lit.At.Place - lit.Axes.Centre).Dot(lit.Axes.Facing)) };
            Assert.Equal(0, lit.Face.Light(behind));
            Assert.Equal(0, lit.Face.Light(behind with { Collector = Collector.Dome }));
        },
        iter: 100);

    [Fact]
    public void Light_OfAReceiverThatTurnsItsBack_IsNone() => Faces.Any.Sample(
        lit => Assert.Equal(0, lit.Face.Light(lit.At with { Normal = lit.Axes.Facing })), iter: 100);

    // Spots over the box around the outline; those inside by the even-odd rule count. No fan, no order of corners.
    private static void IsThatOfRandomSpots(LitPoint lit)
    {
        const int Spots = 40_000;
        var random = new Random(6);
        var (left, right) = (lit.Outline.Min(corner => corner.Right), lit.Outline.Max(corner => corner.Right));
        var (low, high) = (lit.Outline.Min(corner => corner.Up), lit.Outline.Max(corner => corner.Up));
        var (sum, squares) = (0.0, 0.0);
        for (var i = 0; i < Spots; i++)
        {
            var (x, y) = (left + (right - left) * random.NextDouble(), low + (high - low) * random.NextDouble());
            var value = IsInside(lit.Outline, x, y) ? FaceQuadrature.Spot(lit, lit.Axes.At(x, y), FaceQuadrature.Flat) : 0;
            sum += value;
            squares += value * value;
        }

        var mean = sum / Spots;
        var area = (right - left) * (high - low);
        var error = Math.Sqrt((squares / Spots - mean * mean) / Spots);
        Near(mean * area, lit.Face.Light(lit.At), 6 * error * area + Tolerance);
    }

    private static bool IsInside((double Right, double Up)[] outline, double x, double y)
    {
        var inside = false;
        var from = outline[^1];
        foreach (var to in outline)
        {
            if (from.Up > y != to.Up > y && x < from.Right + (to.Right - from.Right) * (y - from.Up) / (to.Up - from.Up))
            {
                inside = !inside;
            }

            from = to;
        }

        return inside;
    }

    private static void Near(double expected, double actual, double tolerance = Tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, FormattableString.Invariant($"{expected:R} and {actual:R}"));
}
