using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ExposureSolverTests
{
    private static readonly Gen<ExposureInput> Inputs = Gen.Select(
        Gen.Double[-5, 18], Gen.Enum<ExposureUnknown>(), Gen.Select(Gen.Double[0, 10], Gen.Double[-10, 4], Gen.Double[-1, 8]), Gen.Double[-4, 4], Gen.Double[0, 6],
        Gen.Double[0, 4], Gen.Enum<StopScale>(),
        (light, unknown, set, compensation, filters, closeUp, scale) => new ExposureInput
        {
            Light = new(light),
            Unknown = unknown,
            FNumber = Math.Pow(2, set.Item1 / 2),
            ShutterSpeedS = Math.Pow(2, set.Item2),
            Iso = 100 * Math.Pow(2, set.Item3),
            CompensationStops = compensation,
            FilterLossStops = filters,
            CloseUpLossStops = closeUp,
            Scale = scale,
        });

    private static readonly CameraLimits Narrow = new()
    {
        WidestFNumber = 2.8,
        SmallestFNumber = 22,
        FastestShutterSpeedS = 1 / 8192.0,
        SlowestShutterSpeedS = 1,
        LowestIso = 64,
        HighestIso = 6400,
    };

    private static NoTrail none;

    [Fact]
    public void Solve_WithinLimits_MetersRightAgainstTheLight() => Inputs.Sample(input =>
    {
        var outcome = ExposureSolver.Solve(input, ref none);
        if (outcome.Obstacle == ExposureObstacle.None)
        {
            var over = input.Light.StopsOver(new(outcome.FNumber, outcome.ShutterSpeedS, outcome.Iso), outcome.LensLossStops, ref none);
            // Where only the exact value lies beyond a limit, the limit stands, up to half a step away; tenths fall back on thirds.
            var step = input.Scale == StopScale.Tenth ? 3 : input.Scale.StepsPerStop();
            Assert.Equal(input.CompensationStops, over, 0.5 / step + 1e-6);
        }
    });

    [Fact]
    public void Solve_WithoutLimitsOnShutterAndIso_IsExactAndTheRestIsUnderHalfAStep() => Inputs.Where(input => input.Unknown != ExposureUnknown.Aperture)
        .Sample(input =>
        {
            var outcome = ExposureSolver.Solve(input, ref none);
            var over = input.Light.StopsOver(new(outcome.FNumber, outcome.ShutterSpeedS, outcome.Iso), outcome.LensLossStops, ref none);
            Assert.Equal(input.CompensationStops, over, 1e-9);
            Assert.InRange(Math.Abs(outcome.RestStops), 0, (0.5 / Math.Min(3, input.Scale.StepsPerStop())) + 1e-9);
        });

    [Fact]
    public void Solve_NarrowCamera_NeverLeavesItsLimits() => Inputs.Sample(input =>
    {
        var outcome = ExposureSolver.Solve(input with { Limits = Narrow }, ref none);
        var (value, low, high) = input.Unknown switch
        {
            ExposureUnknown.Aperture => (outcome.FNumber, Narrow.WidestFNumber, Narrow.SmallestFNumber),
            ExposureUnknown.ShutterSpeed => (outcome.ShutterSpeedS, Narrow.FastestShutterSpeedS, Narrow.SlowestShutterSpeedS),
            _ => (outcome.Iso, Narrow.LowestIso, Narrow.HighestIso),
        };
        Assert.InRange(value, low, high);
        Assert.Equal(outcome.Obstacle == ExposureObstacle.None, outcome.ShortfallStops == 0);
        if (outcome.Obstacle != ExposureObstacle.None)
        {
            Assert.Equal(outcome.ShortfallStops, Math.Abs(outcome.RestStops), 1e-9);
        }
    });

    [Fact]
    public void Remedies_OfAShortfall_HelpTowardsIt() => Inputs.Sample(input =>
    {
        input = input with { Limits = Narrow, FNumber = 8, ShutterSpeedS = 1 / 64.0, Iso = 400 };
        var outcome = ExposureSolver.Solve(input, ref none);
        foreach (var remedy in ExposureRemedies.For(input, outcome))
        {
            Assert.NotEqual(0, remedy.ChangeStops);
            Assert.True(remedy.Outcome.ShortfallStops < outcome.ShortfallStops, $"{remedy.Kind}: {remedy.Outcome.ShortfallStops} of {outcome.ShortfallStops}");
            Assert.Equal(outcome.RestStops < 0, remedy.ChangeStops > 0);
        }

        var asLarge = outcome.Obstacle == ExposureObstacle.None ? [] : ExposureRemedies.For(input, outcome).TakeLast(1).ToList();
        Assert.All(asLarge, light => Assert.Equal(ExposureObstacle.None, light.Outcome.Obstacle));
    });

    [Fact]
    public void Solve_LimitBetweenMarks_StandsForAMarkBeyondIt()
    {
        var input = new ExposureInput
        {
            Light = new(Math.Log2(1 / 0.0051)),
            Unknown = ExposureUnknown.ShutterSpeed,
            Limits = new() { FastestShutterSpeedS = 0.005 },
        };
        var outcome = ExposureSolver.Solve(input, ref none);
        Assert.Equal((ExposureObstacle.None, 0.0051), (outcome.Obstacle, Math.Round(outcome.ShutterSpeedS, 12)));
        Assert.Equal(Math.Log2(0.005 / 0.0051), outcome.RestStops, 1e-9);
    }

    [Fact]
    public void Covering_AnyValue_AdmitsNoLessOrNoMore() => Gen.Select(Gen.Double[0, 12], Gen.Enum<StopScale>(), Gen.Bool).Sample((position, scale, more) =>
    {
        foreach (var (marks, value) in new[] { (Marks.Aperture, Math.Pow(2, position / 2)), (Marks.ShutterSpeed, Math.Pow(2, 4 - position)), (Marks.Iso, 50 * Math.Pow(2, position)) })
        {
            var stops = marks.Stops(marks.Covering(value, scale, more), value) * (more ? 1 : -1);
            Assert.InRange(stops, -1e-8, 1.0 / Math.Min(scale == StopScale.Tenth && marks != Marks.Aperture ? 3 : 10, scale.StepsPerStop()));
        }
    });

    [Theory]
    [InlineData(StopScale.Whole, 15)]
    [InlineData(StopScale.Half, 29)]
    [InlineData(StopScale.Third, 43)]
    [InlineData(StopScale.Tenth, 141)]
    public void All_ApertureMarks_RiseEvenlyAndAreFoundAgain(StopScale scale, int count)
    {
        var marks = Marks.Aperture.All(scale);
        Assert.Equal(count, marks.Count);
        Assert.All(marks, mark => Assert.Equal(mark, Marks.Aperture.Nearest(mark.Value, scale)));
        Assert.All(marks.Zip(marks.Skip(1)), pair =>
            Assert.Equal(1.0 / scale.StepsPerStop(), Marks.Aperture.Stops(pair.First.Value, pair.Second.Value), 1e-9));
    }
}
