using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateViewTests
{
    [Fact]
    public void ServedBowl_TellsWhatHidesWhat()
    {
        var answer = Calls.PlateView.EvaluateView(Examples.View());
        Assert.Equal("lamb slices", answer.Main.Name);
        Assert.True(answer.Main is { IsNearest: true, IsLargest: true, IsUnhidden: false });
        Assert.Equal(["noodle nest", "egg half", "lamb slices", "noodle bowl"], answer.Components[4].HiddenBy.Select(hiding => hiding.Name));
        Assert.Equal(1, answer.Components[4].VisibleShare + answer.Components[4].HiddenBy.Sum(hiding => hiding.Share), 1e-9);
        Assert.Equal([1u, 3u, 4u, 2u, 5u], answer.Components.Select(component => component.DepthOrder));
        Assert.True(answer.Vessels[0].CentreElevationDeg < answer.Vessels[0].HalfElevationDeg);
        Assert.True(answer.Vessels[0].HalfElevationDeg < answer.Vessels[0].WholeElevationDeg);
        Assert.True(answer.Vessels[0].ContentVisibleShare < answer.Vessels[0].ContentAloneShare);
    }

    // The field is the sensor over the magnification, and the entrance pupil stands f (1/m + 1/p) away: 90 (1 / 0.12 + 1) = 840.
    [Fact]
    public void FieldWidth_PlacesTheCamera()
    {
        var camera = Calls.PlateView.EvaluateView(Examples.View()).Camera;
        Assert.Equal(840, camera.DistanceMm, 1e-9);
        Assert.Equal(60 + 840 * Math.Sin(35 * Math.PI / 180), camera.EntrancePupil.ZMm, 1e-9);
        Assert.Equal(200, camera.FieldHeightMm, 1e-9);
    }

    [Fact]
    public void Distance_AndFieldWidth_AreTheSameCamera()
    {
        var request = Examples.View();
        request.IncludeWorking = false;
        var byField = Calls.PlateView.EvaluateView(request);
        request.Camera.DistanceMm = 840;
        var byDistance = Calls.PlateView.EvaluateView(request);
        Assert.Equal(byField.Camera.Magnification, byDistance.Camera.Magnification, 1e-12);
        Assert.Equal(byField.Components[1].VisibleShare, byDistance.Components[1].VisibleShare, 1e-3);
    }

    [Fact]
    public void ElevationFromTheVertical_IsConverted()
    {
        var request = Examples.View();
        request.Camera.ElevationOrigin = ElevationOrigin.Vertical;
        request.Camera.Direction.ElevationDeg = 55;
        var answer = Calls.PlateView.EvaluateView(request);
        Assert.Equal(35, answer.Camera.ElevationDeg, 1e-12);
        Assert.Equal(Calls.PlateView.EvaluateView(Examples.View()).Components[2].VisibleShare, answer.Components[2].VisibleShare);
    }

    // A far camera level with the table: the front box hides the lower 60 mm of the one behind, which is 80 mm high and as wide.
    [Fact]
    public void FarCameraLevel_FrontBoxHidesItsHeight()
    {
        var answer = Calls.PlateView.EvaluateView(TwoBoxes(elevationDeg: 0));
        Assert.Equal(0.25, answer.Components[1].VisibleShare, 0.01);
        Assert.Equal(50 * 60 / (400 * 400 * 2.0 / 3), answer.Components[0].FrameShare, 0.001);
        Assert.False(answer.Camera.HasDistanceMm);
        Assert.Null(answer.Camera.EntrancePupil);
    }

    // Of the 80 mm front face 80 - (60 - 50 tan 30°) shows, 48.87 mm, and the top is all there: (48.87 cos 30° + 20 sin 30°) over
    // (80 cos 30° + 20 sin 30°).
    [Fact]
    public void FarCameraAt30_ShowsWhatTheSightLineLeaves()
    {
        var answer = Calls.PlateView.EvaluateView(TwoBoxes(elevationDeg: 30));
        var (sin, cos) = Math.SinCos(Math.PI / 6);
        var front = 80 - (60 - 50 * Math.Tan(Math.PI / 6));
        Assert.Equal((front * cos + 20 * sin) / (80 * cos + 20 * sin), answer.Components[1].VisibleShare, 0.01);
        Assert.Equal(1, answer.Components[1].TopVisibleShare);
    }

    [Fact]
    public void MainComponent_NotSaid_IsTheMostImportant()
    {
        var request = Examples.View();
        request.Scene.Components[0].ClearIsMain();
        request.Scene.Components[0].Importance = 0.2;
        Assert.Equal("noodle nest", Calls.PlateView.EvaluateView(request).Main.Name);
    }

    public static TheoryData<Action<EvaluateViewRequest>, string, string> Refusals => new()
    {
        { request => request.Scene.Components[1].Name = "noodle bowl", "scene.vessels[0].name", "CONFLICT" },
        { request => request.Scene.Components[2].IsMain = true, "scene.components[2].is_main", "CONFLICT" },
        { request => request.Scene.Components[0].TopShare = 0.5, "scene.components[0].top_share", "CONFLICT" },
        { request => request.Scene.Vessels[0].FloorHeightMm = 75, "scene.vessels[0].floor_height_mm", "CONFLICT" },
        { request => request.Scene.Vessels[0].ContentHeightMm = 80, "scene.vessels[0].content_height_mm", "CONFLICT" },
        { request => request.Camera.Lens = null, "camera.lens", "REQUIRED" },
        { request => request.Camera.Lens.ClearFocalLengthMm(), "camera.lens.focal_length_mm", "REQUIRED" },
        { request => request.Camera.FarFieldWidthMm = 300, "camera.lens", "CONFLICT" },
        { request => request.Camera.DistanceMm = 90, "camera.distance_mm", "OUT_OF_RANGE" },
        { request => request.Camera.FieldWidthMm = 1.5, "camera.field_width_mm", "OUT_OF_RANGE" },
        { request => request.Camera.Sensor.Format = "35x25", "camera.sensor.format", "UNKNOWN_MARK" },
        { request => request.Scene.Components[0].Base.YMm = -1000, "scene.components[0].base", "OUT_OF_RANGE" },
        { request => request.Scene.Vessels[1].Base.YMm = -1100, "scene.vessels[1].base", "OUT_OF_RANGE" },
    };

    [Theory, MemberData(nameof(Refusals))]
    public void BadField_IsRefusedByItsPath(Action<EvaluateViewRequest> change, string field, string reason)
    {
        var request = Examples.View();
        change(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.PlateView.EvaluateView(request)));
    }

    private static EvaluateViewRequest TwoBoxes(double elevationDeg) => new()
    {
        Scene = new() { Components = { Box("front", 0, 60), Box("back", 70, 80) } },
        Camera = new()
        {
            Direction = new() { ElevationDeg = elevationDeg, AimPoint = new() { XMm = 0, YMm = 0, ZMm = 40 } },
            FarFieldWidthMm = 400,
            Sensor = new() { Format = "36x24" },
        },
        SightLines = 400,
    };

    // 50 mm wide, 20 mm deep.
    private static ViewComponent Box(string name, double y, double height) => new()
    {
        Name = name,
        Base = new() { XMm = 0, YMm = y, ZMm = 0 },
        Kind = SolidKind.Box,
        WidthMm = 50,
        DepthMm = 20,
        HeightMm = height,
    };
}
