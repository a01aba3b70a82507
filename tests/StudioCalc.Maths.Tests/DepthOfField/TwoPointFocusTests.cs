using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class TwoPointFocusTests
{
    [Fact]
    public void Focus_BetweenTwoPoints_BlursBothAlike() => Gen.OneOf(Depths.FromPupil, Depths.FromSensor).Sample(points =>
    {
        var focus = TwoPointFocus.Between(points)!;
        var x = focus.Lens.FromEntrancePupilMm;
        var near = PointBlur.DiameterMm(focus.Lens, 8, focus.NearMm - x);
        var far = PointBlur.DiameterMm(focus.Lens, 8, focus.FarMm - x);
        Depths.Near(near, far, 1e-6);
        Depths.Near(near, focus.BlurTimesFNumberMm / 8, 1e-6);
    });

    [Fact]
    public void Focus_CountedFromTheSensor_IsTheOneFromThePupilThatStandsThere() => Depths.FromSensor.Sample(points =>
    {
        var focus = TwoPointFocus.Between(points)!;
        Depths.Near(points.NearMm, focus.NearMm + focus.Lens.PupilToSensorMm, 1e-12);
        Depths.Near(points.FarMm, focus.FarMm + focus.Lens.PupilToSensorMm, 1e-12);
        var again = TwoPointFocus.Between(points with { FromSensor = false, NearMm = focus.NearMm, FarMm = focus.FarMm })!;
        Depths.Near(again.Lens.Magnification, focus.Lens.Magnification, 1e-9);
    });

    [Fact]
    public void Focus_CountedFromTheSensor_IsWhereSimpleRepetitionEnds()
    {
        var points = new DepthPoints { FocalLengthMm = 100, PupilMagnification = 0.8, PrincipalSeparationMm = 12, FromSensor = true, NearMm = 600, FarMm = 690 };
        var m = 0.0;
        for (var i = 0; i < 500; i++)
        {
            var pupil = 100 * (2 + m - 1 / 0.8) + 12;
            var (near, far) = (600 - pupil, 690 - pupil);
            m = 100 / (2 * near * far / (near + far) - 100 / 0.8);
        }

        var focus = TwoPointFocus.Between(points)!;
        Assert.Equal(m, focus.Lens.Magnification, 1e-12);
        Assert.NotEqual(2 * 600 * 690 / 1290.0, focus.Lens.FromSensorMm, 0.5);
    }

    [Theory]
    [InlineData(399.9, true)]
    [InlineData(399.98, true)]
    [InlineData(400.2, false)]
    [InlineData(405, false)]
    public void Focus_NearerThanFourFocalLengthsFromTheSensor_IsNone(double nearMm, bool isNone) => Assert.Equal(
        isNone,
        TwoPointFocus.Between(new() { FocalLengthMm = 100, FromSensor = true, NearMm = nearMm, FarMm = nearMm + 0.01 }) is null);

    [Fact]
    public void Focus_OnAPointWithinTheFrontFocalPoint_IsNone()
    {
        Assert.Null(TwoPointFocus.Between(new() { FocalLengthMm = 100, NearMm = 99, FarMm = 200 }));
        Assert.NotNull(TwoPointFocus.Between(new() { FocalLengthMm = 100, NearMm = 101, FarMm = 200 }));
    }

    [Fact]
    public void FocusSpread_IsTheTravelOfTheImage() => Depths.FromPupil.Sample(points =>
    {
        var focus = TwoPointFocus.Between(points)!;
        var none = default(NoTrail);
        var lens = focus.Lens;
        var (near, far) = (lens.RefocusedAt(focus.NearMm), lens.RefocusedAt(focus.FarMm));
        var travel = lens.FocalLengthMm * (near.Magnification - far.Magnification);
        Assert.Equal(travel, focus.FocusSpreadMm(ref none), Math.Max(1e-9, 1e-6 * travel));
    });
}
