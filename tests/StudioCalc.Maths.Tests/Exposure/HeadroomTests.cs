using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class HeadroomTests
{
    private static NoTrail none;

    [Fact]
    public void Left_DiffuseWhitePlacement_DoesNotDependOnTheMidTone() => Gen.Select(Gen.Double[0.01, 1], Gen.Double[0.05, 0.5], Gen.Double[-5, 5]).Sample(
        (surface, midTone, light) => Assert.Equal(
            0.5 - Math.Log2(surface) - light,
            Headroom.Evaluate(
                new()
                {
                    Reflectance = surface,
                    MidToneReflectance = midTone,
                    LightOverSettingStops = light,
                    Definition = HeadroomDefinition.DiffuseWhite,
                },
                ref none).LeftStops,
            1e-9));

    // An incident meter places luminance R C N² / (pi t S): K falls out.
    [Fact]
    public void Left_Meter_DependsOnTheIncidentConstantAlone() => Gen.Select(Gen.Double[0.01, 1], Gen.Double[5, 40], Gen.Double[100, 1000], Gen.Double[0.1, 1]).Sample(
        (surface, k, c, q) => Assert.Equal(
            Math.Log2(78 * Math.PI / (q * surface * c)),
            Headroom.Evaluate(
                new() { Reflectance = surface, Definition = HeadroomDefinition.Meter, ReflectedConstant = k, IncidentConstant = c, LensFactor = q },
                ref none).LeftStops,
            1e-9));

    [Fact]
    public void Left_Measured_IsTheMeasureLessTheSurface() => Gen.Select(Gen.Double[0.01, 1], Gen.Double[0, 10]).Sample((surface, measured) =>
    {
        var headroom = Headroom.Evaluate(
            new() { Reflectance = surface, Definition = HeadroomDefinition.Measured, MeasuredHeadroomStops = measured }, ref none);
        Assert.Equal(measured, headroom.HeadroomStops);
        Assert.Equal(measured - Math.Log2(surface / 0.18), headroom.LeftStops, 1e-9);
        Assert.Equal(headroom.LeftStops < 0, headroom.ShareOfClipping > 1);
    });

    [Fact]
    public void SaturationLuminance_AtTheSensor_GivesTheSaturationExposure() =>
        Gen.Select(Gen.Double[1, 22], Gen.Double[0.0001, 30], Gen.Double[25, 25600], Gen.Double[0.1, 0.78]).Sample((n, t, s, q) =>
        {
            var settings = new CameraSettings(n, t, s);
            var sensor = SensorExposure.Evaluate(settings, 1, q, ref none);
            var clipped = SensorExposure.Evaluate(settings, sensor.SaturationCdPerM2, q, ref none);
            Assert.Equal(sensor.SaturationLxS, clipped.ExposureLxS, 1e-9 * sensor.SaturationLxS);
            Assert.Equal(s * 10 / 78, clipped.ExposureIndex, 1e-9 * s);
        });

    [Fact]
    public void AdditiveValues_ThereAndBack_AreTheSame() => Gen.Double[-10, 20].Sample(value =>
    {
        Assert.Equal(value, AdditiveValues.OfFNumber(AdditiveValues.FNumber(value)), 1e-9);
        Assert.Equal(value, AdditiveValues.OfTimeS(AdditiveValues.TimeS(value)), 1e-9);
        Assert.Equal(value, AdditiveValues.OfIso(AdditiveValues.Iso(value)), 1e-9);
    });
}
