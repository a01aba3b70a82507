using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ExposurePropertyTests
{
    private static readonly Gen<CameraSettings> AnySettings = Gen.Select(
        Gen.Double[-2, 16], Gen.Double[-14, 11], Gen.Double[-6, 16],
        (a, t, s) => new CameraSettings(Math.Pow(2, a / 2), Math.Pow(2, t), 100 * Math.Pow(2, s)));

    private static NoTrail none;

    [Fact]
    public void LightOfSettings_AgainstTheSameSettings_IsRight() => AnySettings.Sample(settings =>
        Assert.Equal(0, LightLevel.FromSettings(settings, ref none).StopsOver(settings, 0, ref none), 1e-9));

    [Fact]
    public void FlashOfSettings_AgainstTheSameSettings_IsRightAtAnyShutterSpeed() =>
        Gen.Select(AnySettings, Gen.Double[-10, 5]).Sample((settings, log) =>
        {
            var flash = FlashLevel.FromSettings(settings.FNumber, settings.Iso, ref none);
            var other = new CameraSettings(settings.FNumber, Math.Pow(2, log), settings.Iso);
            Assert.Equal(0, flash.StopsOver(other, 0, ref none), 1e-9);
        });

    [Fact]
    public void Stops_AddUp() => Gen.Select(AnySettings, Gen.Double[-20, 30], Gen.Double[-6, 6], Gen.Double[0, 10]).Sample(
        (settings, level, more, loss) =>
        {
            var over = new LightLevel(level).StopsOver(settings, 0, ref none);
            Assert.Equal(over + more, new LightLevel(level + more).StopsOver(settings, 0, ref none), 1e-9);
            Assert.Equal(over - loss, new LightLevel(level).StopsOver(settings, loss, ref none), 1e-9);
            var longer = new CameraSettings(settings.FNumber, settings.ShutterSpeedS * Math.Pow(2, more), settings.Iso);
            Assert.Equal(over + more, new LightLevel(level).StopsOver(longer, 0, ref none), 1e-9);
            var faster = new CameraSettings(settings.FNumber, settings.ShutterSpeedS, settings.Iso * Math.Pow(2, more));
            Assert.Equal(over + more, new LightLevel(level).StopsOver(faster, 0, ref none), 1e-9);
            var wider = new CameraSettings(settings.FNumber * Math.Pow(2, -more / 2), settings.ShutterSpeedS, settings.Iso);
            Assert.Equal(over + more, new LightLevel(level).StopsOver(wider, 0, ref none), 1e-9);
        });

    [Fact]
    public void LuminanceAndIlluminanceOfSettings_ReadBack_AreTheSameLight() => AnySettings.Sample(settings =>
    {
        var exposure = SettingsExposure.Evaluate(settings, 14, 340, ref none);
        var light = exposure.Suits.ExposureValueIso100Stops;
        Assert.Equal(light, LightLevel.FromLuminance(exposure.LuminanceCdPerM2, 14, ref none).ExposureValueIso100Stops, 1e-9);
        Assert.Equal(light, LightLevel.FromIlluminance(exposure.IlluminanceLx, 340, ref none).ExposureValueIso100Stops, 1e-9);
        Assert.Equal(light, LightLevel.FromSettings(settings, ref none).ExposureValueIso100Stops, 1e-9);
    });

    [Fact]
    public void FlashLevel_ItsOwnFNumber_ReadsBack() => Gen.Select(Gen.Double[-10, 20], Gen.Double[-6, 16]).Sample((level, log) =>
    {
        var iso = 100 * Math.Pow(2, log);
        var fNumber = new FlashLevel(level).FNumberAt(iso);
        Assert.Equal(level, FlashLevel.FromSettings(fNumber, iso, ref none).FlashValueIso100Stops, 1e-9);
    });

    [Fact]
    public void SettingsExposure_LessLightAdmitted_RaisesTheValue() => Gen.Select(AnySettings, Gen.Double[0.001, 5]).Sample((settings, less) =>
    {
        var value = SettingsExposure.Evaluate(settings, 12.5, 250, ref none).ExposureValueStops;
        var stopped = new CameraSettings(settings.FNumber * Math.Pow(2, less / 2), settings.ShutterSpeedS, settings.Iso);
        Assert.Equal(value + less, SettingsExposure.Evaluate(stopped, 12.5, 250, ref none).ExposureValueStops, 1e-9);
    });

    [Fact]
    public void FlashPower_ShownAsFractionAndOffset_ReadsBack() => Gen.Double[0, 10].Sample(below =>
    {
        var (fraction, offset) = FlashPowers.Show(below);
        Assert.InRange(offset, 0, 1);
        Assert.Equal(below, FlashPowers.Find(fraction)!.Value - offset, 1e-8);
    });

    [Theory]
    [InlineData("1/1", 0)]
    [InlineData("1/8", 3)]
    [InlineData(" 1/1024 ", 10)]
    [InlineData("1/3", null)]
    [InlineData("1/2048", null)]
    [InlineData("1/0", null)]
    [InlineData("2/4", null)]
    [InlineData("1/-8", null)]
    [InlineData("1/99999999999", null)]
    [InlineData("", null)]
    public void FlashPowers_Fraction_IsBelowFullStopsOrNothing(string text, int? stops) => Assert.Equal(stops, FlashPowers.Find(text));
}
