using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Framing against similar triangles and round trips.</summary>
public sealed class FramingTests
{
    [Theory]
    [InlineData("36x24", 36.0)]
    [InlineData("36X24", 36.0)]
    [InlineData("24x36", 36.0)]
    [InlineData("17.3x13", 17.3)]
    [InlineData("13.0X17.3", 17.3)]
    [InlineData("36x23", null)]
    [InlineData("36", null)]
    [InlineData("36x24x1", null)]
    [InlineData("-36x24", null)]
    [InlineData("36,0x24", null)]
    [InlineData("NaNx24", null)]
    public void SensorFormat_ByItsSides_IsFoundInEitherOrder(string name, double? widthMm) =>
        Assert.Equal(widthMm, SensorFormats.Find(name)?.WidthMm);

    private static readonly Gen<LensFocus> Lenses = Gen.Select(
        Gen.Double[10, 300], Gen.Double[0.01, 3], Gen.Double[0.4, 2.5], Gen.Double[-20, 20], (f, m, p, h) => new LensFocus(f, m, p, h));

    [Fact]
    public void Angle_AnyLens_SpansTheFieldSeenFromTheEntrancePupil() => Lenses.Sample(lens =>
    {
        var none = default(NoTrail);
        var angles = Framing.AnglesOfView(lens, 36, 24, ref none);
        var field = 36 / lens.Magnification;
        Assert.Equal(2 * Math.Atan(field / 2 / lens.FromEntrancePupilMm) * 180 / Math.PI, angles.HorizontalDeg, 1e-9);
        Assert.True(angles.VerticalDeg < angles.HorizontalDeg && angles.HorizontalDeg < angles.DiagonalDeg);
    });

    [Fact]
    public void FillingFocalLength_SetOnTheCamera_FillsTheFrame() => Gen.Select(Lenses, Gen.Double[40, 2000]).Sample((lens, width) =>
    {
        var none = default(NoTrail);
        var f = Framing.FillingFocalLengthMm(lens, 36, width, ref none);
        Assert.Equal(lens.FromSensorMm, new LensFocus(f, 36 / width, 1, lens.PrincipalSeparationMm).FromSensorMm, 1e-9 * lens.FromSensorMm);
    });

    [Fact]
    public void Extension_AddedBehindTheLens_GivesTheMagnification() => Gen.Select(Lenses, Gen.Double[0.01, 5]).Sample((lens, wanted) =>
    {
        var none = default(NoTrail);
        var behind = lens.FocalLengthMm * (1 + lens.Magnification) + Framing.ExtensionMm(lens, wanted, ref none);
        Assert.Equal(wanted, behind / lens.FocalLengthMm - 1, 1e-9);
    });

    [Fact]
    public void NearToFarSize_TwoThings_IsTheRatioOfTheirAngles() => Gen.Select(Lenses, Gen.Double[0, 500]).Sample((lens, behind) =>
    {
        var none = default(NoTrail);
        var x = lens.FromEntrancePupilMm;
        Assert.Equal((1 / x) / (1 / (x + behind)), Framing.NearToFarSize(lens, behind, ref none), 1e-12);
    });

    [Fact]
    public void Crop_AnyProportions_TouchesTwoSidesAndKeepsThem() =>
        Gen.Select(Gen.Double[5, 60], Gen.Double[5, 60], Gen.Double[1, 20], Gen.Double[1, 20]).Sample((width, height, w, h) =>
        {
            var none = default(NoTrail);
            var crop = FrameCrop.Cut(width, height, w, h, ref none);
            Assert.Equal(w / h, crop.WidthMm / crop.HeightMm, 1e-9);
            Assert.True(crop.WidthMm <= width * (1 + 1e-12) && crop.HeightMm <= height * (1 + 1e-12));
            Assert.True(Math.Abs(crop.WidthMm - width) < 1e-9 || Math.Abs(crop.HeightMm - height) < 1e-9);
            Assert.Equal(Math.Min(1, crop.WidthMm * crop.HeightMm / width / height), crop.KeptShare, 1e-12);
        });

    [Theory]
    [InlineData(36, 8192, 8192)]
    [InlineData(24, 6000, 4000)]
    [InlineData(35.999, 6000, 5999)]
    public void Pixels_OfASide_AreWhole(double side, double pixels, double expected) =>
        Assert.Equal(expected, FrameCrop.PixelsAlong(side, pixels / 36));
}
