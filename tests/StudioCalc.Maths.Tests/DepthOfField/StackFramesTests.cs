using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Focus stacks hold every point of the depth, and need every frame.</summary>
public sealed class StackFramesTests
{
    private static readonly Gen<StackInput> Inputs = Gen.Select(
        Gen.Select(Gen.Double[20, 200], Gen.Double[0.03, 2], Gen.Double[0.4, 2]),
        Gen.Double[2, 22],
        Gen.Double[0.005, 0.05],
        Gen.Double[0.1, 150],
        Gen.Select(Gen.Double[0, 0.6], Gen.Enum<StackMethod>()),
        (lens, fNumber, blur, depth, how) =>
            new StackInput(new(lens.Item1, lens.Item2, lens.Item3), fNumber, blur, depth, how.Item1, how.Item2));

    [Fact]
    public void Frames_AnyDepth_HoldItWithoutAGap() => Inputs.Sample(input =>
    {
        var stack = Plan(input);
        Assert.True(stack.Frames[0].NearMm <= 1e-6);
        foreach (var (before, after) in stack.Frames.Zip(stack.Frames.Skip(1)))
        {
            Assert.True(after.NearMm <= before.FarMm - input.OverlapShare * (before.FarMm - before.NearMm) + 1e-6 * before.FarMm + 1e-9);
        }

        Assert.Equal(stack.IsWhole, stack.Frames[^1].FarMm >= input.DepthMm * (1 - 1e-9));
        Assert.True(stack.Frames.Count == 1 || stack.Frames[^2].FarMm < input.DepthMm);
    });

    [Fact]
    public void Frames_FocusedAsToldByFocusDistance_HaveTheirLimits() => Inputs.Sample(input =>
    {
        // The other way round: the zone of the lens refocused at the frame's distance.
        var stack = Plan(input);
        var front = input.Lens.FromEntrancePupilMm;
        foreach (var frame in stack.Frames.Take(20))
        {
            var zone = SharpZone.Evaluate(input.Lens.RefocusedAt(frame.FromEntrancePupilMm), input.FNumber, input.PermittedBlurMm);
            var camera = input.Method == StackMethod.FocusingRail ? frame.FocusMm - (frame.FromEntrancePupilMm - front) : 0;
            Assert.Equal(frame.NearMm, zone.NearFromEntrancePupilMm - front + camera, 1e-6 * front);
            if (!double.IsInfinity(frame.FarMm) && !zone.FarIsInfinite)
            {
                Assert.Equal(1, (frame.FarMm + front - camera) / zone.FarFromEntrancePupilMm, 1e-6);
            }
        }
    });

    [Fact]
    public void Frames_SmallerAperture_AreNoMore() => Inputs.Sample(input =>
        Assert.True(Plan(input with { FNumber = input.FNumber * 1.2 }).Frames.Count <= Plan(input).Frames.Count));

    [Fact]
    public void Frames_WholeNumberOfSteps_AreNotOneTooMany()
    {
        var input = new StackInput(new(100, 0.5), 8, 0.02, 1, 0.2, StackMethod.FocusingRail);
        var depth = Plan(input).DepthPerFrameMm;
        for (var frames = 2; frames < 50; frames++)
        {
            Assert.Equal(frames, Plan(input with { DepthMm = depth * (1 + (frames - 1) * 0.8) }).Frames.Count);
        }
    }

    [Fact]
    public void Frames_BeyondTheHyperfocal_EndWithOneThatReachesToInfinity()
    {
        var stack = Plan(new(new(24, 0.02), 11, 0.03, 9000, 0.2, StackMethod.FocusRing));
        Assert.True(stack.IsWhole);
        Assert.True(double.IsInfinity(stack.Frames[^1].FarMm));
        Assert.All(stack.Frames, frame => Assert.True(double.IsFinite(frame.FocusMm) && double.IsFinite(frame.NearMm)));
    }

