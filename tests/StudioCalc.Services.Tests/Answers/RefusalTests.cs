using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Rules between fields, which the annotations cannot say.</summary>
public sealed class RefusalTests
{
    public static TheoryData<string, string, string> Exposures => new()
    {
        { "{}", "settings", "REQUIRED" },
        { Settings("""{"fNumber":8,"scale":"STOP_SCALE_THIRD"}"""), "settings.aperture.scale", "CONFLICT" },
        { Settings("""{"fNumber":8,"tenths":0}"""), "settings.aperture.tenths", "CONFLICT" },
        { Settings("""{"mark":"8","scale":"STOP_SCALE_THIRD","tenths":3}"""), "settings.aperture.tenths", "CONFLICT" },
        { Settings("""{"mark":"6.3","tenths":3}"""), "settings.aperture.mark", "UNKNOWN_MARK" },
        { Settings("""{"mark":"5.7"}"""), "settings.aperture.mark", "UNKNOWN_MARK" },
        { Settings("""{"mark":"5,6"}"""), "settings.aperture.mark", "DECIMAL_COMMA" },
        { Settings(time: """{"timeS":1,"scale":"STOP_SCALE_HALF"}"""), "settings.shutter_speed.scale", "CONFLICT" },
        { Settings(time: """{"mark":"1/59"}"""), "settings.shutter_speed.mark", "UNKNOWN_MARK" },
        { Settings(iso: """{"speed":100,"scale":"STOP_SCALE_HALF"}"""), "settings.iso.scale", "CONFLICT" },
        { Settings(iso: """{"logarithmicSpeedDeg":21,"scale":"STOP_SCALE_HALF"}"""), "settings.iso.scale", "CONFLICT" },
        { Settings(iso: """{"mark":"101"}"""), "settings.iso.mark", "UNKNOWN_MARK" },
        { """{"light":{"continuous":{"luminanceCdPerM2":1,"receptor":"RECEPTOR_FLAT"}}}""", "light.continuous.receptor", "CONFLICT" },
        { """{"light":{"continuous":{"illuminanceLx":1,"receptor":"RECEPTOR_REFLECTED"}}}""", "light.continuous.receptor", "CONFLICT" },
        { """{"light":{"flash":{"exposureLxS":1,"receptor":"RECEPTOR_REFLECTED"}}}""", "light.flash.receptor", "CONFLICT" },
    };

    public static TheoryData<string, string, Action<BalanceFillRequest>> Balances => new()
    {
        { "fill.reading.continuous", "CONFLICT", request => request.Fill.Reading = request.BackLight.Clone() },
        { "fill.reading.flash.includes_ambient", "CONFLICT", request => request.Fill.Reading.Flash.IncludesAmbient = true },
        { "fill.power.offset_stops", "CONFLICT", request => request.Fill.Power = new() { BelowFullStops = 2, OffsetStops = 0 } },
        { "fill.power.offset_stops", "OUT_OF_RANGE", request => request.Fill.Power = new() { Fraction = "1/1", OffsetStops = 0.1 } },
        { "fill.power.fraction", "UNKNOWN_MARK", request => request.Fill.Power = new() { Fraction = "1/3" } },
        { "fill.power", "CONFLICT", request => request.Fill.LowestPower = new() { Fraction = "1/4" } },
        { "fill.power", "CONFLICT", request => request.Fill.Power = new() { Fraction = "1/256" } },
        { "camera.slowest_shutter_speed", "CONFLICT", request => request.Camera.SlowestShutterSpeed = new() { Mark = "1/250" } },
        { "camera.smallest_aperture", "CONFLICT", request => (request.Camera.WidestAperture, request.Camera.SmallestAperture) = (new() { Mark = "8" }, new() { Mark = "4" }) },
        { "camera.widest_aperture.mark", "UNKNOWN_MARK", request => request.Camera.WidestAperture = new() { Mark = "1.5" } },
        { "preference[1]", "DOUBLED_FIELD", request => request.Preference[1] = request.Preference[0] },
    };

