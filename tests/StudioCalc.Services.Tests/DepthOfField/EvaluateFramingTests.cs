using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateFramingTests
{
    public static TheoryData<string, string, Action<EvaluateFramingRequest>> Bad => new()
    {
        { "camera.sensor", "REQUIRED", request => request.Camera = new() { Lens = new() { FocalLengthMm = 90 }, Closeness = new() { Magnification = 0.1 } } },
        { "camera.sensor.format", "UNKNOWN_MARK", request => request.Camera.Sensor.Format = "35x24" },
        { "camera.lens.focal_length_mm", "REQUIRED", request => request.Camera.Lens.ClearFocalLengthMm() },
        { "camera.closeness.magnification", "OUT_OF_RANGE", request => request.Camera.Closeness.Magnification = 1e-9 },
        { "camera.lens.principal_separation_mm", "OUT_OF_RANGE", request => request.Camera.Lens = new() { FocalLengthMm = 10, PrincipalSeparationMm = -500 } },
        { "crops[1].name", "REQUIRED", request => request.Crops[1].ClearName() },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<EvaluateFramingRequest> spoil)
    {
        var request = Examples.Framing();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.DepthOfField.EvaluateFraming(request)));
    }

    [Fact]
    public void Infinity_WithDistances_NamesEachOfThem()
    {
        var request = Examples.Framing();
        request.Camera.Closeness.Magnification = 0;
        Assert.Equal(
            [("lens_front_to_sensor_mm", "CONFLICT"), ("far_behind_mm", "CONFLICT"), ("fill_width_mm", "CONFLICT")],
            Calls.Refused(() => Calls.DepthOfField.EvaluateFraming(request)));
    }

    [Fact]
    public void Infinity_WithoutDistances_HasAnglesAndCropsButNoField()
    {
        var request = Examples.Framing();
        request.Camera.Closeness.Magnification = 0;
        request.ClearLensFrontToSensorMm();
        request.ClearFarBehindMm();
        request.ClearFillWidthMm();
        var answer = Calls.DepthOfField.EvaluateFraming(request);
        Assert.False(answer.Focus.HasFieldWidthMm);
        Assert.All(answer.Crops, crop => Assert.True(!crop.HasFieldWidthMm && crop.HasPixelsWide));
        Assert.Equal(45, answer.ExtensionMm, 1e-9);
    }

    [Fact]
    public void Crops_OfALyingFrame_AreCutAsGiven()
    {
        var answer = Calls.DepthOfField.EvaluateFraming(Examples.Framing());
        var (page, banner, tile) = (answer.Crops[0], answer.Crops[1], answer.Crops[2]);

        // 24 mm of 36 x 24 give 19.2 mm upright at 4:5, of 8256 pixels over 36 mm: 4403.2 and 5504.
        Assert.Equal((4403u, 5504u, true), (page.PixelsWide, page.PixelsHigh, page.OneFrameIsEnough));
        Assert.Equal(19.2 * 24 / (36 * 24), page.KeptShare, 1e-12);
        Assert.Equal(4403 / 210.0, page.PrintPixelsPerMm, 1e-12);
        Assert.Equal(380 * 19.2 / 36, page.FieldWidthMm, 1e-9);
        Assert.Equal((8256u, 3538u), (banner.PixelsWide, banner.PixelsHigh));
        Assert.Equal((5504u, 5504u), (tile.PixelsWide, tile.PixelsHigh));
        Assert.False(tile.HasPrintPixelsPerMm);
    }

    [Fact]
    public void Crops_OfAnUprightCamera_KeepMoreOfTheFrame()
    {
        var request = Examples.Framing();
        var lying = Calls.DepthOfField.EvaluateFraming(request);
        request.Camera.Sensor.Upright = true;
        request.Crops[0].PixelsWide = 5505;
        var upright = Calls.DepthOfField.EvaluateFraming(request);
        Assert.True(upright.HorizontalAngleDeg < upright.VerticalAngleDeg);
        Assert.Equal(lying.DiagonalAngleDeg, 2 * 180 / Math.PI * Math.Atan(Math.Tan(upright.DiagonalAngleDeg * Math.PI / 360)
            * (1 + upright.Focus.Magnification / 0.9) / (1 + lying.Focus.Magnification / 0.9)), 1e-9);
        Assert.Equal((5504u, 6880u, false), (upright.Crops[0].PixelsWide, upright.Crops[0].PixelsHigh, upright.Crops[0].OneFrameIsEnough));
        Assert.Equal(24 * 30 / (36.0 * 24), upright.Crops[0].KeptShare, 1e-12);
    }

    [Fact]
    public void Crops_WithoutPixelsOfTheSensor_HaveNone()
    {
        var request = Examples.Framing();
        request.Camera.Sensor.ClearLongSidePixels();
        Assert.All(Calls.DepthOfField.EvaluateFraming(request).Crops, crop =>
            Assert.True(!crop.HasPixelsWide && !crop.HasPixelsHigh && !crop.HasPrintPixelsPerMm && !crop.HasOneFrameIsEnough));
    }

    [Fact]
    public void FillingFocalLength_SentBackWithItsWidth_FillsTheFrame()
    {
        var request = Examples.Framing();
        var answer = Calls.DepthOfField.EvaluateFraming(request);
        request.Camera.Lens.FocalLengthMm = answer.FillingFocalLengthMm;
        request.Camera.Closeness = new() { SensorDistanceMm = answer.Focus.FromSensorMm };
        Assert.Equal(300, Calls.DepthOfField.EvaluateFraming(request).Focus.FieldWidthMm, 1e-6);
    }

    [Fact]
    public void Formats_AllListed_ServeAsSensors()
    {
        var list = Calls.DepthOfField.ListSensorFormats(new());
        Assert.Equal(Maths.SensorFormats.All.Count, list.Formats.Count);
        Assert.All(list.Formats, format =>
        {
            var request = Examples.Framing();
            request.Camera.Sensor = new() { Format = format.Format };
            Assert.Equal(format.HeightMm / format.WidthMm * 380, Calls.DepthOfField.EvaluateFraming(request).Focus.FieldHeightMm, 1e-9);
            Assert.Equal(SourceKind.Memory, format.SourceKind);
            Assert.NotEmpty(format.Source);
        });
        Assert.Equal(list.Formats.OrderByDescending(format => format.DiagonalMm), list.Formats);
    }
}
