using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateLightTests
{
    public static TheoryData<string, string, Action<EvaluateLightRequest>> Bad => new()
    {
        { "sources[1].calibration", "REQUIRED", request => request.Sources[1].Calibration = null },
        { "sources[1].power", "CONFLICT", request => request.Sources[1].Calibration = null },
        { "sources[1].hot_centre", "CONFLICT", request => MakePoint(request.Sources[1]).HotCentre = Hot() },
        { "sources[1].calibration.luminance_cd_per_m2", "CONFLICT", request =>
        {
            MakePoint(request.Sources[1]).Calibration = new() { LuminanceCdPerM2 = 1000 };
            request.Sources[1].Power = null;
        } },
        { "sources[0].power", "CONFLICT", request =>
        {
            request.Sources[0].Calibration = new() { LuminanceCdPerM2 = 1000 };
            request.Sources[0].Power = new() { Fraction = "1/2" };
        } },
        { "sources[0].power", "CONFLICT", request => request.Sources[0].Power = new() { Fraction = "1/2" } },
        { "sources[0].calibration.reading.power", "CONFLICT", request => request.Sources[0].Calibration.Reading.Power = new() { Fraction = "1/2" } },
        { "sources[1].calibration.reading.power", "REQUIRED", request => request.Sources[1].Calibration.Reading.Power = null },
        { "sources[0].pose.aim_point", "CONFLICT", request => request.Sources[0].Pose.AimPoint = request.Sources[0].Pose.Position.Clone() },
        { "sources[0].outline.corners", "CONFLICT", request => request.Sources[0].Outline = Crossed() },
        { "sources[1].calibration.reading.place", "CONFLICT", request => request.Sources[1].Calibration.Reading.Place.YMm = -2000 },
        { "sources[1].calibration.reading.place", "CONFLICT", request =>
            request.Sources[1].Calibration.Reading.Place = request.Sources[1].Pose.Position.Clone() },
        { "sources[1].calibration.reading.aim_point", "CONFLICT", request =>
            request.Sources[1].Calibration.Reading.AimPoint = request.Sources[1].Calibration.Reading.Place.Clone() },
        { "sources[1].calibration.reading.place", "CONFLICT", request =>
            request.Sources[1].Calibration.Reading.AimPoint = new() { XMm = 0, YMm = 2000, ZMm = -4000 } },
        { "sources[1].calibration.reading.reading.flash.receptor", "CONFLICT", request =>
            request.Sources[1].Calibration.Reading.Reading.Flash.Receptor = Receptor.Reflected },
        { "sources[0].calibration.reading.reading.continuous.luminance_cd_per_m2", "CONFLICT", request =>
            request.Sources[0].Calibration.Reading.Reading.Continuous = new() { LuminanceCdPerM2 = 100 } },
        { "sources[1].calibration.reading.reading.flash.includes_ambient", "CONFLICT", request =>
            request.Sources[1].Calibration.Reading.Reading.Flash.IncludesAmbient = true },
        { "receivers[0].up", "OUT_OF_RANGE", request => request.Receivers[0].Up = false },
        { "receivers[0].aim_point", "CONFLICT", request => request.Receivers[0].AimPoint = request.Receivers[0].Place.Clone() },
        { "receivers[0].source_index", "OUT_OF_RANGE", request => request.Receivers[0].SourceIndex = 2 },
        { "receivers[0].source_index", "CONFLICT", request =>
        {
            request.Receivers[0].SourceIndex = 0;
            request.Receivers[0].Place = request.Sources[0].Pose.Position.Clone();
        } },
        { "receivers[0].place", "CONFLICT", request => request.Receivers[0].Place = MakePoint(request.Sources[1]).Pose.Position.Clone() },
        { "reference_index", "OUT_OF_RANGE", request => request.ReferenceIndex = 3 },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<EvaluateLightRequest> spoil)
    {
        var request = Examples.Light();
        spoil(request);
        Assert.Contains((field, reason), Calls.Refused(() => Calls.FillPlacement.EvaluateLight(request)));
    }

    [Fact]
    public void MeteredPlace_ReadsWhatTheMeterSaid()
    {
        var request = Examples.Light();
        request.Sources.RemoveAt(0);
        request.Sources[0].Power = null;
        request.Receivers.Clear();
        request.Receivers.Add(new LightReceiver { Place = new() { XMm = 0, YMm = 0, ZMm = 0 }, SourceIndex = 0 });
        var light = Calls.FillPlacement.EvaluateLight(request).Receivers[0];
        Assert.Equal(4 * Math.Sqrt(2), light.FlashMeters.FNumber, 1e-12);
        Assert.Equal(0, light.OverSettingsStops, 1e-12);
        Assert.Equal(2.5 * 32, light.ExposureLxS, 1e-9);
    }

    [Theory]
    [InlineData(Receptor.Flat, 340)]
    [InlineData(Receptor.Dome, 400)]
    public void OwnConstantOfTheMeter_IsKeptForReceiversOfItsKind(Receptor receptor, double constant)
    {
        var request = Examples.Light();
        request.Sources.RemoveAt(0);
        request.Sources[0].Power = null;
        var flash = request.Sources[0].Calibration.Reading.Reading.Flash;
        (flash.Receptor, flash.CalibrationConstant) = (receptor, constant);
        request.Receivers[0] = new()
        {
            Place = new() { XMm = 0, YMm = 0, ZMm = 0 },
            SourceIndex = 0,
            Kind = receptor == Receptor.Dome ? ReceiverKind.Dome : ReceiverKind.Flat,
        };
        Assert.Equal(0, Calls.FillPlacement.EvaluateLight(request).Receivers[0].OverSettingsStops, 1e-12);
    }

    [Fact]
    public void Power_AStopLower_GivesHalf()
    {
        var request = Examples.Light();
        var before = Calls.FillPlacement.EvaluateLight(request).Receivers[0].Sources[1].ExposureLxS;
        request.Sources[1].Power = new() { Fraction = "1/32" };
        Assert.Equal(before / 2, Calls.FillPlacement.EvaluateLight(request).Receivers[0].Sources[1].ExposureLxS, 1e-12);
    }

    [Fact]
    public void SteadyLightAndFlash_WithoutSettings_AreNotAdded()
    {
        var request = Examples.Light();
        request.Settings = null;
        var light = Calls.FillPlacement.EvaluateLight(request).Receivers[0];
        Assert.False(light.HasOverReferenceStops || light.HasOverSettingsStops || light.Sources[0].HasLightShare);
        Assert.True(light.HasIlluminanceLx && light.HasExposureLxS);
    }

    [Fact]
    public void Shares_OfAReceiver_AddUpToOne()
    {
        foreach (var light in Calls.FillPlacement.EvaluateLight(Examples.Light()).Receivers)
        {
            Assert.Equal(1, light.Sources.Sum(source => source.LightShare), 1e-12);
        }
    }

    [Fact]
    public void SourceBehindTheReceiver_AndReceiverBehindTheSource_SayWhyTheyAreDark()
    {
        var request = Examples.Light();
        request.Receivers[0].Place.YMm = -3000;
        var answer = Calls.FillPlacement.EvaluateLight(request);
        Assert.Equal(DarkReason.BehindSource, answer.Receivers[0].Sources[1].DarkReason);
        Assert.Equal(DarkReason.FacesAway, answer.Receivers[1].Sources[0].DarkReason);
        Assert.Equal(DarkReason.Unspecified, answer.Receivers[1].Sources[1].DarkReason);
    }

    private static LightSource MakePoint(LightSource source)
    {
        source.Point = new();
        return source;
    }

    private static HotCentre Hot() => new() { WidthShare = 0.5, LuminanceRatio = 2 };

    private static OutlineSource Crossed() => new()
    {
        Corners =
        {
            new FacePoint { RightMm = 0, UpMm = 0 }, new FacePoint { RightMm = 100, UpMm = 100 },
            new FacePoint { RightMm = 100, UpMm = 0 }, new FacePoint { RightMm = 0, UpMm = 100 },
        },
    };
}
