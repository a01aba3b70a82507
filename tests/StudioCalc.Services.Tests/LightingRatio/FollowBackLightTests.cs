using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>A window that fades over three quarters of an hour.</summary>
public sealed class FollowBackLightTests
{
    [Fact]
    public void Example_ShutterSpeedMakesGoodWhatTheWindowLost()
    {
        var answer = Calls.LightingRatio.FollowBackLight(Examples.Follow());
        Assert.Equal(-0.7, answer.ChangeStops, 1e-9);
        Assert.Equal("1/80", answer.Solution.ShutterSpeed.Mark);
        Assert.Equal(2 / 3.0 - 0.7, answer.Solution.RestStops, 1e-9);
        Assert.Equal(-0.96, answer.DriftPerHourStops, 1e-9);
        Assert.Equal(new Duration(), answer.ToleranceLeft);
    }

    [Fact]
    public void ToleranceLeft_BeforeItIsUsedUp_FollowsTheDrift()
    {
        var request = Examples.Follow();
        request.ToleranceStops = 1;
        var answer = Calls.LightingRatio.FollowBackLight(request);
        Assert.Equal((1 - 0.7) / -answer.DriftPerHourStops * 3600, answer.ToleranceLeft.ToTimeSpan().TotalSeconds, 1e-3);
    }

    [Fact]
    public void ToleranceLeft_LightThatStands_IsUnset()
    {
        var request = Examples.Follow();
        foreach (var reading in request.Readings)
        {
            reading.Reading = new() { IlluminanceLx = 20_000 };
        }

        var answer = Calls.LightingRatio.FollowBackLight(request);
        Assert.Null(answer.ToleranceLeft);
        Assert.Equal((0.0, 0.0, "1/125"), (answer.ChangeStops, answer.DriftPerHourStops, answer.Solution.ShutterSpeed.Mark));
    }

    [Fact]
    public void WindowTooBright_SyncSpeedStandsInTheWay()
    {
        var request = Examples.Follow();
        request.Readings[^1].Reading.Settings.Aperture = new() { Mark = "f/16" };
        var way = Calls.LightingRatio.FollowBackLight(request).NotReached;
        Assert.Equal((BalanceObstacle.SyncSpeed, "1/200"), (way.Obstacle, way.Nearest.ShutterSpeed.Mark));
        Assert.Equal(4 / 3.0, way.ShortfallStops, 1e-9);
        Assert.Equal(4 / 3.0, way.Nearest.RestStops, 1e-9);
        Assert.Equal([BalanceRemedyKind.DimBackLight, BalanceRemedyKind.RaiseFlashPower], way.Remedies.Select(remedy => remedy.Kind));
        Assert.All(way.Remedies, remedy => Assert.Equal((0.0, "1/200"), (Math.Round(remedy.Solution.RestStops, 9), remedy.Solution.ShutterSpeed.Mark)));
    }

    [Fact]
    public void WindowTooDark_SlowestShutterSpeedStandsInTheWay()
    {
        var request = Examples.Follow();
        request.Readings[^1].Reading.Settings.Aperture = new() { Mark = "f/2.8" };
        var way = Calls.LightingRatio.FollowBackLight(request).NotReached;
        Assert.Equal((BalanceObstacle.SlowestShutterSpeed, "1/30"), (way.Obstacle, way.Nearest.ShutterSpeed.Mark));
        Assert.Equal(1, way.ShortfallStops, 1e-9);
        Assert.Equal([BalanceRemedyKind.BrightenBackLight, BalanceRemedyKind.LowerFlashPower], way.Remedies.Select(remedy => remedy.Kind));
    }

    [Fact]
    public void Times_NotRising_AreRefusedByTheirPlace()
    {
        var request = Examples.Follow();
        request.Readings[2].Offset = request.Readings[1].Offset.Clone();
        request.Readings[3].Reading = new() { IlluminanceLx = 5000, Receptor = Receptor.Reflected };
        Assert.Equal(
            [("readings[2].offset", "CONFLICT"), ("readings[3].reading.receptor", "CONFLICT")],
            Calls.Refused(() => Calls.LightingRatio.FollowBackLight(request)));
    }

    [Fact]
    public void Time_OfASecondInNanoseconds_IsRefused()
    {
        var request = Examples.Follow();
        request.Readings[1].Offset = new() { Seconds = 899, Nanos = 1_000_000_000 };
        Assert.Equal([("readings[1].offset", "OUT_OF_RANGE")], Calls.Refused(() => Calls.LightingRatio.FollowBackLight(request)));
    }

    [Fact]
    public void SyncSpeed_NotGiven_IsRequired()
    {
        var request = Examples.Follow();
        request.Camera.SyncSpeed = null;
        Assert.Equal([("camera.sync_speed", "REQUIRED")], Calls.Refused(() => Calls.LightingRatio.FollowBackLight(request)));
    }
}
