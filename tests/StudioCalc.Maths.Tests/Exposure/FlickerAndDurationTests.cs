using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class FlickerAndDurationTests
{
    // Another route: gather the raised cosine numerically from many starts, and compare the brightest with the darkest.
    [Fact]
    public void Banding_AnyTime_IsThatOfTheLightGatheredFromEveryStart() =>
        Gen.Select(Gen.Double[40, 70], Gen.Double[0.001, 0.05]).Sample(
            (frequency, time) =>
            {
                var period = 1 / (2 * frequency);
                var gathered = Enumerable.Range(0, 400).Select(start => Gather(frequency, period * start / 400, time)).ToList();
                var contrast = (gathered.Max() - gathered.Min()) / (gathered.Max() + gathered.Min());
                var none = default(NoTrail);
                return Math.Abs(contrast - Flicker.Banding(frequency, time, ref none)) < 1e-3;
            },
            iter: 30);

    [Fact]
    public void WithoutBands_AnyTolerance_ListsMarksWithinItAndTheirWholeFlickers() =>
        Gen.Select(Gen.OneOf(50.0, 60.0), Gen.Double[0, 1]).Sample((frequency, tolerated) =>
        {
            var marks = Flicker.WithoutBands(frequency, tolerated, StopScale.Third, 0, double.PositiveInfinity);
            var none = default(NoTrail);
            return marks.All(mark => mark.Banding <= tolerated && mark.Flickers >= 1
                && Flicker.Banding(frequency, mark.BandFreeTimeS, ref none) < 1e-9);
        });

    // Another route: sum the exponential pulse in small steps up to the moment when the shutter closes.
    [Fact]
    public void CutOff_AnyTime_IsTheTailOfAnExponentialPulse() =>
        Gen.Select(Gen.Double[0.0002, 0.01], Gen.Double[0.2, 3]).Sample(
            (t01, open) =>
            {
                var none = default(NoTrail);
                var decay = t01 / Math.Log(10);
                const int steps = 20000;
                var step = 20 * decay / steps;
                var light = Enumerable.Range(0, steps).Select(i => (Time: (i + 0.5) * step, Light: Math.Exp(-(i + 0.5) * step / decay))).ToList();
                var passed = light.Where(slice => slice.Time < open * t01).Sum(slice => slice.Light);
                return Math.Abs(Math.Log2(light.Sum(slice => slice.Light) / passed) - FlashDuration.CutOffStops(open * t01, t01, ref none)) < 5e-3;
            },
            iter: 30);

    [Fact]
    public void Recycling_AnyPower_NeverBeatsTheFloorNorTakesLongerThanFull() =>
        Gen.Select(Gen.Double[0.2, 10], Gen.Double[0, 10]).Sample((full, below) =>
        {
            var none = default(NoTrail);
            var answer = FlashRecycling.Estimate(
                new() { RecycleTimeS = full, ShortestRecycleS = 0.1, PowerBelowFullStops = below, FullPowerFramesPerCharge = 100, Frames = 11 }, ref none);
            Assert.InRange(answer.IntervalS, 0.1, full);
            Assert.Equal(10 * answer.IntervalS, answer.SeriesS!.Value, 1e-12 * answer.SeriesS.Value);
            Assert.Equal(11, answer.FramesPerCharge!.Value * answer.Charges!.Value, 1e-9);
        });

    [Fact]
    public void Shift_ThereAndBack_Cancels() => Gen.Select(Gen.Double[1500, 20000], Gen.Double[1500, 20000]).Sample((from, to) =>
    {
        var none = default(NoTrail);
        var there = ColourShift.NeededMired(from, to, ref none);
        Assert.Equal(-there, ColourShift.NeededMired(to, from, ref none), 1e-9);
        var exact = ColourShift.Match(from, to, [new("exact", there, 0)])[0];
        Assert.Equal(to, exact.ResultK!.Value, 1e-6);
        Assert.Equal(0, exact.RestMired, 1e-9);
    });

    [Fact]
    public void Match_AnyShift_ListsNearestFirst() => Gen.Double[2000, 10000].Sample(to =>
    {
        var rests = ColourShift.Match(5500, to, ColourShift.CommonGels).Select(match => Math.Abs(match.RestMired)).ToList();
        return rests.Zip(rests.Skip(1)).All(pair => pair.First <= pair.Second + 1e-6);
    });

    private static double Gather(double frequency, double start, double time)
    {
        const int steps = 500;
        return Enumerable.Range(0, steps)
            .Sum(i => (1 + Math.Cos(4 * Math.PI * frequency * (start + (i + 0.5) * time / steps))) * time / steps);
    }
}
