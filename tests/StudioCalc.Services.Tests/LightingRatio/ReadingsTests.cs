using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Lights compared, combined and separated.</summary>
public sealed class ReadingsTests
{
    [Fact]
    public void Compare_FlashAgainstWindow_DependsOnTheShutterSpeedThatMustBeGiven()
    {
        var request = Examples.Compare();
        var slow = Calls.LightingRatio.CompareReadings(request).KeyOverFillStops;
        request.ShutterSpeed.Mark = "1/125";
        Assert.Equal(slow - 1, Calls.LightingRatio.CompareReadings(request).KeyOverFillStops, 1e-12);
        request.ShutterSpeed = null;
        Assert.Equal([("shutter_speed", "REQUIRED")], Calls.Refused(() => Calls.LightingRatio.CompareReadings(request)));
    }

    [Fact]
    public void Compare_LightsOfOneKind_AreTheSameAtEveryShutterSpeed()
    {
        var request = Examples.Compare();
        request.Fill = new() { Continuous = new() { ExposureValueIso100Stops = 11 } };
        var asked = Calls.LightingRatio.CompareReadings(request);
        request.ShutterSpeed = null;
        var unasked = Calls.LightingRatio.CompareReadings(request);
        Assert.Equal(2, asked.KeyOverFillStops, 1e-12);
        Assert.Equal(asked.KeyOverFillStops, unasked.KeyOverFillStops, 1e-12);
        Assert.Equal((4.0, 5.0), (unasked.Ratio.KeyToFill, unasked.Ratio.KeyPlusFillToFill));
        Assert.Equal(0.2, unasked.FillShare, 1e-12);
    }

    [Fact]
    public void Compare_FlashReadWithOtherLight_IsRefused()
    {
        var request = Examples.Compare();
        request.Fill.Flash.IncludesAmbient = true;
        request.Key.Continuous.Settings.Aperture.Mark = "f/7";
        Assert.Equal(
            [("key.continuous.settings.aperture.mark", "UNKNOWN_MARK"), ("fill.flash.includes_ambient", "CONFLICT")],
            Calls.Refused(() => Calls.LightingRatio.CompareReadings(request)));
    }

    [Fact]
    public void Combine_Example_EachLightHasItsShareByName()
    {
        var answer = Calls.LightingRatio.CombineReadings(Examples.Combine());
        Assert.Equal(["window behind", "softbox front left", "white card"], answer.Shares.Select(share => share.Name));
        Assert.Equal([0.5, -1.5, -3.53422], answer.Shares.Select(share => Math.Round(share.OverSettingStops, 5)));
        Assert.Equal(1, answer.Shares.Sum(share => share.Share), 1e-12);
        Assert.Equal(answer.Shares[1].Share, answer.FlashShare, 1e-12);
        Assert.Equal(4 * Math.Sqrt(2) * Math.Pow(2, answer.TotalOverSettingStops / 2), answer.TotalAperture.FNumber, 1e-9);
        Assert.Equal("f/8", answer.TotalAperture.Mark);
    }

    [Fact]
    public void Combine_LightsInAnotherOrder_GiveTheSame()
    {
        var request = Examples.Combine();
        var answer = Calls.LightingRatio.CombineReadings(request);
        var turned = request.Clone();
        turned.Lights.Clear();
        turned.Lights.Add(request.Lights.Reverse());
        Assert.Equal(answer.TotalOverSettingStops, Calls.LightingRatio.CombineReadings(turned).TotalOverSettingStops, 1e-12);
    }

    [Fact]
    public void Combine_BadLights_AreNamedByTheirPlace()
    {
        var request = Examples.Combine();
        request.Lights[1].Reading.Flash.IncludesAmbient = true;
        request.Lights[2].Reading.Continuous.Receptor = Receptor.Reflected;
        Assert.Equal(
            [("lights[1].reading.flash.includes_ambient", "CONFLICT"), ("lights[2].reading.continuous.receptor", "CONFLICT")],
            Calls.Refused(() => Calls.LightingRatio.CombineReadings(request)));
    }

    [Fact]
    public void Combine_ReceptorsThatDiffer_AreNotedOnce()
    {
        var request = Examples.Combine();
        request.Lights[1].Reading.Flash.Receptor = request.Lights[2].Reading.Continuous.Receptor = Receptor.Dome;
        Assert.Single(Calls.LightingRatio.CombineReadings(request).Advisories, advisory => advisory.Code == AdvisoryCode.ReceptorsDiffer);
        request.Lights[0].Reading.Continuous.Receptor = Receptor.Dome;
        Assert.Empty(Calls.LightingRatio.CombineReadings(request).Advisories);
    }

    [Fact]
    public void Separate_Example_TellsTheFlash()
    {
        var solution = Calls.LightingRatio.SeparateFlash(Examples.Separate()).Solution;
        Assert.Equal(Math.Sqrt(Math.Pow(2, 6.2) - Math.Pow(2, 5.6)), solution.Aperture.FNumber, 1e-9);
        Assert.Equal(("f/4", 6u), (solution.Aperture.Mark, solution.Aperture.Tenths));
        Assert.Equal(1 / solution.FlashShare, solution.ErrorGain, 1e-12);
    }

    [Fact]
    public void Separate_TotalUnderTheDaylight_IsRefused()
    {
        var request = Examples.Separate();
        request.TotalAperture = new() { Mark = "f/5.6", Tenths = 5 };
        Assert.Equal([("total_aperture", "CONFLICT")], Calls.Refused(() => Calls.LightingRatio.SeparateFlash(request)));
    }

    [Fact]
    public void Separate_ReadingsTooClose_IsNotReachedAndRemediesArePriced()
    {
        var request = Examples.Separate();
        request.TotalAperture = new() { Mark = "f/5.6", Tenths = 7 };
        var way = Calls.LightingRatio.SeparateFlash(request).NotReached;
        Assert.Equal((0.1, 0.1), (Math.Round(way.TotalOverDaylightStops, 9), Math.Round(way.ShortfallStops, 9)));
        Assert.Equal(
            [SeparationRemedyKind.FasterShutterSpeed, SeparationRemedyKind.RaiseFlashPower, SeparationRemedyKind.ShadeMeter],
            way.Remedies.Select(remedy => remedy.Kind));
        Assert.Equal(-4 / 3.0, way.Remedies[0].ChangeStops, 1e-12);
        Assert.Equal(1.1, way.Remedies[1].ChangeStops, 1e-12);
        Assert.Equal(Math.Log2(1 + (Math.Pow(2, 0.1) - 1) * Math.Pow(2, 1.1)), way.Remedies[1].TotalOverDaylightStops, 1e-9);
        Assert.False(way.Remedies[2].HasChangeStops || way.Remedies[2].HasTotalOverDaylightStops);
    }

    [Fact]
    public void Separate_EqualReadings_OnlyShadeHelps()
    {
        var request = Examples.Separate();
        request.TotalAperture = request.DaylightAperture.Clone();
        var way = Calls.LightingRatio.SeparateFlash(request).NotReached;
        Assert.Equal(SeparationRemedyKind.ShadeMeter, Assert.Single(way.Remedies).Kind);
        Assert.Equal(0.2, way.ShortfallStops, 1e-12);
    }
}
