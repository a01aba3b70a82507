using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class ListEquivalentSettingsTests
{
    [Fact]
    public void Example_StaysWithinSyncSpeedMotionAndIso()
    {
        var answer = Calls.Exposure.ListEquivalentSettings(Examples.Equivalents());
        Assert.NotEmpty(answer.Settings);
        Assert.Equal("1/100", answer.SlowestShutterSpeed.Mark);
        Assert.All(answer.Settings, one =>
        {
            Assert.InRange(one.ShutterSpeed.TimeS, Math.Pow(2, -23 / 3.0) - 1e-12, 0.012);
            Assert.InRange(one.Iso.Speed, 100 - 1e-9, 400 + 1e-9);
            Assert.InRange(Math.Abs(one.RestStops), 0, 1e-9);
        });
        Assert.Equal(answer.Settings.OrderBy(one => one.Iso.Speed).ThenBy(one => one.Aperture.FNumber), answer.Settings);
    }

    [Fact]
    public void WithoutMotionAndSlowestSpeed_NoSlowestMarkIsTold()
    {
        var request = Examples.Equivalents();
        request.Motion = null;
        Assert.Null(Calls.Exposure.ListEquivalentSettings(request).SlowestShutterSpeed);
    }

    [Fact]
    public void MotionFasterThanEveryMark_LeavesAnEmptyList()
    {
        var request = Examples.Equivalents();
        request.Motion.SpeedMPerS = 100;
        request.Motion.Magnification = 20;
        var answer = Calls.Exposure.ListEquivalentSettings(request);
        Assert.Empty(answer.Settings);
        Assert.Null(answer.SlowestShutterSpeed);
    }

    [Fact]
    public void MotionStraightAtTheCamera_LimitsNothing()
    {
        var request = Examples.Equivalents();
        request.Motion.AngleDeg = 90;
        var still = Examples.Equivalents();
        still.Motion = null;
        Assert.Equal(Calls.Exposure.ListEquivalentSettings(still), Calls.Exposure.ListEquivalentSettings(request));
    }

    [Fact]
    public void LongList_IsCutAtItsEndAndSaysByHowMuch()
    {
        var request = Examples.Equivalents();
        request.Motion = null;
        request.WithFlash = false;
        request.Camera.Scale = StopScale.Tenth;
        request.Camera.HighestIso = new() { Mark = "800" };
        var answer = Calls.Exposure.ListEquivalentSettings(request);
        Assert.Equal(500, answer.Settings.Count);
        Assert.Equal((61 * 10) - 500u, answer.LeftOutCount);
    }

    [Fact]
    public void LimitsThatAreNeeded_AreAskedForByPath() => Assert.Equal(
        [("camera.sync_speed", "REQUIRED"), ("camera.lowest_iso", "REQUIRED"), ("camera.highest_iso", "REQUIRED")],
        Calls.Refused(() =>
        {
            var request = Examples.Equivalents();
            request.Camera = null;
            Calls.Exposure.ListEquivalentSettings(request);
        }));
}
