namespace StudioCalc.Maths.Tests;

public sealed class GuardTests
{
    public static TheoryData<double> NotPositive => [0, -1, double.NaN, double.PositiveInfinity, double.NegativeInfinity];

    public static TheoryData<double> NotFinite => [double.NaN, double.PositiveInfinity, double.NegativeInfinity];

    [Theory]
    [MemberData(nameof(NotPositive))]
    public void NumbersThatMustBePositive_AreNot_Throw(double bad)
    {
        var none = default(NoTrail);
        var light = new LightLevel(10);
        var flash = new FlashLevel(5);
        var settings = new CameraSettings(8, 0.01, 100);
        Throws(() => _ = new CameraSettings(bad, 0.01, 100));
        Throws(() => _ = new CameraSettings(8, bad, 100));
        Throws(() => _ = new CameraSettings(8, 0.01, bad));
        Throws(() => LightLevel.FromLuminance(bad, 12.5, ref none));
        Throws(() => LightLevel.FromLuminance(1, bad, ref none));
        Throws(() => LightLevel.FromIlluminance(bad, 250, ref none));
        Throws(() => LightLevel.FromIlluminance(1, bad, ref none));
        Throws(() => light.ExposureValueAtIsoStops(bad));
        Throws(() => FlashLevel.FromSettings(bad, 100, ref none));
        Throws(() => FlashLevel.FromSettings(8, bad, ref none));
        Throws(() => FlashLevel.FromExposure(bad, 250, ref none));
        Throws(() => FlashLevel.FromExposure(1, bad, ref none));
        Throws(() => flash.FNumberAt(bad));
        Throws(() => SettingsExposure.Evaluate(settings, bad, 250, ref none));
        Throws(() => SettingsExposure.Evaluate(settings, 12.5, bad, ref none));
        Throws(() => Marks.Aperture.Nearest(bad, StopScale.Third));
        Throws(() => Marks.Aperture.RestStops(bad, Marks.Aperture.Nearest(8, StopScale.Third)!));
    }

    [Theory]
    [MemberData(nameof(NotFinite))]
    public void NumbersThatMustBeFinite_AreNot_Throw(double bad)
    {
        var none = default(NoTrail);
        var settings = new CameraSettings(8, 0.01, 100);
        Throws(() => _ = new LightLevel(bad));
        Throws(() => _ = new FlashLevel(bad));
        Throws(() => new LightLevel(1).StopsOver(settings, bad, ref none));
        Throws(() => new FlashLevel(1).StopsOver(settings, bad, ref none));
        Throws(() => LightingRatio.FromStops(bad, ref none));
        Throws(() => IsoSpeeds.FromLogarithmic(bad));
        Throws(() => FlashPowers.Show(bad));
    }

    [Fact]
    public void EnumsOutsideTheirValues_Throw()
    {
        Throws(() => ((StopScale)9).StepsPerStop());
        Throws(() => ((Receptor)9).Default());
        Throws(() => ((Receptor)9).IsRecommended(250));
        Throws(() => FlashPowers.Show(-1));
        Throws(() => Marks.Aperture.Find("8", 10));
        Throws(() => Marks.Aperture.Find("8", -1));
    }

    private static void Throws(Action action) => Assert.ThrowsAny<ArgumentOutOfRangeException>(action);
}
