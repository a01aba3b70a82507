using StudioCalc.Tests;
using StudioCalc.V1;

namespace StudioCalc.Photos.Tests;

/// <summary>Focal length, distance, pixels and sensor as files write them, and what comes of them.</summary>
public sealed class LensAndFrameTests
{
    private static readonly PhotoOptions With30 = new() { PermittedBlur = new() { DiameterUm = 30 } };

    [Fact]
    public async Task Evaluate_UsualPhoto_GivesFieldAndDepth()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual(), With30);
        Assert.Equal(new(new(36, 24), SensorSource.FocalPlane), answer.Sensor);
        var k = (600 / 90.0) - 2;
        var m = 2 / (k + Math.Sqrt((k * k) - 4));
        Assert.Equal(m, answer.Framing!.Focus.Magnification, 1e-9);
        Assert.Equal(36 / m, answer.Framing.Focus.FieldWidthMm, 1e-6);
        var n = 4 * Math.Sqrt(2);
        var q = 0.03 * n / (90 * m);
        Assert.Equal(2 * n * 0.03 * (1 + m) / (m * m * (1 - (q * q))), answer.DepthOfField!.Zone.TotalDepthMm, 1e-6);
        Assert.True(answer.FramingAtInfinity!.HorizontalAngleDeg > answer.Framing.HorizontalAngleDeg);
    }

    [Fact]
    public async Task Distance_Infinite_IsInfinityFocusAndNoNumber()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Rational(ExifFields.SubjectDistance, uint.MaxValue, 1), With30);
        Assert.Null(answer.Facts.SubjectDistanceMm);
        Assert.True(answer.Facts.IsFocusedAtInfinity);
        Assert.Contains("subject-distance:infinite", answer.Notes.Codes());
        Assert.Equal(0, answer.Framing!.Focus.Magnification);
        Assert.True(answer.DepthOfField!.Zone.FarIsInfinite);
    }

    [Fact]
    public void Distance_InfiniteInSinglePrecision_IsInfinite() =>
        Assert.True(Sample.Read(ExifFields.Usual().Single(ExifFields.SubjectDistance, uint.MaxValue)).IsFocusedAtInfinity);

    [Theory]
    [InlineData(0u, 1u, "subject-distance:unknown")]
    [InlineData(0u, 0u, "subject-distance:zero-over-zero")]
    [InlineData(5000u, 1u, "subject-distance:out-of-range")]
    [InlineData(6u, 0u, "subject-distance:division-by-zero")]
    public async Task Distance_ThatIsNone_LeavesNoFieldAndNoDepth(uint over, uint under, string code)
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Rational(ExifFields.SubjectDistance, over, under), With30);
        Assert.Null(answer.Framing);
        Assert.Null(answer.DepthOfField);
        Assert.NotNull(answer.FramingAtInfinity);
        Assert.Contains(code, answer.Notes.Codes());
        Assert.Contains("framing:needs-other-value", answer.Notes.Codes());
        Assert.Contains("depth-of-field:needs-other-value", answer.Notes.Codes());
    }

    [Fact]
    public async Task Distance_NearerThanTheLensCouldFocus_IsACodeAndNoError()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Rational(ExifFields.SubjectDistance, 300, 1000), With30);
        Assert.Null(answer.Framing);
        Assert.Contains("framing:nearer-than-lens-focuses", answer.Notes.Codes());
        Assert.Contains("depth-of-field:nearer-than-lens-focuses", answer.Notes.Codes());
        Assert.NotNull(answer.Exposure);
    }

    [Fact]
    public async Task DepthOfField_WithoutPermittedBlur_IsNotWorkedOut()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual());
        Assert.Null(answer.DepthOfField);
        Assert.Contains("depth-of-field:no-permitted-blur", answer.Notes.Codes());
    }

    [Fact]
    public async Task DepthOfField_ByNamedBlur_NeedsTheSensor()
    {
        var named = new PhotoOptions { PermittedBlur = new() { Named = BlurCriterion.Diagonal1500 } };
        var known = await Sample.Evaluate(ExifFields.Usual(), named);
        Assert.Equal(Math.Sqrt((36 * 36) + (24 * 24)) / 1.5, known.DepthOfField!.PermittedBlurUm, 1e-6);
        var unknown = await Sample.Evaluate(ExifFields.Usual().Without(ExifFields.FocalPlaneX), named);
        Assert.Contains("sensor:missing", unknown.Notes.Codes());
        Assert.Contains("depth-of-field:needs-other-value", unknown.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_OfAResizedFile_IsThatOfTheCamerasPixels()
    {
        var answer = await Sample.Evaluate(Sample.Of(ExifFields.Usual().Jpeg(1500, 1000)));
        Assert.Equal(new FrameSize(36, 24), answer.Sensor!.Size);
        Assert.Contains("pixels:resized", answer.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_OfACroppedFile_IsThatOfTheCamerasPixels()
    {
        var answer = await Sample.Evaluate(Sample.Of(ExifFields.Usual().Jpeg(4000, 4000)));
        Assert.Equal(new FrameSize(36, 24), answer.Sensor!.Size);
        Assert.Contains("pixels:cropped", answer.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_WhereTheResizerChangedTheCamerasPixelsToo_IsNotBelieved()
    {
        var fields = ExifFields.Usual().Short(ExifFields.PixelsWide, 100).Short(ExifFields.PixelsHigh, 67);
        var answer = await Sample.Evaluate(Sample.Of(fields.Jpeg(100, 67)));
        Assert.Null(answer.Sensor);
        Assert.Contains("focal-plane-resolution:implausible", answer.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_ByTheEquivalentFocalLength_SaysThatItIsRounded()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Without(ExifFields.FocalPlaneX).Short(ExifFields.EquivalentFocalLength, 138));
        Assert.Equal(SensorSource.Equivalent, answer.Sensor!.Source);
        Assert.Equal(23.48, answer.Sensor.Size.WidthMm, 0.005);
        Assert.Equal(15.65, answer.Sensor.Size.HeightMm, 0.005);
        Assert.Contains("sensor:rounded", answer.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_ByTheEquivalentFocalLengthWithoutPixels_AssumesProportions()
    {
        var fields = ExifFields.Usual().Without(ExifFields.PixelsWide).Short(ExifFields.EquivalentFocalLength, 138);
        var answer = await Sample.Evaluate(Sample.Of([.. fields.Tiff()], "photo.nef"));
        Assert.Equal(1.5, answer.Sensor!.Size.WidthMm / answer.Sensor.Size.HeightMm, 1e-9);
        Assert.Contains("sensor:aspect-assumed", answer.Notes.Codes());
        Assert.Contains("pixels:missing", answer.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_WhereTwoSourcesContradictEachOther_IsUnknown()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Rational(ExifFields.FocalLength, 23, 1).Short(ExifFields.EquivalentFocalLength, 18));
        Assert.Null(answer.Sensor);
        Assert.Contains("sensor:conflict", answer.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_Given_GoesBeforeTheFileAndSaysWhereItDiffers()
    {
        var fields = ExifFields.Usual().Rational(ExifFields.FocalLength, 23, 1).Short(ExifFields.EquivalentFocalLength, 18);
        var answer = await Sample.Evaluate(fields, new() { Sensor = new(23.5, 15.6) });
        Assert.Equal(new(new(23.5, 15.6), SensorSource.Given), answer.Sensor);
        Assert.Contains("sensor:given-differs", answer.Notes.Codes());
        var agreeing = await Sample.Evaluate(ExifFields.Usual(), new() { Sensor = new(36, 24) });
        Assert.DoesNotContain("sensor:given-differs", agreeing.Notes.Codes());
    }

    [Theory]
    [InlineData((ushort)2, 60000u, 360u, 25.4)]
    [InlineData((ushort)3, 60000u, 360u, 10)]
    public void FocalPlane_ByItsUnit_GivesTheSensor(ushort unit, uint over, uint under, double unitMm)
    {
        var size = Sample.Read(ExifFields.Usual().Short(ExifFields.FocalPlaneUnit, unit).Rational(ExifFields.FocalPlaneX, (uint)(over * unitMm), under)
            .Rational(ExifFields.FocalPlaneY, (uint)(over * unitMm), under)).FocalPlaneSize;
        Assert.Equal(36, size!.Value.WidthMm, 0.001);
    }

    [Fact]
    public void FocalPlane_WithoutAKnownUnit_IsNotGuessed()
    {
        var facts = Sample.Read(ExifFields.Usual().Short(ExifFields.FocalPlaneUnit, 9));
        Assert.Null(facts.FocalPlaneSize);
        Assert.Contains("focal-plane-resolution:malformed", facts.Notes.Codes());
    }

    [Fact]
    public async Task Orientation_Upright_TakesTheShortSideAsTheWidth()
    {
        var level = await Sample.Evaluate(ExifFields.Usual());
        var upright = await Sample.Evaluate(ExifFields.Usual().Short(ExifFields.Orientation, 6));
        Assert.Equal(level.Framing!.Focus.FieldHeightMm, upright.Framing!.Focus.FieldWidthMm, 1e-9);
    }

    [Theory]
    [InlineData(1000, 1500)]
    [InlineData(4000, 6000)]
    public async Task Field_OfAFileThatAProgramTurned_IsAsItIsLookedAt(int wide, int high)
    {
        var level = await Sample.Evaluate(ExifFields.Usual());
        var turned = await Sample.Evaluate(Sample.Of(ExifFields.Usual().Short(ExifFields.Orientation, 1).Jpeg(wide, high)));
        Assert.Equal(new FrameSize(24, 36), turned.Sensor!.Size);
        Assert.True(turned.Facts.IsUpright);
        Assert.Equal(level.Framing!.Focus.FieldHeightMm, turned.Framing!.Focus.FieldWidthMm, 1e-9);
        Assert.DoesNotContain("pixels:cropped", turned.Notes.Codes());
    }

    [Fact]
    public async Task Sensor_GivenForAnUprightFileWithoutTheCamerasPixels_LiesAlongTheFile()
    {
        var fields = ExifFields.Usual().Without(ExifFields.PixelsWide).Without(ExifFields.FocalPlaneX);
        var answer = await Sample.Evaluate(Sample.Of(fields.Jpeg(1000, 1500)), new() { Sensor = new(36, 24) });
        Assert.Equal(new(new(24, 36), SensorSource.Given), answer.Sensor);
    }

    [Fact]
    public void Orientation_BeyondTheKnownOnes_IsReported()
    {
        var facts = Sample.Read(ExifFields.Usual().Short(ExifFields.Orientation, 12));
        Assert.Null(facts.Orientation);
        Assert.Contains("orientation:out-of-range", facts.Notes.Codes());
    }

    [Fact]
    public void Texts_OfCameraAndLens_ArePassedOnInOneLine()
    {
        var facts = Sample.Read(ExifFields.Usual().Text(ExifFields.Make, "Unnamed Works").Text(ExifFields.Model, "Unnamed Works\nK 1").Text(ExifFields.LensModel, "90 mm\u0001macro"));
        Assert.Equal(("Unnamed Works K 1", "90 mm macro"), (facts.Camera, facts.Lens));
    }
}
