using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class SeparationTests
{
    private static NoTrail none;

    [Fact]
    public void Of_FlashAndDaylightAlike_IsHalfOfEach()
    {
        var told = Separation.Of(8, Math.Sqrt(32), 0.1, ref none);
        Assert.True(told.IsTold);
        Assert.Equal(Math.Sqrt(32), told.FNumber, 1e-12);
        Assert.Equal((0.5, 2.0), (Math.Round(told.FlashShare, 12), Math.Round(told.ErrorGain, 12)));
        Assert.Equal(0.3, told.ErrorStops, 1e-12);
    }

    [Theory]
    [InlineData(0.2, 0.1, true)]
    [InlineData(0.19, 0.1, false)]
    [InlineData(0.39, 0.2, false)]
    [InlineData(0.02, 0, true)]
    [InlineData(0.009, 0, false)]
    [InlineData(0, 0, false)]
    public void Of_ReadingsApart_TellTheFlashFromTwiceTheErrorOn(double stops, double error, bool told)
    {
        var separation = Separation.Of(4 * Math.Pow(2, stops / 2), 4, error, ref none);
        Assert.Equal(told, separation.IsTold);
        Assert.Equal(told ? 0 : Math.Max(2 * error, 0.01) - stops, separation.ShortfallStops, 1e-9);
    }

    [Fact]
    public void Of_ALightPutTogether_IsToldApartAgain() => Gen.Select(Gen.Double[1, 64], Gen.Double[1, 64]).Sample((flash, daylight) =>
    {
        var told = Separation.Of(Math.Sqrt(flash * flash + daylight * daylight), daylight, 0, ref none);
        if (told.IsTold)
        {
            Assert.Equal(flash, told.FNumber, 1e-6 * flash);
        }
    });

    [Fact]
    public void Of_ASmallError_GrowsAsTold() => Gen.Select(Gen.Double[2, 32], Gen.Double[0.3, 4]).Sample((daylight, stops) =>
    {
        const double error = 1e-6;
        var total = daylight * Math.Pow(2, stops / 2);
        var told = Separation.Of(total, daylight, error, ref none);
        var up = Separation.Of(total * Math.Pow(2, error / 2), daylight * Math.Pow(2, -error / 2), 0, ref none);
        Assert.Equal(told.ErrorStops, 2 * Math.Log2(up.FNumber / told.FNumber), 1e-3 * told.ErrorStops);
        var gained = Separation.Of(total * Math.Pow(2, error / 2), daylight, 0, ref none);
        Assert.Equal(told.ErrorGain, 2 * Math.Log2(gained.FNumber / told.FNumber) / error, 1e-3 * told.ErrorGain);
    });

    [Fact]
    public void Remedies_OfAnyReadings_TellTheFlashAndOneStepLessDoesNot() =>
        Gen.Select(Gen.Double[0.001, 0.5], Gen.Double[0.01, 0.5], Gen.OneOf(Enum.GetValues<StopScale>())).Sample((stops, error, scale) =>
        {
            var total = 5 * Math.Pow(2, stops / 2);
            var remedies = SeparationRemedies.For(total, 5, error, scale);
            Assert.Equal(stops < Math.Max(2 * error, 0.01) - 1e-9 ? 2 : 0, remedies.Count);
            foreach (var remedy in remedies)
            {
                Assert.True(remedy.Outcome.IsTold);
                Assert.True(remedy.ByShutterSpeed ? remedy.ChangeStops < 0 : remedy.ChangeStops > 0);
                var steps = (scale == StopScale.Tenth && remedy.ByShutterSpeed ? StopScale.Third : scale).StepsPerStop();
                var less = Math.Abs(remedy.ChangeStops) - 1.0 / steps;
                var gained = Math.Log2(1 + (Math.Pow(2, stops) - 1) * Math.Pow(2, less));
                Assert.True(gained < Math.Max(2 * error, 0.01) + 1e-6);
            }
        });

    [Fact]
    public void Remedies_OfEqualReadings_AreNone() => Assert.Empty(SeparationRemedies.For(8, 8, 0.1, StopScale.Third));

    [Fact]
    public void Of_LessThanTheDaylight_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => Separation.Of(4, 5.6, 0.1, ref none));
}
