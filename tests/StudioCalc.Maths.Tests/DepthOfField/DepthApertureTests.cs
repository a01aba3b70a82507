using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class DepthApertureTests
{
    private static readonly ApertureRange Open = new(0.5, 1000, StopScale.Third);

    private static readonly Gen<(TwoPointFocus Focus, double Blur)> Any =
        Gen.Select(Depths.FromPupil, Depths.BlurMm, (points, blur) => (TwoPointFocus.Between(points)!, blur));

    [Fact]
    public void GeometricAperture_HoldsTheTwoPointsExactly() => Any.Sample(any =>
    {
        var outcome = Depths.Solve(any.Focus, any.Blur, Open);
        var zone = SharpZone.Evaluate(any.Focus.Lens, outcome.GeometricFNumber, any.Blur);
        Depths.Near(any.Focus.NearMm, zone.NearFromEntrancePupilMm, 1e-9);
        Depths.Near(any.Focus.FarMm, zone.FarFromEntrancePupilMm, 1e-9);
    });

    [Fact]
    public void Reached_NeverBlursMoreThanPermitted_AndAHairWiderWould() => Any.Sample(any =>
    {
        var outcome = Depths.Solve(any.Focus, any.Blur, Depths.Thirds);
        var choice = new ApertureChoice(Depths.Thirds.Settable(), 0.55);
        if (outcome.Obstacle != DepthObstacle.None)
        {
            Assert.True(outcome.ShortfallUm > 0);
            Assert.Null(choice.Widest(any.Focus, any.Blur));
            return;
        }

        Assert.True(outcome.EndBlurWithDiffractionUm <= 1000 * any.Blur * (1 + 1e-8));
        Assert.True(choice.BlurMm(any.Focus, outcome.FNumber) <= any.Blur * (1 + 1e-8));
        Assert.True(outcome.SetFNumber >= outcome.FNumber * (1 - 1e-9));
        if (outcome.FNumber > Depths.Thirds.WidestFNumber * 1.001)
        {
            Assert.True(choice.BlurMm(any.Focus, outcome.FNumber * 0.999) > any.Blur);
        }
    });

    [Fact]
    public void LeastBlur_IsTheLeastOfAFineSearch() => Any.Sample(any =>
    {
        var outcome = Depths.Solve(any.Focus, any.Blur, Open);
        var choice = new ApertureChoice([], 0.55);
        var least = Enumerable.Range(-400, 801).Min(step => choice.BlurMm(any.Focus, outcome.LeastBlurFNumber * Math.Pow(2, step / 100.0)));
        Depths.Near(least * 1000, outcome.LeastBlurUm, 1e-9);
    });

    [Fact]
    public void Obstacle_IsTheLensWhereItClosesTooLittle_ElseDiffraction()
    {
        var focus = TwoPointFocus.Between(new() { FocalLengthMm = 100, NearMm = 1000, FarMm = 1050 })!;
        Assert.Equal(DepthObstacle.None, Depths.Solve(focus, 0.03, new(2.8, 16, StopScale.Third)).Obstacle);
        Assert.Equal(DepthObstacle.SmallestAperture, Depths.Solve(focus, 0.03, new(2.8, 7, StopScale.Third)).Obstacle);
        Assert.Equal(DepthObstacle.Diffraction, Depths.Solve(focus, 0.016, new(2.8, 32, StopScale.Third)).Obstacle);
        Assert.Equal(DepthObstacle.Diffraction, Depths.Solve(focus, 0.016, new(2.8, 7, StopScale.Third)).Obstacle);
        Assert.Equal(DepthObstacle.Diffraction, Depths.Solve(focus, 0.03, new(28, 32, StopScale.Third)).Obstacle);
    }

    [Fact]
    public void Aperture_WiderNeededThanTheLensOpens_IsItsWidest()
    {
        var focus = TwoPointFocus.Between(new() { FocalLengthMm = 100, NearMm = 1000, FarMm = 1001 })!;
        var outcome = Depths.Solve(focus, 0.03, Depths.Thirds);
        Assert.Equal(Depths.Thirds.WidestFNumber, outcome.FNumber);
        Assert.True(outcome.GeometricFNumber < outcome.FNumber);
    }

    [Fact]
    public void Mark_ThatBlursTooMuchAgain_IsNotTaken()
    {
        // The least blur lies at f/12.9; f/11 and f/16 blur 0.0277 and 0.0284.
        var focus = TwoPointFocus.Between(new() { FocalLengthMm = 100, NearMm = 1000, FarMm = 1047 })!;
        var outcome = Depths.Solve(focus, 0.0274, new(2, 32, StopScale.Whole));
        Assert.Equal(DepthObstacle.None, outcome.Obstacle);
        Assert.InRange(outcome.FNumber, 11.4, 15.9);
        Assert.Equal(outcome.FNumber, outcome.SetFNumber);
    }

    [Fact]
    public void Widest_WithMoreBlurPermitted_IsNeverSmaller() => Gen.Select(Any, Gen.Double[1, 2]).Sample((any, more) =>
    {
        var (first, second) = (Depths.Solve(any.Focus, any.Blur, Open), Depths.Solve(any.Focus, any.Blur * more, Open));
        if (first.Obstacle == DepthObstacle.None)
        {
            Assert.True(second.FNumber <= first.FNumber * (1 + 1e-9));
            Assert.Equal(DepthObstacle.None, second.Obstacle);
        }
    });
}
