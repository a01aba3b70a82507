using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateHeadroomTests
{
    [Theory]
    [InlineData("""{"reflectance":0.8}""", HeadroomDefinition.SaturationSpeed, 0.18)]
    [InlineData("""{"reflectance":0.8,"measuredHeadroomStops":3.2}""", HeadroomDefinition.Measured, 0.18)]
    [InlineData("""{"reflectance":0.8,"definition":"HEADROOM_DEFINITION_METER"}""", HeadroomDefinition.Meter, 0.15707963267948966)]
    [InlineData("""{"reflectance":0.8,"definition":"HEADROOM_DEFINITION_METER","midToneReflectance":0.18}""", HeadroomDefinition.Meter, 0.18)]
    [InlineData("""{"reflectance":0.8,"definition":"HEADROOM_DEFINITION_DIFFUSE_WHITE"}""", HeadroomDefinition.DiffuseWhite, 0.18)]
    public void Definition_NamesTheMidToneThatGoesWithIt(string json, HeadroomDefinition definition, double midTone)
    {
        var answer = Calls.Exposure.EvaluateHeadroom(Calls.Parse<EvaluateHeadroomRequest>(json));
        Assert.Equal(definition, answer.Definition);
        Assert.Equal(midTone, answer.MidToneReflectance, 1e-12);
        Assert.Equal(answer.HeadroomStops - answer.SurfaceOverMidToneStops, answer.LeftStops, 1e-12);
    }

    // A rim two stops over a camera set for the fill, on a plate of reflectance 0.8.
    [Fact]
    public void BackLitRim_OfAWhitePlate_Clips()
    {
        var answer = Calls.Exposure.EvaluateHeadroom(new() { Reflectance = 0.8, LightOverSettingStops = 2 });
        Assert.Equal(4.152, answer.SurfaceOverMidToneStops, 5e-4);
        Assert.Equal(2.963 - 4.152, answer.LeftStops, 1e-3);
        Assert.True(answer.ShareOfClipping > 2);
    }

    [Theory]
    [InlineData("""{"reflectance":0.8,"definition":"HEADROOM_DEFINITION_MEASURED"}""", "measured_headroom_stops REQUIRED")]
    [InlineData("""{"reflectance":0.8,"definition":"HEADROOM_DEFINITION_METER","measuredHeadroomStops":3}""", "measured_headroom_stops CONFLICT")]
    [InlineData("""{"reflectance":0.8,"reflectedConstant":12.5,"incidentConstant":250,"lensFactor":0.6}""",
        "reflected_constant CONFLICT,incident_constant CONFLICT,lens_factor CONFLICT")]
    [InlineData("""{"reflectance":0.8,"definition":"HEADROOM_DEFINITION_METER","incidentConstant":250,"midToneReflectance":0.18}""", "incident_constant CONFLICT")]
    public void FieldsThatDoNotFit_AreRefusedByPath(string json, string refused) => Assert.Equal(
        refused.Split(','),
        Calls.Refused(() => Calls.Exposure.EvaluateHeadroom(Calls.Parse<EvaluateHeadroomRequest>(json))).Select(one => $"{one.Field} {one.Reason}"));

    [Fact]
    public void LensFactor_BesideTransmission_IsRefused()
    {
        var request = Examples.Exposure();
        request.LensFactor = 0.6;
        request.LensTransmission = new() { Transmittance = 0.9 };
        Assert.Equal([("lens_factor", "CONFLICT")], Calls.Refused(() => Calls.Exposure.EvaluateExposure(request)));
    }
}
