using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateBounceTests
{
    private static EvaluateBounceResponse Bounce(EvaluateBounceRequest request) => Calls.FillPlacement.EvaluateBounce(request);

    [Fact]
    public void CardOppositeTheWindow_FillsSomeStopsUnderIt()
    {
        var answer = Bounce(Examples.Bounce());
        Assert.Equal(-2.314701, answer.BouncedOverDirectStops, 1e-4);

        // The front sees no window: all its light is the card's, and there is none without it.
        Assert.False(answer.HasChangeStops);
        Assert.Equal(5120 * Math.Pow(2, answer.BouncedOverDirectStops), answer.IlluminanceLx, 1e-6);
        Assert.True(answer.FarEstimateOverstatesStops > 0.05);
        Assert.True(answer.Best.GainStops > 0);
    }

    [Fact]
    public void BestTurn_SentBack_GivesTheGainAndNoFurtherOne()
    {
        var request = Examples.Bounce();
        var first = Bounce(request);
        request.Surface.Pose.AimPoint = new() { XMm = first.Best.AimPoint.XMm, YMm = first.Best.AimPoint.YMm, ZMm = first.Best.AimPoint.ZMm };
        var second = Bounce(request);
        Assert.Equal(first.Best.GainStops, second.BouncedOverDirectStops - first.BouncedOverDirectStops, 1e-9);
        Assert.InRange(second.Best.GainStops, 0, 1e-3);
        Assert.Equal(first.Best.ElevationDeg, second.Best.ElevationDeg, 3);
    }

    [Fact]
    public void BlackCard_BeforeAWhiteWall_TakesLight()
    {
        var request = Examples.Bounce();
        request.Receiver.Up = true;
        (request.Surface.Surface, request.Surface.CoveredReflectance) = (SurfaceKind.BlackCard, 0.8);
        var black = Bounce(request);
        Assert.True(black.ChangeStops < 0);
        (request.Surface.Surface, request.Surface.CoveredReflectance) = (SurfaceKind.WhitePaint, 0.8);
        Assert.Equal(0, Bounce(request).ChangeStops, 1e-12);
        request.Surface.ClearCoveredReflectance();
        var white = Bounce(request);
        Assert.True(white.ChangeStops > 0);
        Assert.Equal(Math.Log2(0.8 / 0.045), white.BouncedOverDirectStops - black.BouncedOverDirectStops, 1e-9);
    }

    [Fact]
    public void DirectLightBlocked_LeavesTheBounceAlone()
    {
        var request = Examples.Bounce();
        request.Receiver.Up = true;
        Assert.True(Bounce(request).HasChangeStops);
        request.DirectLightBlocked = true;
        Assert.False(Bounce(request).HasChangeStops);
        Assert.True(Bounce(request).HasBouncedOverDirectStops);
        request.Surface.CoveredReflectance = 0.425;
        Assert.Equal(1, Bounce(request).ChangeStops, 1e-12);
    }

    [Fact]
    public void CardThatFacesAway_GivesNothing_AndIsToldHowToTurn()
    {
        var request = Examples.Bounce();
        request.Surface.Pose.AimPoint.YMm = -1000;
        var answer = Bounce(request);
        Assert.False(answer.HasBouncedOverDirectStops || answer.HasFarEstimateOverstatesStops);
        Assert.Equal((0, 0), (answer.IlluminanceLx, answer.ConfigurationFactor));
        Assert.False(answer.Best.HasGainStops);
        request.Surface.Pose.AimPoint = new() { XMm = answer.Best.AimPoint.XMm, YMm = answer.Best.AimPoint.YMm, ZMm = answer.Best.AimPoint.ZMm };
        Assert.True(Bounce(request).IlluminanceLx > 0);

        // However it is turned there, all of it lies behind the receiver.
        request.Surface.Pose.Position.YMm = -400;
        request.Receiver.AimPoint.YMm = 1000;
        Assert.Null(Bounce(request).Best);
    }

    [Fact]
    public void Mirror_GivesMoreThanACard_WhereTheSourceIsSeenInIt()
    {
        var request = Examples.Bounce();
        var card = Bounce(request);
        request.Surface.Surface = SurfaceKind.Mirror;
        var mirror = Bounce(request);
        Assert.True(mirror.IlluminanceLx > card.IlluminanceLx);
        Assert.Equal((0u, false), (mirror.Patches, mirror.HasFarEstimateOverstatesStops));
        Assert.True(card.Patches >= 16);

        // No part of the source is brighter in a mirror than it is: the light stays under luminance times the mirror's view.
        request.Sources[0].Calibration = new() { LuminanceCdPerM2 = 1000 };
        request.Surface.Reflectance = 1;
        mirror = Bounce(request);
        Assert.InRange(mirror.IlluminanceLx, 0, 1000 * Math.PI * mirror.ConfigurationFactor * (1 + 1e-12));
    }

    [Fact]
    public void TwoSources_AddTheirBounce()
    {
        var request = Examples.Bounce();
        var one = Bounce(request).IlluminanceLx;
        request.Sources.Add(request.Sources[0].Clone());
        var two = Bounce(request);
        Assert.Equal(2 * one, two.IlluminanceLx, 1e-4 * one); // Two share the patches of one.
        Assert.False(two.HasFarEstimateOverstatesStops);
    }

    [Fact]
    public void DirectReceiver_Unset_FacesTheFirstSource()
    {
        var (request, told) = (Examples.Bounce(), Examples.Bounce());
        request.DirectReceiver = null;
        told.DirectReceiver.SourceIndex = 0;
        Assert.Equal(Bounce(told).BouncedOverDirectStops, Bounce(request).BouncedOverDirectStops);
    }

    [Fact]
    public void FlashBesideDaylight_AndPointsOnTheSurface_AreRefused()
    {
        var request = Examples.Bounce();
        request.Sources.Add(request.Sources[0].Clone());
        request.Sources[1].Calibration.Reading.Reading.Flash = Calls.Parse<FlashReading>("""{"exposureLxS":100}""");
        Assert.Equal([("sources[1].calibration", "CONFLICT")], Calls.Refused(() => Bounce(request)));

        request.Sources.RemoveAt(1);
        request.Sources[0] = Calls.Parse<LightSource>(
            """{"point":{},"pose":{"position":{"xMm":10,"yMm":-300,"zMm":200},"aimPoint":{"xMm":0,"yMm":0,"zMm":0}}}""");
        Assert.Equal([("sources[0].pose.position", "CONFLICT")], Calls.Refused(() => Bounce(request)));

        request.Sources[0] = Calls.Parse<LightSource>(
            """{"disc":{"diameterMm":100},"pose":{"position":{"xMm":0,"yMm":0,"zMm":0},"aimPoint":{"xMm":0,"yMm":-300,"zMm":0}}}""");
        request.DirectReceiver = null;
        Assert.Equal([("direct_receiver", "REQUIRED")], Calls.Refused(() => Bounce(request)));
    }
}