    [Theory]
    [MemberData(nameof(Exposures))]
    public void EvaluateExposure_FieldsThatDoNotGoTogether_NamesTheField(string json, string field, string reason) =>
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.Exposure.EvaluateExposure(Calls.Parse<EvaluateExposureRequest>(json))));

    [Theory]
    [MemberData(nameof(Balances))]
    public void BalanceFill_FieldsThatDoNotGoTogether_NamesTheField(string field, string reason, Action<BalanceFillRequest> spoil)
    {
        var request = Examples.Balance();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
    }

    [Fact]
    public void BalanceFill_BackLightNotGivenAsSettings_NeedsShutterSpeedAndIso()
    {
        var request = Examples.Balance();
        request.BackLight.Continuous = new() { ExposureValueIso100Stops = 13 };
        Assert.Equal(
            [("shutter_speed", "REQUIRED"), ("iso", "REQUIRED")], Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)));
        (request.ShutterSpeed, request.Iso) = (new() { Mark = "1/125" }, new() { Mark = "100" });
        Assert.Equal(Calls.LightingRatio.BalanceFill(Examples.Balance()).Ways[0].Solution, Calls.LightingRatio.BalanceFill(request).Ways[0].Solution);
    }

    [Fact]
    public void BalanceFill_BackLightReadAsFlash_NamesItFirst()
    {
        var request = Examples.Balance();
        request.BackLight = request.Fill.Reading.Clone();
        Assert.Equal(("back_light.flash", "CONFLICT"), Calls.Refused(() => Calls.LightingRatio.BalanceFill(request))[0]);
    }

    [Fact]
    public void BalanceFill_SeveralBadFields_NamesThemAll()
    {
        var request = Examples.Balance();
        request.Fill.Power = new() { Fraction = "1/3" };
        request.Camera.SyncSpeed = new() { Mark = "1/201" };
        request.BackLight.Continuous.Settings.Aperture = new() { Mark = "f/8.5" };
        Assert.Equal(
            ["back_light.continuous.settings.aperture.mark", "fill.power.fraction", "camera.sync_speed.mark"],
            Calls.Refused(() => Calls.LightingRatio.BalanceFill(request)).Select(bad => bad.Field));
    }

    [Theory]
    [InlineData("5.7", "f/5.6 and f/6.3")]
    [InlineData("f/8.5", "f/8 and f/9")]
    public void UnknownMark_BetweenTwoMarks_NamesBothAndNeverTheInput(string mark, string neighbours)
    {
        var request = Calls.Parse<EvaluateExposureRequest>(Settings($$"""{"mark":"{{mark}}"}"""));
        var error = Assert.Throws<RpcException>(() => Calls.Exposure.EvaluateExposure(request));
        Assert.Contains(neighbours, Calls.Describe(error), StringComparison.Ordinal);
        Assert.DoesNotContain(mark, Calls.Describe(error), StringComparison.Ordinal);
    }

    [Fact]
    public void Tenths_OnAWholeStopMark_AreAddedOnEveryScaleOfTheRequest()
    {
        foreach (var scale in new[] { StopScale.Whole, StopScale.Half, StopScale.Third, StopScale.Tenth })
        {
            var request = Calls.Parse<EvaluateExposureRequest>(Settings("""{"mark":"5.6","tenths":7}"""));
            request.Scale = scale;
            Assert.Equal(Math.Pow(2, 5.7 / 2), Calls.Exposure.EvaluateExposure(request).Settings.Aperture.FNumber, 1e-12);
        }
    }

    [Fact]
    public void Refusal_OfManyFields_StaysUnderItsSize()
    {
        var violations = new Violations();
        for (var i = 0; i < 1000; i++)
        {
            violations.Add($"components[{i}].height_mm", RefusalReason.OutOfRange, "Must be a number from 1 to 2.");
        }

        var status = Refusal.InvalidFields(violations);
        var listed = status.Details[1].Unpack<Google.Rpc.BadRequest>().FieldViolations;
        Assert.InRange(status.CalculateSize(), Refusal.MaxBytes * 3 / 4, Refusal.MaxBytes);
        Assert.InRange(listed.Count, 20, 999);
        Assert.Equal("components[0].height_mm", listed[0].Field);
        Assert.Contains("1000", status.Message, StringComparison.Ordinal);
        Assert.Contains($"{listed.Count}", status.Message, StringComparison.Ordinal);
    }

    private static string Settings(
        string aperture = """{"fNumber":8}""", string time = """{"timeS":1}""", string iso = """{"speed":100}""") =>
        $$"""{ "settings": { "aperture": {{aperture}}, "shutterSpeed": {{time}}, "iso": {{iso}} } }""";
}
