namespace StudioCalc.Maths.Tests;

/// <summary>Spot checks against positions that are published; the sources stand in tests/reference/exposure.json.</summary>
public sealed class MarkTableTests
{
    [Theory]
    [InlineData("f/1.4", StopScale.Whole, 1.0)]
    [InlineData("f/5.6", StopScale.Whole, 5.0)]
    [InlineData("f/90", StopScale.Whole, 13.0)]
    [InlineData("f/1.2", StopScale.Third, 2 / 3.0)]
    [InlineData("f/1.2", StopScale.Half, 0.5)]
    [InlineData("f/7.1", StopScale.Third, 17 / 3.0)]
    [InlineData("f/13", StopScale.Third, 22 / 3.0)]
    [InlineData("f/13", StopScale.Half, 7.5)]
    [InlineData("f/18", StopScale.Third, 25 / 3.0)]
    [InlineData("f/9.5", StopScale.Half, 6.5)]
    [InlineData("f/0.7", StopScale.Third, -1.0)]
    [InlineData("f/29", StopScale.Third, 29 / 3.0)]
    public void Aperture_PublishedMark_StandsAtItsPosition(string text, StopScale scale, double stops) =>
        Assert.Equal(Math.Pow(2, stops / 2), Marks.Aperture.Find(text, scale)!.Value, 1e-12);

    [Theory]
    [InlineData("1/8000", StopScale.Third, -13.0)]
    [InlineData("1/1000", StopScale.Third, -10.0)]
    [InlineData("1/200", StopScale.Third, -23 / 3.0)]
    [InlineData("1/60", StopScale.Whole, -6.0)]
    [InlineData("1/20", StopScale.Third, -13 / 3.0)]
    [InlineData("1/20", StopScale.Half, -4.5)]
    [InlineData("1/23", StopScale.Half, -4.5)]
    [InlineData("1/11", StopScale.Half, -3.5)]
    [InlineData("1/3", StopScale.Half, -1.5)]
    [InlineData("1/1.5", StopScale.Half, -0.5)]
    [InlineData("1/2", StopScale.Third, -1.0)]
    [InlineData("0.3", StopScale.Third, -5 / 3.0)]
    [InlineData("6 s", StopScale.Third, 8 / 3.0)]
    [InlineData("6", StopScale.Half, 2.5)]
    [InlineData("30s", StopScale.Whole, 5.0)]
    [InlineData("60", StopScale.Third, 6.0)]
    public void ShutterSpeed_PublishedMark_StandsAtItsPosition(string text, StopScale scale, double stops) =>
        Assert.Equal(stops, Math.Log2(Marks.ShutterSpeed.Find(text, scale)!.Value), 1e-12);

    [Theory]
    [InlineData("25", StopScale.Third, -2.0)]
    [InlineData("64", StopScale.Third, -2 / 3.0)]
    [InlineData("125", StopScale.Third, 1 / 3.0)]
    [InlineData("640", StopScale.Third, 8 / 3.0)]
    [InlineData("1250", StopScale.Third, 11 / 3.0)]
    [InlineData("409600", StopScale.Whole, 12.0)]
    public void Iso_PublishedMark_StandsAtItsPosition(string text, StopScale scale, double stops) =>
        Assert.Equal(stops, Math.Log2(Marks.Iso.Find(text, scale)!.Value / 100), 1e-12);

    [Theory]
    [InlineData("1.2")]
    [InlineData("f/13")]
    public void Aperture_TextWithTwoValues_IsAmbiguous(string text) => Assert.True(Marks.Aperture.IsAmbiguous(text));

    [Theory]
    [InlineData("1/20")]
    [InlineData("1/10")]
    [InlineData("1/6")]
    [InlineData("0.3")]
    [InlineData("6 s")]
    [InlineData("10")]
    [InlineData("20 s")]
    public void ShutterSpeed_TextWithTwoValues_IsAmbiguous(string text) => Assert.True(Marks.ShutterSpeed.IsAmbiguous(text));

    [Fact]
    public void EveryOtherText_OnEveryScale_MeansOneValue()
    {
        string[] known = ["f/0.8", "f/1.2", "f/13", "1/20", "1/10", "1/6", "0.3", "6", "10", "20"];
        foreach (var series in Series.Names.Select(Series.Named))
        {
            var ambiguous = Enum.GetValues<StopScale>().SelectMany(scale => Series.Texts(series, scale)).Where(series.IsAmbiguous);
            Assert.Empty(ambiguous.Except(known, StringComparer.Ordinal));
        }
    }

    [Theory]
    [InlineData("5.7", StopScale.Third, "f/5.6", "f/6.3")]
    [InlineData("f/12", StopScale.Whole, "f/11", "f/16")]
    [InlineData("1/59", StopScale.Third, "1/60", "1/50")]
    public void Neighbours_NumberBetweenMarks_NamesBoth(string text, StopScale scale, string below, string above) =>
        Assert.Equal([below, above], (text.StartsWith("1/", StringComparison.Ordinal) ? Marks.ShutterSpeed : Marks.Aperture).Neighbours(text, scale));

    [Theory]
    [InlineData("0.01")]
    [InlineData("1e300")]
    [InlineData("5,6")]
    [InlineData("1/0")]
    [InlineData("-8")]
    [InlineData("NaN")]
    [InlineData("")]
    public void Neighbours_NoNumberOrFarBeyond_AreNone(string text) => Assert.Empty(Marks.Aperture.Neighbours(text, StopScale.Third));

    [Fact]
    public void Nearest_BeyondTheMarks_IsNone()
    {
        Assert.Null(Marks.Aperture.Nearest(0.5, StopScale.Third));
        Assert.Null(Marks.Aperture.Nearest(128, StopScale.Whole));
        Assert.Null(Marks.ShutterSpeed.Nearest(3600, StopScale.Third));
        Assert.Null(Marks.Iso.Nearest(1, StopScale.Tenth));
    }

    [Theory]
    [InlineData(StopScale.Whole, 1)]
    [InlineData(StopScale.Half, 2)]
    [InlineData(StopScale.Third, 3)]
    public void Nearest_ExactlyHalfway_AdmitsLessLight(StopScale scale, int perStop)
    {
        for (var step = 0; step < 4 * perStop; step++)
        {
            var half = (step + 0.5) / perStop;
            Assert.True(Marks.Aperture.RestStops(Math.Pow(2, half / 2), Marks.Aperture.Nearest(Math.Pow(2, half / 2), scale)!) > 0);
            Assert.True(Marks.ShutterSpeed.RestStops(Math.Pow(2, -half), Marks.ShutterSpeed.Nearest(Math.Pow(2, -half), scale)!) > 0);
            Assert.True(Marks.Iso.Nearest(100 * Math.Pow(2, half), scale)!.Value < 100 * Math.Pow(2, half));
        }
    }

    [Fact]
    public void Nearest_ExactlyHalfwayBetweenTenths_AdmitsLessLight()
    {
        var halfway = Math.Pow(2, 5.65 / 2);
        Assert.Equal(("5.6", 7), (Marks.Aperture.Nearest(halfway, StopScale.Tenth)!.Text, Marks.Aperture.Nearest(halfway, StopScale.Tenth)!.Tenths));
    }
}
