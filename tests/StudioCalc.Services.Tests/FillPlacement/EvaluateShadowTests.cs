using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateShadowTests
{
    private static EvaluateShadowResponse Shadow(EvaluateShadowRequest request) => Calls.FillPlacement.EvaluateShadow(request);

    [Fact]
    public void CameraAndBottle_ShadeTheirOwnLights()
    {
        var answer = Shadow(Examples.Shadow());
        var top = answer.Receivers[0];
        Assert.Equal("bowl, top", top.Name);
        Assert.Equal([2u], top.Sources[1].OccluderIndices);
        Assert.DoesNotContain(2u, top.Sources[0].OccluderIndices);
        Assert.InRange(top.Sources[0].ShadedShare, 0.01, 0.3);
        Assert.Equal(Math.Log2(1 - top.Sources[1].ShadedShare), top.Sources[1].ChangeStops, 1e-9);
        Assert.Equal(Math.Log2(1 - top.ShadedShare), top.ChangeStops, 1e-9);
        Assert.InRange(
            top.ShadedShare,
            Math.Min(top.Sources[0].ShadedShare, top.Sources[1].ShadedShare),
            Math.Max(top.Sources[0].ShadedShare, top.Sources[1].ShadedShare));

        // The front sees no window.
        Assert.Equal((0, 0), (answer.Receivers[1].Sources[1].ShadedShare, answer.Receivers[1].Sources[1].ShadedShareError));
        Assert.False(answer.Receivers[1].Sources[1].HasChangeStops);
        Assert.Equal(answer.Receivers[1].Sources[0].ShadedShare, answer.Receivers[1].ShadedShare, 1e-12);
    }

    [Fact]
    public void SlowerShutter_GivesTheWindowsShadowMoreWeight()
    {
        var request = Examples.Shadow();
        var (window, fast) = (Shadow(request).Receivers[0].Sources[1].ShadedShare, Shadow(request).Receivers[0].ShadedShare);
        request.ShutterSpeed = new() { TimeS = 30 };
        var slow = Shadow(request).Receivers[0].ShadedShare;
        Assert.True(Math.Abs(slow - window) < Math.Abs(fast - window));
    }

    [Fact]
    public void LightsAddUp_AsTheyDoAtReceivers()
    {
        var (request, light) = (Examples.Shadow(), new EvaluateLightRequest());
        light.Sources.Add(request.Sources);
        light.Receivers.Add(request.Receivers);
        light.Settings = new() { Aperture = new() { FNumber = 8 }, ShutterSpeed = request.ShutterSpeed, Iso = new() { Speed = 100 } };
        var shares = Calls.FillPlacement.EvaluateLight(light).Receivers[0].Sources.Select(source => source.LightShare).ToList();
        var shaded = Shadow(request).Receivers[0];
        Assert.Equal(shares[0] * shaded.Sources[0].ShadedShare + shares[1] * shaded.Sources[1].ShadedShare, shaded.ShadedShare, 1e-9);
    }

    [Fact]
    public void MoreCells_BindTheErrorCloser_AndStayWithinTheWiderOne()
    {
        var (coarse, fine) = (Examples.Shadow(), Examples.Shadow());
        (coarse.Cells, fine.Cells) = (6, 48);
        var (rough, close) = (Shadow(coarse).Receivers[0].Sources[0], Shadow(fine).Receivers[0].Sources[0]);
        Assert.True(close.ShadedShareError < rough.ShadedShareError / 4);
        Assert.InRange(Math.Abs(close.ShadedShare - rough.ShadedShare), 0, rough.ShadedShareError + close.ShadedShareError);
    }

    [Fact]
    public void WallBeforeEverything_LeavesTheReceiverDark()
    {
        var request = Examples.Shadow();
        request.Occluders.Clear();
        request.Occluders.Add(new Occluder { Box = new() { Base = new() { XMm = 0, YMm = 0, ZMm = 70 }, WidthMm = 9000, DepthMm = 9000, HeightMm = 5 } });
        var top = Shadow(request).Receivers[0];
        Assert.Equal(1, top.ShadedShare, 2e-3);
        request.Occluders[0].Ball = new() { Centre = new() { XMm = 0, YMm = 0, ZMm = 60 }, DiameterMm = 100 };
        top = Shadow(request).Receivers[0];
        Assert.Equal((1, false), (top.ShadedShare, top.HasChangeStops));
        Assert.All(top.Sources, source => Assert.Equal((1, 0, false), (source.ShadedShare, source.ShadedShareError, source.HasChangeStops)));
    }

    [Fact]
    public void SingleSource_NeedsNoCalibration()
    {
        var request = Examples.Shadow();
        request.Sources.RemoveAt(1);
        request.ShutterSpeed = null;
        var with = Shadow(request).Receivers[0];
        request.Sources[0].Calibration = null;
        Assert.Equal(with.ShadedShare, Shadow(request).Receivers[0].ShadedShare, 1e-12);
    }

    [Fact]
    public void FlashAndDaylightWithoutAShutterSpeed_AndATubeWithoutLength_AreRefused()
    {
        var request = Examples.Shadow();
        request.ShutterSpeed = null;
        request.Occluders[1].Tube.To = request.Occluders[1].Tube.From.Clone();
        Assert.Equal(
            [("occluders[1].tube.to", "CONFLICT"), ("shutter_speed", "REQUIRED")], Calls.Refused(() => Shadow(request)));
    }
}
