using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class MapFallOffTests
{
    public static TheoryData<string, string, Action<MapFallOffRequest>> Bad => new()
    {
        { "up", "OUT_OF_RANGE", request => request.Up = false },
        { "source_index", "OUT_OF_RANGE", request => request.SourceIndex = 1 },
        { "source_index", "CONFLICT", request =>
        {
            request.SourceIndex = 0;
            request.Sources[0].Pose.Position = At(70, -140);
        } },
        { "sources[0].pose.position", "CONFLICT", request =>
        {
            request.Sources[0].HotCentre = null;
            request.Sources[0].Point = new();
            request.Sources[0].Pose.Position = At(0, 140);
        } },
        { "sources[1].calibration", "REQUIRED", request => request.Sources.Add(request.Sources[0].Clone()) },
        { "sources[0].pose.aim_point", "CONFLICT", request => request.Sources[0].Pose.AimPoint = request.Sources[0].Pose.Position.Clone() },
        { "shutter_speed", "REQUIRED", request => AddWindow(request) },
        { "shutter_speed.mark", "UNKNOWN_MARK", request =>
        {
            AddWindow(request);
            request.ShutterSpeed = new() { Mark = "1/61" };
        } },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<MapFallOffRequest> spoil)
    {
        var request = Examples.FallOff();
        spoil(request);
        Assert.Contains((field, reason), Calls.Refused(() => Calls.FillPlacement.MapFallOff(request)));
    }

    [Fact]
    public void Points_AreThoseOfTheLightAtReceivers()
    {
        var request = AddWindow(Examples.FallOff());
        request.ShutterSpeed = new() { Mark = "1/30" };
        request.Kind = ReceiverKind.Dome;
        var map = Calls.FillPlacement.MapFallOff(request);
        var light = new EvaluateLightRequest { Sources = { request.Sources }, Settings = CameraSettings.Of("f/8", "1/30", "100") };
        light.Receivers.Add(Receiver(0, 0));
        light.Receivers.Add(map.Rows.SelectMany(row => map.ColumnsXMm.Select(x => Receiver(x, row.YMm))));
        var received = Calls.FillPlacement.EvaluateLight(light).Receivers;
        Assert.Equal([-140, -70, 0, 70, 140], map.ColumnsXMm);
        Assert.Equal([-140, -70, 0, 70, 140], map.Rows.Select(row => row.YMm));
        var stops = map.Rows.SelectMany(row => row.OverMiddleStops).ToList();
        Assert.Equal(25, stops.Count);
        for (var i = 0; i < stops.Count; i++)
        {
            Assert.Equal(received[i + 1].OverReferenceStops, stops[i], 1e-12);
        }

        Assert.Equal(stops.Max() - stops.Min(), map.SpreadStops, 1e-12);
        Assert.Equal(stops[2] - stops[22], map.FrontToBackStops, 1e-12);
        Assert.Equal(stops[14] - stops[10], map.RightToLeftStops, 1e-12);

        static LightReceiver Receiver(double x, double y) => new() { Place = At(x, y), Up = true, Kind = ReceiverKind.Dome };
    }

    [Fact]
    public void Edges_OfAnEvenGrid_AreComparedInTheirMiddles()
    {
        var request = Examples.FallOff();
        var odd = Calls.FillPlacement.MapFallOff(request);
        (request.Columns, request.Rows) = (2, 4);
        var even = Calls.FillPlacement.MapFallOff(request);
        Assert.Equal(odd.FrontToBackStops, even.FrontToBackStops);
        Assert.Equal(odd.RightToLeftStops, even.RightToLeftStops);
        Assert.Equal([-140, 140], even.ColumnsXMm);
        Assert.Equal(odd.Rows[0].OverMiddleStops[^1], even.Rows[0].OverMiddleStops[^1]);
    }

    [Fact]
    public void BrightestAndDarkest_LieTowardsTheLightAndAwayFromIt()
    {
        var map = Calls.FillPlacement.MapFallOff(Examples.FallOff());
        Assert.Equal((-140, -140), (map.Brightest.XMm, map.Brightest.YMm));
        Assert.Equal((140, 140), (map.Darkest.XMm, map.Darkest.YMm));
        Assert.True(map is { FrontToBackStops: > 0, RightToLeftStops: < 0 });
    }

    [Fact]
    public void Area_HalfBehindTheFace_HasDarkPointsAndNoSpread()
    {
        var request = Examples.FallOff();
        request.Sources[0].Pose = new() { Position = At(0, -30), AimPoint = At(0, 1000) };
        request.Sources[0].Pose.Position.ZMm = request.Sources[0].Pose.AimPoint.ZMm = 600;
        var map = Calls.FillPlacement.MapFallOff(request);
        Assert.Equal([0, 0, 0, 0, 0], map.Rows[0].OverMiddleStops);
        Assert.Equal([0u, 1, 2, 3, 4], map.Rows[0].DarkColumns);
        Assert.Equal(5, map.Rows[2].OverMiddleStops.Count);
        Assert.Empty(map.Rows[2].DarkColumns);
        Assert.False(map.HasSpreadStops);
        Assert.False(map.HasFrontToBackStops);
        Assert.True(map.HasRightToLeftStops);
    }

    [Fact]
    public void Direction_TowardsTheLight_IsBrighterThanUp()
    {
        var request = AddWindow(Examples.FallOff());
        request.Sources.RemoveAt(0);
        request.Direction = new() { ElevationDeg = 0, AzimuthDeg = 180 };
        Assert.Equal(-0.3213125528, Calls.FillPlacement.MapFallOff(request).FrontToBackStops, 1e-6);
        request.Direction.AzimuthDeg = 0;
        Assert.All(Calls.FillPlacement.MapFallOff(request).Rows, row =>
        {
            Assert.Empty(row.OverMiddleStops);
            Assert.Equal(5, row.DarkColumns.Count);
        });
    }

    [Fact]
    public async Task LargeMap_Cancelled_EndsEarly()
    {
        var request = Examples.FallOff();
        (request.Columns, request.Rows) = (200, 200);
        while (request.Sources.Count < 50)
        {
            var disc = request.Sources[0].Clone();
            disc.Disc = new() { DiameterMm = 900 };
            request.Sources.Add(disc);
        }

        foreach (var source in request.Sources)
        {
            source.Calibration = new() { LuminanceCdPerM2 = 1000 };
        }

        using var cancellation = new CancellationTokenSource();
        var call = Task.Run(() => Calls.FillPlacement.MapFallOff(request, cancellationToken: cancellation.Token));
        cancellation.CancelAfter(50);
        var error = await Assert.ThrowsAsync<RpcException>(() => call);
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
    }

    // A window behind the plate, beside the flash.
    private static MapFallOffRequest AddWindow(MapFallOffRequest request)
    {
        request.Sources[0].Calibration = new()
        {
            Reading = new()
            {
                Place = At(0, 0),
                Reading = new() { Flash = new() { Settings = new() { Aperture = new() { Mark = "f/5.6" }, Iso = new() { Mark = "100" } } } },
            },
        };
        request.Sources.Add(new LightSource
        {
            Rectangle = new() { WidthMm = 1200, HeightMm = 1500 },
            Pose = new() { Position = new() { XMm = 0, YMm = 1000, ZMm = 850 }, AimPoint = new() { XMm = 0, YMm = 0, ZMm = 850 } },
            Calibration = new() { LuminanceCdPerM2 = 2000 },
        });
        return request;
    }

    private static Point At(double x, double y) => new() { XMm = x, YMm = y, ZMm = 0 };
}
