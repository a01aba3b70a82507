using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateWindowTests
{
    [Fact]
    public void MovingThePlate_FromOneMetreToTwo_LosesOneStopNotTwo()
    {
        var answer = Calls.FillPlacement.EvaluateWindow(Examples.Window());
        Assert.Equal(["table at the window", "table pulled back", "noodles, top, at the window"], answer.Places.Select(place => place.Name));
        Assert.Equal(0, answer.Places[0].ChangeStops);
        Assert.Equal(-1.094273, answer.Places[1].ChangeStops, 5e-7);
        Assert.Equal(-2, answer.Places[1].InverseSquareChangeStops, 1e-12);
        Assert.Equal(answer.Places[0].ExposureValueIso100Stops + answer.Places[1].ChangeStops, answer.Places[1].ExposureValueIso100Stops, 1e-12);
    }

    [Fact]
    public void Reading_IsFoundAgainAtTheFirstPlace()
    {
        var answer = Calls.FillPlacement.EvaluateWindow(Examples.Window());
        Assert.Equal(11, answer.Places[0].ExposureValueIso100Stops, 1e-12); // f/8 at 1/64 s and ISO 200.
        Assert.Equal(250 * 2048 / 100.0, answer.Places[0].IlluminanceLx, 1e-9);
    }

    [Fact]
    public void Reading_ByDome_IsTakenWithADomeAtTheFirstPlace()
    {
        var request = Examples.Window();
        request.Reading.Continuous = new() { IlluminanceLx = 5000, Receptor = Receptor.Dome };
        request.Places.Add(new WindowPlace { DistanceMm = 1000, Window = true, Kind = ReceiverKind.Dome });
        var places = Calls.FillPlacement.EvaluateWindow(request).Places;
        Assert.Equal(5000, places[3].IlluminanceLx, 1e-9);
        Assert.Equal(Math.Log2(100 * 5000 / 330.0), places[3].ExposureValueIso100Stops, 1e-12);
        Assert.NotEqual(5000, places[0].IlluminanceLx, 1.0);
        Assert.Equal(Math.Log2(100 * places[0].IlluminanceLx / 250), places[0].ExposureValueIso100Stops, 1e-12);
    }

    [Fact]
    public void Direction_TowardsTheWindowAndUp_AreTheOnesWithNames()
    {
        var request = Examples.Window();
        request.Places.Clear();
        request.Places.Add(Facing(0, 0));
        request.Places.Add(new WindowPlace { DistanceMm = 900, RightMm = 300, Window = true });
        request.Places.Add(Facing(90, 123));
        request.Places.Add(new WindowPlace { DistanceMm = 900, RightMm = 300, Up = true });
        request.Places.Add(Facing(0, -90));
        request.Places.Add(Facing(0, 90));
        var places = Calls.FillPlacement.EvaluateWindow(request).Places;
        Assert.Equal(places[0].OutdoorShare, places[1].OutdoorShare, 1e-12);
        Assert.Equal(places[2].OutdoorShare, places[3].OutdoorShare, 1e-12);
        Assert.True(places[4].OutdoorShare > places[5].OutdoorShare); // Right of the middle more of the window lies to the left.

        static WindowPlace Facing(double elevation, double azimuth) => new()
        {
            DistanceMm = 900,
            RightMm = 300,
            Direction = new() { ElevationDeg = elevation, AzimuthDeg = azimuth },
        };
    }

    [Fact]
    public void RaisingThePlate_IsLoweringTheWindow()
    {
        var (request, lower) = (Examples.Window(), Examples.Window());
        request.Places[0].HeightMm = 60;
        lower.Window.SillHeightMm -= 60;
        Assert.Equal(
            Calls.FillPlacement.EvaluateWindow(lower).Places[0].OutdoorShare, Calls.FillPlacement.EvaluateWindow(request).Places[0].OutdoorShare, 1e-12);
    }

    [Fact]
    public void PlaceThatFacesAway_IsDarkAndHasNoChange()
    {
        var request = Examples.Window();
        request.Places[1] = new() { DistanceMm = 1000, Direction = new() { ElevationDeg = 0, AzimuthDeg = 180 } };
        var dark = Calls.FillPlacement.EvaluateWindow(request).Places[1];
        Assert.Equal((0, 0), (dark.OutdoorShare, dark.IlluminanceLx));
        Assert.False(dark.HasChangeStops || dark.HasExposureValueIso100Stops);
    }

    [Fact]
    public void Diffusion_HasNoShareOutdoors_AndNoGlassOrSkyline()
    {
        var request = Examples.Window();
        request.Sky = SkyKind.Diffusion;
        var place = Calls.FillPlacement.EvaluateWindow(request).Places[1];
        Assert.False(place.HasOutdoorShare);
        Assert.Equal(-1.094273, place.ChangeStops, 5e-7);

        (request.Window.Glass, request.Window.Transmittance, request.Window.SkylineDeg, request.Window.SkylineLuminanceShare) = (GlassKind.None, 1, 0, 0);
        Assert.Equal(
            [("window.transmittance", "CONFLICT"), ("window.glass", "CONFLICT"), ("window.transmittance", "CONFLICT"),
                ("window.skyline_deg", "CONFLICT"), ("window.skyline_luminance_share", "CONFLICT")],
            Calls.Refused(() => Calls.FillPlacement.EvaluateWindow(request)));
    }

    [Theory]
    [InlineData("""{"flash":{"settings":{"aperture":{"mark":"f/8"},"iso":{"mark":"100"}}}}""", "reading.flash")]
    [InlineData("""{"continuous":{"luminanceCdPerM2":100}}""", "reading.continuous.luminance_cd_per_m2")]
    [InlineData("""{"continuous":{"exposureValueIso100Stops":9,"receptor":"RECEPTOR_REFLECTED"}}""", "reading.continuous.receptor")]
    public void Reading_OfFlashOrOfReflectedLight_IsRefused(string reading, string field)
    {
        var request = Examples.Window();
        request.Reading = Calls.Parse<Reading>(reading);
        Assert.Equal([(field, "CONFLICT")], Calls.Refused(() => Calls.FillPlacement.EvaluateWindow(request)));
    }

    [Fact]
    public void ReadingAtADarkPlace_GlassTwice_AndFalseFacing_AreRefused()
    {
        var request = Examples.Window();
        request.Places[0] = new() { DistanceMm = 1000, Direction = new() { ElevationDeg = 0, AzimuthDeg = 180 } };
        Assert.Equal([("reading", "CONFLICT")], Calls.Refused(() => Calls.FillPlacement.EvaluateWindow(request)));

        (request.Window.Glass, request.Window.Transmittance) = (GlassKind.SingleClear, 0.8);
        (request.Places[1].Window, request.Places[2].Up) = (false, false);
        request.Reading = null;
        Assert.Equal(
            [("window.transmittance", "CONFLICT"), ("places[1].window", "OUT_OF_RANGE"), ("places[2].up", "OUT_OF_RANGE")],
            Calls.Refused(() => Calls.FillPlacement.EvaluateWindow(request)));
    }
}