    [Fact]
    public void Outcome_TimeForSomeFrames_GivesThoseAndTheApertureThatFits()
    {
        var none = default(NoTrail);
        var input = new StackInput(new(100, 0.3), 5.6, 0.03, 40, 0.2, StackMethod.FocusRing);
        var whole = Plan(input).Frames.Count;
        var times = new StackTimes(1.5, 2, 2 + 4 * 2);
        var outcome = StackOutcome.Plan(input, times, ref none);
        Assert.Equal((StackObstacle.Time, 5, whole), (outcome.Obstacle, outcome.Stack!.Frames.Count, outcome.FramesNeeded));
        Assert.Equal(2 * (whole - 5), outcome.ShortfallS!.Value, 1e-9);
        Assert.Equal(10, outcome.TimeS!.Value, 1e-9);
        Assert.Equal(40, outcome.DepthThatFitsMm + outcome.ShortfallMm, 1e-9);
        var aperture = StackAperture.ThatFits(input, times, StopScale.Third, 0.55)!.Value;
        Assert.Null(StackOutcome.Plan(input with { FNumber = aperture }, times, ref none).Obstacle);
        Assert.NotNull(StackOutcome.Plan(input with { FNumber = aperture / Math.Pow(2, 1 / 6.0) }, times, ref none).Obstacle);
        Assert.Null(StackAperture.ThatFits(input with { PermittedBlurMm = 0.01 }, times, StopScale.Third, 0.55));
    }

    [Fact]
    public void Outcome_NoTimeForOneFrame_HasNoStack()
    {
        var none = default(NoTrail);
        var input = new StackInput(new(100, 0.3), 5.6, 0.015, 40, 0.2, StackMethod.FocusingRail);
        var outcome = StackOutcome.Plan(input, new(1, 2, 1), ref none);
        Assert.Null(outcome.Stack);
        Assert.Equal((0, 40), (outcome.DepthThatFitsMm, outcome.ShortfallMm));
    }

    [Fact]
    public void Outcome_EndlessFrames_StopAtTheLimit()
    {
        var none = default(NoTrail);
        foreach (var method in Enum.GetValues<StackMethod>())
        {
            var outcome = StackOutcome.Plan(new(new(100, 5), 2, 0.001, 500, 0.5, method), null, ref none);
            Assert.Equal((StackObstacle.Frames, StackFrames.MostFrames), (outcome.Obstacle, outcome.Stack!.Frames.Count));
            Assert.Null(outcome.FramesNeeded);
        }
    }

    [Fact]
    public void Frames_WithDiffraction_AreThoseOfTheBlurThatItLeaves() => Inputs.Sample(input =>
    {
        var counted = input with { WavelengthUm = 0.55 };
        var airy = 2.44 * 0.00055 * input.FNumber * (1 + input.Lens.Magnification / input.Lens.PupilMagnification);
        if (airy >= input.PermittedBlurMm)
        {
            Assert.Null(counted.DefocusBlurMm);
            return;
        }

        var left = Math.Sqrt(input.PermittedBlurMm * input.PermittedBlurMm - airy * airy);
        Assert.Equal(Plan(input with { PermittedBlurMm = left }).DepthPerFrameMm, Plan(counted).DepthPerFrameMm, 1e-6);
        Assert.True(Plan(counted).Frames.Count >= Plan(input).Frames.Count);
    });

    [Fact]
    public void Outcome_WhereDiffractionLeavesNothing_HasNoFrames_AndTheDeepestApertureFits()
    {
        var none = default(NoTrail);
        var input = new StackInput(new(100, 0.2), 22, 0.03, 100, 0.2, StackMethod.FocusRing) { WavelengthUm = 0.55 };
        var outcome = StackOutcome.Plan(input, null, ref none);
        Assert.Equal((StackObstacle.Diffraction, null, 0, 100), (outcome.Obstacle, outcome.Stack, outcome.DepthThatFitsMm, outcome.ShortfallMm));

        // (40): 0.03 / (sqrt(2) 2.44 0.00055 1.2) = 13.2.
        Assert.Equal(12.699, StackAperture.ThatFits(input, null, StopScale.Third, 0.55)!.Value, 1e-3);
    }

    [Fact]
    public void ApertureThatFits_BeyondTheDeepest_IsTheNearestWiderOne()
    {
        var input = new StackInput(new(100, 0.2), 18, 0.03, 100, 0.2, StackMethod.FocusRing) { WavelengthUm = 0.55 };
        var whole = Plan(input).Frames.Count;
        var times = new StackTimes(1, 1, whole - 1);
        var fits = StackAperture.ThatFits(input, times, StopScale.Third, 0.55)!.Value;
        Assert.True(fits < 18 && Plan(input with { FNumber = fits }).Frames.Count < whole);
        var between = Marks.Aperture.All(StopScale.Third).Select(mark => mark.Value).Where(value => value > fits * 1.01 && value < 17.9);
        Assert.All(between, value => Assert.Equal(whole, Plan(input with { FNumber = value }).Frames.Count));
    }

    private static StackFrames Plan(StackInput input)
    {
        var none = default(NoTrail);
        return StackFrames.Plan(input, StackFrames.MostFrames, ref none);
    }
}
