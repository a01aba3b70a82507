using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EstimateKeepersTests
{
    public static TheoryData<string, string, Action<EstimateKeepersRequest>> Bad => new()
    {
        { "depths.far_is_infinite", "CONFLICT", request => request.Depths = new() { NearDepthMm = 1, FarIsInfinite = false } },
        { "depths.far", "REQUIRED", request => request.Depths = new() { NearDepthMm = 1 } },
        { "settings.camera.closeness.magnification", "OUT_OF_RANGE", request => request.Settings.Camera.Closeness.Magnification = 0 },
        { "settings.aperture.set.mark", "UNKNOWN_MARK", request => request.Settings.Aperture.Set.Mark = "f/5.7" },
        { "observed.kept_share", "OUT_OF_RANGE", request => request.Observed.KeptShare = 1 },
        { "focus_error", "REQUIRED", request => request.ClearFocusError() },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<EstimateKeepersRequest> spoil)
    {
        var request = Examples.Keepers();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.DepthOfField.EstimateKeepers(request)));
    }

    [Fact]
    public void Settings_SentAsTheirDepths_GiveTheSame()
    {
        var request = Examples.Keepers();
        request.IncludeWorking = false;
        var answer = Calls.DepthOfField.EstimateKeepers(request);
        request.Depths = new() { NearDepthMm = answer.NearDepthMm, FarDepthMm = answer.FarDepthMm };
        Assert.Equal(answer, Calls.DepthOfField.EstimateKeepers(request));
    }

    [Fact]
    public void Causes_AddInQuadrature()
    {
        var request = Examples.Keepers();
        (request.SpreadMm, request.CameraMovementMm, request.PlatePlacementMm) = (2, 3, 6);
        Assert.Equal(7, Calls.DepthOfField.EstimateKeepers(request).SpreadMm, 1e-12);
    }

    [Fact]
    public void Frames_OfTheSolution_GiveTheConfidence_AndOneFewerDoesNot()
    {
        var request = Examples.Keepers();
        var plan = Calls.DepthOfField.EstimateKeepers(request).Solution;
        Assert.True(plan.FramesForOne < plan.FramesForWanted);
        request.Frames = plan.FramesForWanted;
        Assert.True(Calls.DepthOfField.EstimateKeepers(request).ChanceOfFrames >= 0.95);
        request.Frames--;
        Assert.True(Calls.DepthOfField.EstimateKeepers(request).ChanceOfFrames < 0.95);
        request.Frames = 1;
        Assert.Equal(0, Calls.DepthOfField.EstimateKeepers(request).ChanceOfFrames);
    }

    [Fact]
    public void LockedFocus_HopedForMoreThanOneFrameGives_IsNotReachedByAnyNumber()
    {
        var request = Examples.Keepers();
        (request.FocusIsLocked, request.Frames) = (true, 50);
        var answer = Calls.DepthOfField.EstimateKeepers(request);
        Assert.True(answer.NotReached.FocusIsLocked);
        Assert.Equal(answer.KeepChance, answer.ChanceOfFrames);
        var remedies = answer.NotReached.Remedies;
        Assert.Equal(
            [KeeperRemedyKind.RefocusEachFrame, KeeperRemedyKind.CloseAperture], remedies.Select(remedy => remedy.Kind));

        request.FocusIsLocked = false;
        var refocused = Calls.DepthOfField.EstimateKeepers(request);
        Assert.Equal(refocused.Solution.FramesForWanted, remedies[0].FramesForWanted);

        request.FocusIsLocked = true;
        request.Settings.Aperture.Set.Mark = remedies[1].Aperture.Mark;
        var closed = Calls.DepthOfField.EstimateKeepers(request);
        Assert.Equal((remedies[1].FramesForWanted, remedies[1].KeepChance), (closed.Solution.FramesForWanted, closed.KeepChance));
    }

    [Fact]
    public void LockedFocus_ForOneKeeper_IsBracketed()
    {
        var request = Examples.Keepers();
        (request.FocusIsLocked, request.KeepersWanted) = (true, 1);
        var answer = Calls.DepthOfField.EstimateKeepers(request);
        var bracket = answer.NotReached.Remedies.Single(remedy => remedy.Kind == KeeperRemedyKind.FocusBracket);
        Assert.Equal(answer.BracketFrames, bracket.FramesForWanted);
        Assert.InRange(bracket.KeepChance, 0.95, 1);

        // One frame as deep as the bracket has its chance.
        var half = (answer.NearDepthMm + answer.FarDepthMm) * (1 + 0.8 * (bracket.FramesForWanted - 1)) / 2;
        (request.Depths, request.BiasMm) = (new() { NearDepthMm = half, FarDepthMm = half }, 0);
        Assert.Equal(Calls.DepthOfField.EstimateKeepers(request).KeepChance, bracket.KeepChance, 1e-12);
    }

    [Fact]
    public void LockedFocus_InAZoneThatReachesToInfinity_HasNoBracket()
    {
        var answer = Calls.DepthOfField.EstimateKeepers(new()
        {
            Depths = new() { NearDepthMm = 10, FarIsInfinite = true }, SpreadMm = 5, BiasMm = -20, ConfidenceShare = 0.9, FocusIsLocked = true,
        });
        Assert.Equal(1u, answer.BracketFrames);
        Assert.DoesNotContain(answer.NotReached.Remedies, remedy => remedy.Kind == KeeperRemedyKind.FocusBracket);
    }

    [Fact]
    public void LockedFocus_WithinWhatOneFrameGives_NeedsNoMoreThanTheKeepers()
    {
        var request = Examples.Keepers();
        (request.FocusIsLocked, request.ConfidenceShare) = (true, 0.5);
        Assert.Equal(new KeeperPlan { FramesForOne = 1, FramesForWanted = 2 }, Calls.DepthOfField.EstimateKeepers(request).Solution);
    }

    [Fact]
    public void Shortfall_AddedToTheZone_ReachesTheConfidenceWithOneFrame()
    {
        var request = Examples.Keepers();
        request.FocusIsLocked = true;
        var answer = Calls.DepthOfField.EstimateKeepers(request);
        var factor = 1 + 1e-9 + answer.NotReached.ShortfallMm / (answer.NearDepthMm + answer.FarDepthMm);
        request.Depths = new() { NearDepthMm = answer.NearDepthMm * factor, FarDepthMm = answer.FarDepthMm * factor };
        answer = Calls.DepthOfField.EstimateKeepers(request);
        Assert.Equal(0.95, answer.KeepChance, 1e-7);
        Assert.NotNull(answer.Solution);
    }

    [Fact]
    public void HopelessBias_IsNotReached_AndItsCorrectionIs()
    {
        var request = Examples.Keepers();
        (request.BiasMm, request.SpreadMm, request.CameraMovementMm, request.PlatePlacementMm) = (100, 2, 0, 0);
        var answer = Calls.DepthOfField.EstimateKeepers(request);
        Assert.False(answer.NotReached.FocusIsLocked);
        Assert.Equal(KeeperRemedyKind.CorrectBias, answer.NotReached.Remedies[0].Kind);
        request.BiasMm = 0;
        Assert.Equal(
            answer.NotReached.Remedies[0].FramesForWanted, Calls.DepthOfField.EstimateKeepers(request).Solution.FramesForWanted);
    }

    // 31 mm of error, 6 mm of depth, a fifth of overlap.
    [Fact]
    public void Bracket_OfAWideSpread_TakesSevenFrames()
    {
        var answer = Calls.DepthOfField.EstimateKeepers(new()
        {
            Depths = new() { NearDepthMm = 3, FarDepthMm = 3 },
            Observed = new() { KeptShare = 0.3, HalfDepthMm = 3 },
            ConfidenceShare = 0.95,
        });
        Assert.Equal(7u, answer.BracketFrames);
    }

    [Theory]
    [InlineData(10, true)]
    [InlineData(1, false)]
    public void Bracket_OfAZoneThatReachesToInfinity_IsOneFrameWhereOneHasTheConfidence(double near, bool isTold)
    {
        var answer = Calls.DepthOfField.EstimateKeepers(
            new() { Depths = new() { NearDepthMm = near, FarIsInfinite = true }, SpreadMm = 5, ConfidenceShare = 0.9 });
        Assert.Equal(isTold, answer.HasBracketFrames);
        Assert.Equal(isTold, answer.KeepChance >= 0.9);
        Assert.Equal(isTold ? 1u : 0u, answer.BracketFrames);
        Assert.False(answer.HasFarDepthMm);
    }

    [Fact]
    public void Bracket_OfThousandsOfFrames_IsNotTold()
    {
        var answer = Calls.DepthOfField.EstimateKeepers(
            new() { Depths = new() { NearDepthMm = 0.001, FarDepthMm = 0.001 }, SpreadMm = 50, ConfidenceShare = 0.9 });
        Assert.False(answer.HasBracketFrames);
    }
}
