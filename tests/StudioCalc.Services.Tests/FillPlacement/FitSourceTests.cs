using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class FitSourceTests
{
    public static TheoryData<string, string, Action<FitSourceRequest>> Bad => new()
    {
        { "readings", "CONFLICT", request =>
        {
            foreach (var reading in request.Readings)
            {
                reading.DistanceMm = 700;
            }
        } },
        { "readings[1].reading", "CONFLICT", request => request.Readings[1].Reading = new() { Continuous = new() { IlluminanceLx = 500 } } },
        { "readings[2].reading.flash.receptor", "CONFLICT", request => request.Readings[2].Reading.Flash.Receptor = Receptor.Reflected },
        { "readings[0].reading.flash.includes_ambient", "CONFLICT", request => request.Readings[0].Reading.Flash.IncludesAmbient = true },
        { "readings[0].reading.flash.settings.aperture.mark", "UNKNOWN_MARK", request =>
            request.Readings[0].Reading.Flash.Settings.Aperture.Mark = "f/9" },
        { "predict_distances_mm[2]", "OUT_OF_RANGE", request => request.PredictDistancesMm.Add(9) },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<FitSourceRequest> spoil)
    {
        var request = Examples.Fit();
        spoil(request);
        Assert.Contains((field, reason), Calls.Refused(() => Calls.FillPlacement.FitSource(request)));
    }

    [Fact]
    public void ReadingsBeforeASoftbox_FitTheSoftFaceBest()
    {
        var fits = Calls.FillPlacement.FitSource(Examples.Fit()).Fits;
        Assert.Equal([FallOffModel.SoftFace, FallOffModel.Beam, FallOffModel.Point], fits.Select(fit => fit.Model));
        Assert.Equal(462, fits[0].RadiusMm, 15.0);
        Assert.True(fits[0].ResidualStops < 0.05 && fits[2].ResidualStops > 0.2);
        Assert.Equal([600, 1000], fits[0].Predicted.Select(light => light.DistanceMm));
    }

    [Fact]
    public void Readings_OfASourceEvaluatedExactly_FitWithinAThousandthOfAStop()
    {
        var light = new EvaluateLightRequest
        {
            Sources =
            {
                new LightSource
                {
                    Disc = new() { DiameterMm = 1000 },
                    Pose = new() { Position = At(2000), AimPoint = At(0) },
                    Calibration = new() { LuminanceCdPerM2 = 5000 },
                },
            },
        };
        double[] distances = [400, 700, 1100, 1900];
        light.Receivers.Add(distances.Select(distance => new LightReceiver { Place = At(2000 - distance), Up = true }));
        var request = new FitSourceRequest { PredictDistancesMm = { 600 } };
        request.Readings.Add(Calls.FillPlacement.EvaluateLight(light).Receivers.Zip(distances, (received, distance) => new DistanceReading
        {
            DistanceMm = distance,
            Reading = new() { Continuous = new() { IlluminanceLx = received.IlluminanceLx } },
        }));
        var best = Calls.FillPlacement.FitSource(request).Fits[0];
        Assert.Equal(FallOffModel.SoftFace, best.Model);
        Assert.Equal(500, best.RadiusMm, 0.05);
        Assert.Equal(Math.Log2((160e3 + 250e3) / (360e3 + 250e3)), best.Predicted[0].OverFirstStops, 1e-4);
    }

    [Fact]
    public void LightThatDoesNotFallOff_LeavesThePointAlone()
    {
        var request = Examples.Fit();
        foreach (var reading in request.Readings)
        {
            reading.Reading.Flash.Settings.Aperture = new() { Mark = "f/8" };
        }

        var fits = Calls.FillPlacement.FitSource(request).Fits;
        Assert.Equal(FallOffModel.Point, fits[0].Model);
        Assert.All(fits.Skip(1), fit => Assert.False(fit.HasSolution || fit.HasRadiusMm || fit.HasOriginBehindMm || fit.Predicted.Count > 0));
    }

    [Fact]
    public void Prediction_BeforeABeamBegins_IsUnset()
    {
        var request = new FitSourceRequest
        {
            Readings = { Lit(1000, 1000), Lit(2000, 1000 / Math.Pow(2, 3)) },
            PredictDistancesMm = { 100, 1500 },
        };
        var beam = Calls.FillPlacement.FitSource(request).Fits[0];
        Assert.Equal(FallOffModel.Beam, beam.Model);
        Assert.True(beam.OriginBehindMm < -100);
        Assert.False(beam.Predicted[0].HasOverFirstStops);
        Assert.True(beam.Predicted[1].OverFirstStops is < 0 and > -3);
    }

    private static DistanceReading Lit(double distance, double lx) =>
        new() { DistanceMm = distance, Reading = new() { Continuous = new() { IlluminanceLx = lx } } };

    private static Point At(double z) => new() { XMm = 0, YMm = 0, ZMm = z };
}
