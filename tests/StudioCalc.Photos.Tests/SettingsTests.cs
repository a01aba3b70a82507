using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>F-number, exposure time and ISO as files write them, well and badly.</summary>
public sealed class SettingsTests
{
    [Fact]
    public void Read_UsualPhoto_SaysAllSettings()
    {
        var facts = Sample.Read(ExifFields.Usual());
        Assert.Equal(("JPEG", 5.6, 0.008, 100.0), (facts.Format, facts.FNumber, facts.ExposureTimeS, facts.Iso));
        Assert.Equal((90.0, 600.0, false), (facts.FocalLengthMm, facts.SubjectDistanceMm, facts.IsFocusedAtInfinity));
        Assert.Equal(["equivalent-focal-length:missing", "subject-distance:from-sensor-assumed"], facts.Notes.Codes().Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(0, 0, "f-number:zero-over-zero")]
    [InlineData(1, 0, "f-number:division-by-zero")]
    [InlineData(0, 1, "f-number:zero")]
    [InlineData(4294967295, 1, "f-number:out-of-range")]
    public void FNumber_ThatIsNone_IsMissingWithItsReason(uint over, uint under, string code)
    {
        var facts = Sample.Read(ExifFields.Usual().Rational(ExifFields.FNumber, over, under));
        Assert.Null(facts.FNumber);
        Assert.Contains(code, facts.Notes.Codes());
    }

    [Theory]
    [InlineData(float.NaN, "f-number:not-a-number")]
    [InlineData(float.PositiveInfinity, "f-number:not-a-number")]
    [InlineData(-5.6f, "f-number:negative")]
    public void FNumber_AsAFloatThatIsNone_IsMissingWithItsReason(float value, string code)
    {
        var facts = Sample.Read(ExifFields.Usual().Single(ExifFields.FNumber, value));
        Assert.Null(facts.FNumber);
        Assert.Contains(code, facts.Notes.Codes());
    }

    [Fact]
    public void FNumber_LeftOutByTheLens_IsMissing()
    {
        var facts = Sample.Read(ExifFields.Usual().Without(ExifFields.FNumber));
        Assert.Null(facts.FNumber);
        Assert.Contains("f-number:missing", facts.Notes.Codes());
    }

    [Fact]
    public async Task FNumber_InSinglePrecision_IsTheMarkThatIsMeant()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Single(ExifFields.FNumber, 5.599999904632568f));
        Assert.Equal(5.6, answer.Facts.FNumber);
        Assert.Equal("f/5.6", answer.Exposure!.Settings.Aperture.Mark);
        Assert.Equal(4 * Math.Sqrt(2), answer.Exposure.Settings.Aperture.FNumber, 1e-12);
    }

    [Fact]
    public async Task FNumber_ThatIsNoMark_IsTakenLiterally()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Rational(ExifFields.FNumber, 178, 100));
        Assert.Equal(1.78, answer.Exposure!.Settings.Aperture.FNumber);
    }

    [Theory]
    [InlineData(0, 0, "exposure-time:zero-over-zero")]
    [InlineData(1, 0, "exposure-time:division-by-zero")]
    [InlineData(0, 1, "exposure-time:zero")]
    [InlineData(-1, 60, "exposure-time:negative")]
    [InlineData(7200, 1, "exposure-time:out-of-range")]
    public async Task ExposureTime_ThatIsNone_LeavesNoExposureValue(int over, int under, string code)
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Signed(ExifFields.ExposureTime, over, under));
        Assert.Null(answer.Facts.ExposureTimeS);
        Assert.Null(answer.Exposure);
        Assert.Contains(code, answer.Notes.Codes());
        Assert.Contains("exposure:needs-other-value", answer.Notes.Codes());
    }

    [Fact]
    public async Task ExposureTime_InLogarithmicFormAlone_IsTheMarkThatIsMeant()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Without(ExifFields.ExposureTime).Signed(ExifFields.TimeValue, 4906, 1000));
        Assert.Equal(0.033354, answer.Facts.ExposureTimeS!.Value, 1e-5);
        Assert.Equal("1/30", answer.Exposure!.Settings.ShutterSpeed.Mark);
        Assert.Equal(1.0 / 32, answer.Exposure.Settings.ShutterSpeed.TimeS, 1e-12);
        Assert.Contains("exposure-time:from-apex", answer.Notes.Codes());
    }

    [Theory]
    [InlineData(10u, 600u, "1/60")]
    [InlineData(7u, 10u, "0.7")]
    [InlineData(71u, 100u, null)]
    [InlineData(1u, 77u, null)]
    [InlineData(4u, 10u, "0.4")]
    [InlineData(30u, 1u, "30")]
    public async Task ExposureTime_AsWritten_IsAMarkOnlyWhereItIsOne(uint over, uint under, string? mark)
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Rational(ExifFields.ExposureTime, over, under));
        var speed = answer.Exposure!.Settings.ShutterSpeed;
        if (mark is null)
        {
            Assert.Equal((double)over / under, speed.TimeS, 1e-9);
        }
        else
        {
            Assert.Equal((mark, 0.0), (speed.Mark, speed.RestStops));
        }
    }

    [Theory]
    [InlineData(56, 180, "f/5.6", "1/180", 5, 7.5)]
    [InlineData(67, 90, "f/6.7", "1/90", 5.5, 6.5)]
    [InlineData(130, 180, "f/13", "1/180", 7.5, 7.5)]
    [InlineData(130, 125, "f/13", "1/125", 22 / 3.0, 7)]
    [InlineData(18, 180, "f/1.8", "1/180", 5 / 3.0, 7.5)]
    [InlineData(24, 20, "f/2.4", "1/20", 2.5, 13 / 3.0)]
    public async Task Settings_OnHalfStops_AreTheMarksThatAreWritten(
        uint tenths, uint under, string aperture, string speed, double apertureValue, double timeValue)
    {
        var fields = ExifFields.Usual().Rational(ExifFields.FNumber, tenths, 10).Rational(ExifFields.ExposureTime, 1, under);
        var settings = (await Sample.Evaluate(fields)).Exposure!.Settings;
        Assert.Equal((aperture, 0.0, speed, 0.0), (settings.Aperture.Mark, settings.Aperture.RestStops, settings.ShutterSpeed.Mark, settings.ShutterSpeed.RestStops));
        Assert.Equal(Math.Pow(2, apertureValue / 2), settings.Aperture.FNumber, 1e-9);
        Assert.Equal(Math.Pow(2, -timeValue), settings.ShutterSpeed.TimeS, 1e-9);
    }

    [Fact]
    public void Settings_ThatContradictTheirLogarithmicForms_AreReported()
    {
        var facts = Sample.Read(ExifFields.Usual().Rational(ExifFields.ApertureValue, 3, 1).Signed(ExifFields.TimeValue, 5, 1));
        Assert.Equal((5.6, 0.008), (facts.FNumber, facts.ExposureTimeS));
        Assert.Contains("f-number:conflict", facts.Notes.Codes());
        Assert.Contains("exposure-time:conflict", facts.Notes.Codes());
    }

    [Fact]
    public void Settings_ThatAgreeWithTheirLogarithmicForms_AreNotReported()
    {
        var facts = Sample.Read(ExifFields.Usual().Rational(ExifFields.ApertureValue, 497, 100).Signed(ExifFields.TimeValue, 6966, 1000));
        Assert.DoesNotContain(facts.Notes, note => note.Reason == PhotoReason.Conflict);
    }

    [Theory]
    [InlineData(ExifFields.RecommendedExposureIndex, 102400)]
    [InlineData(ExifFields.IsoSpeed, 80000)]
    public void Iso_InAFullField_ComesFromTheWideOne(ushort tag, uint wide)
    {
        var facts = Sample.Read(ExifFields.Usual().Short(ExifFields.Iso, 65535).Long(tag, wide));
        Assert.Equal(wide, facts.Iso);
        Assert.Contains("iso:field-full", facts.Notes.Codes());
    }

    [Fact]
    public void Iso_OfTwoWideFields_IsTheOneThatTheKindNames()
    {
        var fields = ExifFields.Usual().Short(ExifFields.Iso, 65535).Long(ExifFields.RecommendedExposureIndex, 102400).Long(ExifFields.IsoSpeed, 80000);
        Assert.Equal(102400, Sample.Read(fields.Short(ExifFields.SensitivityType, 2)).Iso);
        Assert.Equal(80000, Sample.Read(fields.Short(ExifFields.SensitivityType, 3)).Iso);
    }

    [Fact]
    public async Task Iso_InAFullFieldAlone_IsMissing()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual().Short(ExifFields.Iso, 65535));
        Assert.Null(answer.Facts.Iso);
        Assert.Null(answer.Exposure);
        Assert.Contains("iso:field-full", answer.Notes.Codes());
    }

    [Fact]
    public void Iso_InTheWideFieldAlone_IsTaken()
    {
        var facts = Sample.Read(ExifFields.Usual().Without(ExifFields.Iso).Long(ExifFields.RecommendedExposureIndex, 400));
        Assert.Equal(400, facts.Iso);
        Assert.Contains("iso:missing", facts.Notes.Codes());
        Assert.Contains("iso:from-other-field", facts.Notes.Codes());
    }

    [Fact]
    public void Iso_InTwoFieldsDifferently_IsReported()
    {
        var facts = Sample.Read(ExifFields.Usual().Long(ExifFields.RecommendedExposureIndex, 400));
        Assert.Equal(100, facts.Iso);
        Assert.Contains("iso:conflict", facts.Notes.Codes());
    }
}
