using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class MarkRoundTripTests
{
    public static TheoryData<string, StopScale> EverySeriesOnEveryScale()
    {
        var data = new TheoryData<string, StopScale>();
        foreach (var name in Series.Names)
        {
            foreach (var scale in Enum.GetValues<StopScale>())
            {
                data.Add(name, scale);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(EverySeriesOnEveryScale))]
    public void EveryMark_FoundThenNearest_IsTheSameMark(string name, StopScale scale)
    {
        var series = Series.Named(name);
        var texts = Series.Texts(series, scale);
        Assert.NotEmpty(texts);
        foreach (var text in texts)
        {
            var mark = series.Find(text, scale)!;
            Assert.Equal(mark, series.Nearest(mark.Value, scale));
            Assert.Equal(text, series.Show(mark));
            Assert.Equal(mark, series.Find(series.Show(mark), scale));
        }
    }

    [Theory]
    [MemberData(nameof(EverySeriesOnEveryScale))]
    public void EveryStepFromEndToEnd_HasItsOwnText(string name, StopScale scale)
    {
        // A text that stood twice on a scale would name two values.
        var texts = Series.Texts(Series.Named(name), scale);
        Assert.Equal(texts.Count, texts.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void ApertureWithTenths_FoundThenNearest_IsTheSameMark()
    {
        var tenths = Gen.Select(Gen.OneOf([.. Series.Texts(Marks.Aperture, StopScale.Whole)]), Gen.Int[0, 9]);
        tenths.Sample((text, count) =>
        {
            var mark = Marks.Aperture.Find(text, count)!;
            Assert.Equal((count, StopScale.Tenth), (mark.Tenths, mark.Scale));
            Assert.Equal(mark, Marks.Aperture.Nearest(mark.Value, StopScale.Tenth));
        });
    }

    [Fact]
    public void Nearest_AnyValueWithinTheMarks_IsHalfAStepAwayAtMost()
    {
        var cases = Gen.Select(Gen.OneOf(Series.Names), Gen.OneOf(Enum.GetValues<StopScale>()), Gen.Double[0, 1]);
        cases.Sample((name, scale, share) =>
        {
            var series = Series.Named(name);
            var texts = Series.Texts(series, scale);
            var (first, last) = (series.Find(texts[0], scale)!.Value, series.Find(texts[^1], scale)!.Value);
            var value = first * Math.Pow(last / first, share);
            var mark = series.Nearest(value, scale)!;
            var half = 0.5 / (scale == StopScale.Tenth && mark.Scale != StopScale.Tenth ? StopScale.Third : scale).StepsPerStop();
            Assert.InRange(series.RestStops(value, mark), -half - 1e-9, half + 1e-9);
        });
    }

    [Fact]
    public void Nearest_ALargerValue_NeverGetsALowerMark()
    {
        var cases = Gen.Select(
            Gen.OneOf(Series.Names), Gen.OneOf(Enum.GetValues<StopScale>()), Gen.Double[-3, 3], Gen.Double[0, 0.5]);
        cases.Sample((name, scale, log, more) =>
        {
            var series = Series.Named(name);
            var middle = name == "iso" ? 800 : 1;
            var (low, high) = (middle * Math.Pow(10, log), middle * Math.Pow(10, log + more));
            if (series.Nearest(low, scale) is { } below && series.Nearest(high, scale) is { } above)
            {
                Assert.True(below.Value <= above.Value);
            }
        });
    }
}

/// <summary>The series by name, and their marks read through the public members alone.</summary>
internal static class Series
{
    public static readonly string[] Names = ["aperture", "shutter speed", "iso"];

    public static MarkSeries Named(string name) => name switch
    {
        "aperture" => Marks.Aperture,
        "shutter speed" => Marks.ShutterSpeed,
        _ => Marks.Iso,
    };

    /// <summary>The shown texts of a scale in order, found by walking far over both ends.</summary>
    public static List<string> Texts(MarkSeries series, StopScale scale)
    {
        var perStop = scale == StopScale.Tenth ? 30 : scale.StepsPerStop();
        var (@base, exponent) = series == Marks.Aperture ? (1.0, 0.5) : series == Marks.Iso ? (100.0, 1.0) : (1.0, 1.0);
        return
        [
            .. Enumerable.Range(-20 * perStop, 40 * perStop)
                .Select(step => series.Nearest(@base * Math.Pow(2, exponent * step / perStop), scale))
                .OfType<Mark>()
                .Where(mark => mark.Tenths == 0)
                .Select(series.Show)
                .Distinct(StringComparer.Ordinal),
        ];
    }
}
