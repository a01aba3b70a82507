using StudioCalc.Client.Embedded;
using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client.Tests;

public class UnitsTests
{
    private readonly StudioCalcClient _client = EmbeddedStudioCalc.Create();

    // Published pair of one flash: 51 m, 167 ft (a camera manual, rounded to whole feet).
    [Fact]
    public async Task Flash_WithAGuideNumberAndADistanceInFeet_SolvesAsInMetres()
    {
        var request = new SolveFlashRequest
        {
            Unknown = FlashUnknown.Aperture,
            Units = { new FlashUnit { GuideNumber = Length.FromFeet(80), Distance = Length.FromFeet(20) } },
            Iso = Iso.At("100"),
        };

        var solution = (await _client.Exposure.SolveFlashAsync(request)).Solution;

        Assert.Equal("f/4", solution.Aperture.Mark);
        Assert.Equal(20, solution.Distance!.Value.Feet, 1e-9);
        Assert.Equal(167, new FlashUnit { GuideNumberM = 51 }.GuideNumber!.Value.Feet, 0.5);
    }

    [Fact]
    public void FlashUnit_WithoutLengths_HasNone()
    {
        var unit = new FlashUnit { Distance = Length.FromMeters(1), GuideNumber = Length.FromMeters(58) };
        unit.Distance = null;
        unit.GuideNumber = null;

        Assert.Equal(new FlashUnit(), unit);
    }

    [Fact]
    public void Reading_OfAnIlluminance_IsInLux() =>
        Assert.Equal(2000, Reading.Of(Illuminance.FromKilolux(2)).Continuous.IlluminanceLx, 1e-9);

    [Fact]
    public void Reading_OfALuminance_IsInCandelasPerSquareMetre() =>
        Assert.Equal(10.7639104, Reading.Of(Luminance.FromCandelasPerSquareFoot(1)).Continuous.LuminanceCdPerM2, 1e-4);

    [Fact]
    public void Reading_OfSettings_KeepsThem() =>
        Assert.Equal("f/8", Reading.Of(CameraSettings.Of("f/8", "1/125", "100")).Continuous.Settings.Aperture.Mark);

    [Fact]
    public void ShutterSpeed_OfADuration_IsInSecondsToTheLastBit() =>
        Assert.Equal(1 / 60d, ShutterSpeed.Of(Duration.FromSeconds(1 / 60d)).TimeS);

    [Fact]
    public void ShutterSpeed_OfATimeSpan_IsInSecondsToItsTicks() =>
        Assert.Equal(0.0166666, ShutterSpeed.Of(TimeSpan.FromSeconds(1 / 60d)).TimeS, 1e-12);

    [Fact]
    public void Distance_InFeetAndInches_IsInMillimetres()
    {
        var fill = new FlashFill { Distance = Length.FromFeetInches(6, 6) };
        Assert.Equal(1981.2, fill.DistanceMm, 1e-9);
        Assert.Equal(1.9812, fill.Distance!.Value.Meters, 1e-12);
    }

    [Fact]
    public void Distance_SetToNull_IsUnset()
    {
        var fill = new FlashFill { DistanceMm = 1000 };
        fill.Distance = null;
        Assert.False(fill.HasDistanceMm);
        Assert.Null(fill.Distance);
        Assert.Null(new BalanceRemedy().Distance);
    }

    [Fact]
    public async Task Remedy_ForAFlashAtAKnownDistance_TellsTheNewOneInFeetAndInches()
    {
        var request = Samples.Read<BalanceFillRequest>("balance-fill.json");
        request.BackOverFillStops = -6;
        request.Fill.Distance = Length.FromFeetInches(6, 0);
        var answer = await _client.LightingRatio.BalanceFillAsync(request);
        var remedy = answer.Ways
            .Where(way => way.NotReached is not null)
            .SelectMany(way => way.NotReached.Remedies)
            .First(remedy => remedy.Kind == BalanceRemedyKind.MoveFlashCloser);
        var (feet, inches) = (remedy.Distance!.Value.FeetInches.Feet, remedy.Distance!.Value.FeetInches.Inches);
        Assert.Equal(remedy.DistanceFactor * 6, feet + inches / 12, 1e-9);
        Assert.InRange(inches, 0, 12);
    }

    [Fact]
    public async Task Settings_Evaluated_TellTheLightTheySuitInAnyUnit()
    {
        var answer = (await _client.Exposure.EvaluateExposureAsync(Samples.Exposure())).Settings;
        Assert.Equal(answer.IlluminanceLx / 1000, answer.Illuminance.Kilolux, 1e-9);
        Assert.Equal(answer.LuminanceCdPerM2, answer.Luminance.Nits, 1e-9);
        Assert.Equal(7.8125, answer.ShutterSpeed.Time.Milliseconds, 1e-9);
    }

    [Fact]
    public async Task Reading_OfTheLightThatSettingsSuit_LiesOnThem()
    {
        var settings = (await _client.Exposure.EvaluateExposureAsync(Samples.Exposure())).Settings;
        foreach (var light in new[] { Reading.Of(settings.Illuminance), Reading.Of(settings.Luminance) })
        {
            var request = Samples.Exposure();
            request.Light = light;
            Assert.Equal(0, (await _client.Exposure.EvaluateExposureAsync(request)).LightOverSettingStops, 1e-9);
        }
    }
}
