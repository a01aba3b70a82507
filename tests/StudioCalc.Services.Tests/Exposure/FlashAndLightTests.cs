using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class FlashAndLightTests
{
    [Fact]
    public void FreezeMotion_HalfPeakDuration_IsNeverTurnedIntoABlur()
    {
        var request = Examples.Freeze();
        request.FlashDurationKind = FlashDurationKind.T05;
        var answer = Calls.Exposure.FreezeMotion(request);
        Assert.False(answer.HasFlashBlurUm || answer.HasFlashCutOffStops);
        Assert.Equal("flash_duration_s", answer.Advisories.Single(advisory => advisory.Code == AdvisoryCode.FlashBlurUnknown).Field);
    }

    [Fact]
    public void FreezeMotion_DurationWithoutItsKindOrTheReverse_IsRefused()
    {
        var request = Examples.Freeze();
        request.ClearFlashDurationKind();
        Assert.Equal([("flash_duration_kind", "REQUIRED")], Calls.Refused(() => Calls.Exposure.FreezeMotion(request)));
        request = Examples.Freeze();
        request.ClearFlashDurationS();
        Assert.Equal([("flash_duration_kind", "CONFLICT")], Calls.Refused(() => Calls.Exposure.FreezeMotion(request)));
    }

    [Fact]
    public void FreezeMotion_NothingAcross_HasNoLongestTime()
    {
        var request = Examples.Freeze();
        request.Motion.AngleDeg = 90;
        var answer = Calls.Exposure.FreezeMotion(request);
        Assert.False(answer.HasLongestExposureS);
        Assert.Null(answer.SlowestShutterSpeed);
        Assert.Equal(0, answer.ShutterBlurUm);
    }

    [Fact]
    public void FreezeMotion_SlowestMark_StaysWithinTheBlurAndTheCamera()
    {
        var request = Examples.Freeze();
        var answer = Calls.Exposure.FreezeMotion(request);
        Assert.Equal("1/10000", answer.SlowestShutterSpeed.Mark);
        Assert.True(answer.SlowestShutterSpeed.TimeS <= answer.LongestExposureS);
        request.Camera.FastestShutterSpeed = new() { Mark = "1/8000" };
        Assert.Null(Calls.Exposure.FreezeMotion(request).SlowestShutterSpeed);
    }

    [Fact]
    public void EstimateRecycling_FloorLongerThanFullPower_IsRefused()
    {
        var request = Examples.Recycling();
        request.ShortestRecycleS = 1.9;
        Assert.Equal([("shortest_recycle_s", "CONFLICT")], Calls.Refused(() => Calls.Exposure.EstimateRecycling(request)));
    }

    [Fact]
    public void EstimateRecycling_LowPower_StopsAtTheFloor()
    {
        var request = Examples.Recycling();
        request.Power = new() { Fraction = "1/128" };
        Assert.Equal(0.1, Calls.Exposure.EstimateRecycling(request).IntervalS);
        request.RecycleTimeS = 0.05;
        Assert.Equal(0.05, Calls.Exposure.EstimateRecycling(request).IntervalS);
    }

    [Fact]
    public void ListFlickerFreeSpeeds_OfFiftyHertz_HoldsTheKnownMarks()
    {
        var answer = Calls.Exposure.ListFlickerFreeSpeeds(Examples.Flicker());
        Assert.Equal(["1/100", "1/50"], answer.Speeds.Take(2).Select(speed => speed.ShutterSpeed.Mark));
        Assert.All(answer.Speeds, speed => Assert.InRange(speed.Banding, 0, 0.05));
        Assert.All(answer.Speeds, speed => Assert.True(speed.ShutterSpeed.TimeS <= 0.125 + 1e-12));
    }

    [Fact]
    public void MatchColour_GelsAtHand_AreListedNearestFirst()
    {
        var request = Examples.Colour();
        request.Gels.Add([new() { Name = "plum", ShiftMired = 200, LossStops = 1 }, new() { Name = "sky", ShiftMired = -100, LossStops = 1 }]);
        Assert.Equal(["sky", "plum"], Calls.Exposure.MatchColour(request).Gels.Select(match => match.Gel.Name));
    }

    [Fact]
    public void MatchColour_BeyondEveryColourTemperature_LeavesTheResultOut()
    {
        var answer = Calls.Exposure.MatchColour(new() { FromK = 20000, ToK = 40000 });
        Assert.False(answer.Gels.Single(match => match.Gel.Name == "full blue").HasResultK);
        Assert.True(answer.Gels.Single(match => match.Gel.Name == "eighth blue").HasResultK);
    }
}
