using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class SimulateCoolingTests
{
    [Fact]
    public void ItemWithoutATemperature_IsRefused()
    {
        var request = Examples.Cooling();
        (request.Item, request.EndsAt) = (new() { ProfileId = "souffle" }, null);
        Assert.Equal([("item", "CONFLICT")], Calls.Refused(() => Calls.Freshness.SimulateCooling(request)));
    }

    [Fact]
    public void SeriesAndLayers_GiveTheSameCourse()
    {
        var request = Examples.Cooling();
        request.EndsAt = null;
        request.Item = new()
        {
            Piece = new()
            {
                Shape = PieceShape.Cylinder,
                SizeMm = 30,
                StartCelsius = 70,
                Properties = new() { Given = new() { ConductivityWPerMK = 0.5, DensityKgPerM3 = 1050, SpecificHeatJPerKgK = 3500 } },
            },
        };

        // Radiation is worth some 5.8 W/(m² K) here, next to nothing against such convection.
        request.Air = new() { TemperatureCelsius = 22, RelativeHumidity = 0.5, TotalWPerM2K = 400 };
        var series = Calls.Freshness.SimulateCooling(request);
        request.Air.ClearTotalWPerM2K();
        request.Air.ConvectionWPerM2K = 394.2;
        var layers = Calls.Freshness.SimulateCooling(request);
        Assert.Equal((HoldingModel.SolidSeries, HoldingModel.SolidNumeric), (series.Model, layers.Model));
        foreach (var (one, other) in series.Samples.Zip(layers.Samples).Skip(1))
        {
            Assert.Equal(one.SurfaceCelsius, other.SurfaceCelsius, 0.05);
            Assert.Equal(one.MeanCelsius, other.MeanCelsius, 0.05);
        }
    }

    [Fact]
    public void Events_AreInOrder_AndOnTheCurve()
    {
        var request = Examples.Cooling();
        request.Duration = new() { Seconds = 3000 };
        var events = Calls.Freshness.SimulateCooling(request).Events;
        Assert.Equal([CoolingEventKind.SetPoint, CoolingEventKind.SteamStops], events.Select(one => one.Kind));
        foreach (var one in events)
        {
            request.Duration = one.At;
            Assert.Equal(one.SurfaceCelsius, Calls.Freshness.SimulateCooling(request).Samples[^1].SurfaceCelsius, 0.01);
        }
    }

    [Fact]
    public void IceCream_LosesItsGloss_ThenMelts()
    {
        var request = Examples.Cooling();
        (request.Item, request.EndsAt) = (new() { IceCream = new() { DiameterMm = 50, StartCelsius = -14 } }, null);
        request.Duration = new() { Seconds = 900 };
        var answer = Calls.Freshness.SimulateCooling(request);
        Assert.Equal([CoolingEventKind.GlossLost, CoolingEventKind.Melting], answer.Events.Select(one => one.Kind));
        Assert.All(answer.Samples.Zip(answer.Samples.Skip(1)), pair => Assert.True(pair.Second.MeanCelsius > pair.First.MeanCelsius));
    }
}
