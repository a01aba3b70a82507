using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EstimatePlacementErrorTests
{
    [Fact]
    public void BadField_IsNamed()
    {
        var request = Examples.PlacementError();
        request.Source.Pose.AimPoint = request.Source.Pose.Position.Clone();
        Assert.Equal([("source.pose.aim_point", "CONFLICT")], Calls.Refused(() => Calls.FillPlacement.EstimatePlacementError(request)));
        request.DistancesMm.Add(9);
        Assert.Equal([("distances_mm[2]", "OUT_OF_RANGE")], Calls.Refused(() => Calls.FillPlacement.EstimatePlacementError(request)));
    }

    [Fact]
    public void Error_OfAnExample_AddsAsSquaresAndAtWorstAsItIs()
    {
        var answer = Calls.FillPlacement.EstimatePlacementError(Examples.PlacementError());
        Assert.Equal(0.1445, answer.ErrorStops, 3e-4);
        Assert.Equal(Math.Sqrt(0.02), answer.MeterStops, 1e-12);
        var tape = answer.Distances.Select(one => one.TapeStops).ToList();
        Assert.Equal(Math.Sqrt(tape[0] * tape[0] + tape[1] * tape[1]), answer.TapeStops, 1e-12);
        Assert.Equal(0.2 + tape.Sum(), answer.WorstStops, 1e-12);
        Assert.Equal(Math.Pow(2, answer.ErrorStops), answer.RatioFactor, 1e-12);
        Assert.All(answer.Distances, one => Assert.Equal(answer.ErrorStops, one.ErrorMm * -one.ChangeFor10MmStops / 10, 1e-9));
    }

    [Fact]
    public void SoftFace_ForgivesTheTapeMoreThanAPoint()
    {
        var answer = Calls.FillPlacement.EstimatePlacementError(Examples.PlacementError());
        Assert.All(answer.Distances, one => Assert.InRange(one.ChangeFor10MmStops, one.PointChangeFor10MmStops, 0));
    }

    [Fact]
    public void Rate_IsThatOfTheLightEvaluatedALittleFurtherAway()
    {
        var request = Examples.PlacementError();
        var light = new EvaluateLightRequest { Sources = { request.Source } };
        var away = new[] { 0.0, -0.866, 0.5 };
        var size = Math.Sqrt(away.Sum(x => x * x));
        foreach (var distance in new[] { 999.0, 1001 })
        {
            // The receiver moves instead of the source: along its axis, which ends at the middle of the set.
            var back = (Math.Sqrt(866 * 866 + 500 * 500) - distance) / size;
            light.Receivers.Add(new LightReceiver
            {
                Place = new() { XMm = 0, YMm = away[1] * back, ZMm = away[2] * back },
                SourceIndex = 0,
            });
        }

        var step = Calls.FillPlacement.EvaluateLight(light).Receivers[1].OverReferenceStops;
        Assert.Equal(step * 5, Calls.FillPlacement.EstimatePlacementError(request).Distances[0].ChangeFor10MmStops, 1e-7);
    }

    [Fact]
    public void WithoutReadings_OnlyTheTapeCounts()
    {
        var request = Examples.PlacementError();
        request.Readings = 0;
        var answer = Calls.FillPlacement.EstimatePlacementError(request);
        Assert.Equal(0, answer.MeterStops);
        Assert.Equal(answer.TapeStops, answer.ErrorStops);
    }
}
