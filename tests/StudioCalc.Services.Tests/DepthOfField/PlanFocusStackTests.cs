using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class PlanFocusStackTests
{
    public static TheoryData<string, string, Action<PlanFocusStackRequest>> Bad => new()
    {
        { "camera.closeness.magnification", "OUT_OF_RANGE", request => request.Camera.Closeness.Magnification = 0 },
        { "permitted_blur.pixels", "CONFLICT", request => request.PermittedBlur = new() { Pixels = 2 } },
        { "aperture.set.mark", "UNKNOWN_MARK", request => request.Aperture.Set.Mark = "f/8.5" },
        { "recycle_time", "REQUIRED", request => (request.RecycleTime, request.SettleTime) = (null, null) },
        { "method", "REQUIRED", request => request.ClearMethod() },
        { "overlap_share", "OUT_OF_RANGE", request => request.OverlapShare = 1 },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<PlanFocusStackRequest> spoil)
    {
        var request = Examples.Stack();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.DepthOfField.PlanFocusStack(request)));
    }

    [Theory]
    [InlineData(StackMethod.FocusRing)]
    [InlineData(StackMethod.FocusingRail)]
    public void Solution_Positions_HoldTheDepthAndTakeTheirTime(StackMethod method)
    {
        var request = Examples.Stack();
        (request.Method, request.AvailableTime) = (method, null);
        var stack = Calls.DepthOfField.PlanFocusStack(request).Solution;
        Assert.Equal((int)stack.Frames, stack.Positions.Count);
        Assert.Equal(0, stack.Positions[0].NearOffsetMm, 1e-9);
        Assert.True(stack.Positions[^1].FarOffsetMm >= 45);
        Assert.Equal(stack.Positions[^1].FocusOffsetMm - stack.Positions[0].FocusOffsetMm, stack.TravelMm, 1e-9);
        Assert.Equal(0.5 + (stack.Frames - 1) * 1.2, stack.Time.ToTimeSpan().TotalSeconds, 1e-6);
        Assert.Equal(method == StackMethod.FocusingRail, stack.HasStepMm);
        Assert.All(stack.Positions, frame => Assert.Equal(method == StackMethod.FocusingRail, frame.HasTravelMm));
        Assert.Equal(method == StackMethod.FocusRing, stack.Positions[^1].Magnification < stack.Positions[0].Magnification);
    }

    [Fact]
    public void Times_NotGiven_LeaveTheTimeUnset()
    {
        var request = Examples.Stack();
        (request.RecycleTime, request.SettleTime, request.AvailableTime) = (null, null, null);
        Assert.Null(Calls.DepthOfField.PlanFocusStack(request).Solution.Time);
    }

    [Fact]
    public void TooLong_TellsWhatFits_AndTheApertureThatDoes()
    {
        var request = Examples.Stack();
        (request.Aperture.Set.Mark, request.PermittedBlur.DiameterUm) = ("f/4", 25);
        request.AvailableTime = new() { Seconds = 12 };
        var answer = Calls.DepthOfField.PlanFocusStack(request).NotReached;
        Assert.Equal(StackObstacle.Time, answer.Obstacle);

        // After settling for 0.5 s, 11.5 s hold nine intervals of 1.2 s.
        Assert.Equal(10u, answer.Nearest.Frames);
        Assert.Equal(answer.FramesNeeded, 10 + Math.Round(answer.ShortfallS / 1.2 + 0.7 / 1.2, 6), 1e-6);
        Assert.Equal(answer.Nearest.Positions[^1].FarOffsetMm, answer.DepthThatFitsMm, 1e-9);
        Assert.Equal(45, answer.DepthThatFitsMm + answer.ShortfallMm, 1e-9);

        request.Aperture.Set.Mark = answer.ApertureThatFits.Mark;
        Assert.InRange(Calls.DepthOfField.PlanFocusStack(request).Solution.Frames, 2u, 10u);
        request.Aperture.Set = new() { FNumber = answer.ApertureThatFits.FNumber / Math.Pow(2, 1 / 6.0) };
        Assert.NotNull(Calls.DepthOfField.PlanFocusStack(request).NotReached);
    }

    [Fact]
    public void Time_InPartsOfBothSigns_IsRefused()
    {
        var request = Examples.Stack();
        request.SettleTime = new() { Seconds = 1, Nanos = -500_000_000 };
        Assert.Equal([("settle_time", "OUT_OF_RANGE")], Calls.Refused(() => Calls.DepthOfField.PlanFocusStack(request)));
    }

    [Fact]
    public void Diffraction_ThatLeavesNothing_IsTheObstacle_UnlessDefocusAloneCounts()
    {
        var request = Examples.Stack();
        request.Aperture.Set.Mark = "f/32";
        var response = Calls.DepthOfField.PlanFocusStack(request);
        var answer = response.NotReached;
        Assert.Equal((StackObstacle.Diffraction, 0, 45), (answer.Obstacle, answer.DepthThatFitsMm, answer.ShortfallMm));
        Assert.True(answer.Nearest is null && !answer.HasFramesNeeded && !answer.HasShortfallS);
        Assert.Empty(response.Advisories);
        request.Aperture.Set.Mark = answer.ApertureThatFits.Mark;
        Assert.True(Calls.DepthOfField.PlanFocusStack(request).Solution.Frames > 1);

        (request.Aperture.Set.Mark, request.DefocusOnly) = ("f/32", true);
        Assert.NotNull(Calls.DepthOfField.PlanFocusStack(request).Solution);
    }

    [Fact]
    public void Remedy_OfTwoPoints_HasTheFramesOfTheStackThatIsPlanned()
    {
        var solve = new SolveApertureRequest
        {
            Lens = new() { FocalLengthMm = 100 },
            Distances = new() { NearMm = 600, FarMm = 700, Origin = DistanceOrigin.EntrancePupil },
            PermittedBlur = new() { DiameterUm = 30 },
        };
        foreach (var wavelength in new double?[] { null, 0.4 })
        {
            var stack = new PlanFocusStackRequest
            {
                Camera = new() { Lens = solve.Lens, Closeness = new() { Magnification = 0.2 } },
                PermittedBlur = solve.PermittedBlur,
                DepthMm = 100,
                Method = StackMethod.FocusRing,
            };
            if (wavelength is { } um)
            {
                (solve.WavelengthUm, stack.WavelengthUm) = (um, um);
            }

            var remedies = Calls.DepthOfField.SolveAperture(solve).NotReached.Remedies;
            Assert.DoesNotContain(remedies, one => one.HasFieldWidthMm);
            var remedy = remedies.Single(one => one.Kind == DepthRemedyKind.Stack);
            stack.Aperture = new() { Set = new() { Mark = remedy.Aperture.Mark } };
            var planned = Calls.DepthOfField.PlanFocusStack(stack).Solution;
            Assert.Equal(remedy.Frames, planned.Frames);
            Assert.Equal(wavelength is null ? (7u, "f/13") : (5u, "f/18"), (remedy.Frames, remedy.Aperture.Mark));
            stack.DefocusOnly = true;
            Assert.True(Calls.DepthOfField.PlanFocusStack(stack).Solution.Frames < remedy.Frames);
        }
    }

    [Fact]
    public void NoTime_HasNothingNearest()
    {
        var request = Examples.Stack();
        request.AvailableTime = new() { Nanos = 100_000_000 };
        var answer = Calls.DepthOfField.PlanFocusStack(request).NotReached;
        Assert.Null(answer.Nearest);
        Assert.Null(answer.ApertureThatFits);
        Assert.Equal((0, 45), (answer.DepthThatFitsMm, answer.ShortfallMm));
    }

    [Fact]
    public void TooManyFrames_AreNotReached_AndTheListIsCut()
    {
        var request = Examples.Stack();
        (request.AvailableTime, request.DepthMm, request.Camera.Closeness.Magnification) = (null, 500, 5);
        (request.Aperture.Set.Mark, request.DefocusOnly) = ("f/2", true);
        request.PermittedBlur.DiameterUm = 1;
        var response = Calls.DepthOfField.PlanFocusStack(request);
        var answer = response.NotReached;
        Assert.Equal((StackObstacle.Frames, 10000u, 500), (answer.Obstacle, answer.Nearest.Frames, answer.Nearest.Positions.Count));
        Assert.False(answer.HasFramesNeeded || answer.HasShortfallS);
        Assert.True(answer.ShortfallMm > 0);
        Assert.Equal(9500, response.Advisories.Single(advisory => advisory.Code == AdvisoryCode.ListCut).Values["left_out_count"]);
    }

    [Fact]
    public void FirstFrame_ReachingToInfinity_IsTheWholeStack()
    {
        foreach (var method in new[] { StackMethod.FocusingRail, StackMethod.FocusRing })
        {
            var request = Examples.Stack();
            (request.Method, request.Camera.Closeness.Magnification, request.Camera.Lens.FocalLengthMm) = (method, 0.001, 24);
            request.DepthMm = 5000;
            var stack = Calls.DepthOfField.PlanFocusStack(request).Solution;
            Assert.Equal(1u, stack.Frames);
            Assert.False(stack.HasDepthPerFrameMm || stack.HasStepMm || stack.Positions[0].HasFarOffsetMm);
            Assert.True(stack.Positions[0].NearOffsetMm <= 1e-9);
        }
    }
}
