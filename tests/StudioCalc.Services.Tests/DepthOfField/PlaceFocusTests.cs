using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class PlaceFocusTests
{
    public static TheoryData<string, string, Action<PlaceFocusRequest>> Refused => new()
    {
        { "components[0].main", "REQUIRED", request => request.Components[0].Main = false },
        { "components[2].main", "CONFLICT", request => request.Components[2].Main = true },
        { "components[3].position", "OUT_OF_RANGE", request => request.Components[3].Position.YMm = -1400 },
        { "components[0].position", "OUT_OF_RANGE", request => request.Components[0].Position.YMm = -1100 },
        { "camera.closeness.magnification", "OUT_OF_RANGE", request => request.Camera.Closeness = new() { Magnification = 0 } },
        { "camera.closeness", "OUT_OF_RANGE", request => request.Camera.Closeness = new() { Magnification = 0.00009 } },
        { "camera.lens.focal_length_mm", "REQUIRED", request => request.Camera.Lens.ClearFocalLengthMm() },
        { "limits.smallest_aperture", "CONFLICT", request => request.Limits.SmallestAperture = new() { Mark = "f/2" } },
        { "aperture.set.mark", "UNKNOWN_MARK", request => request.Aperture = new() { Set = new() { Mark = "f/8.5" } } },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void PlaceFocus_FieldsThatDoNotGoTogether_NamesTheField(string field, string reason, Action<PlaceFocusRequest> spoil)
    {
        var request = Examples.PlaceFocus();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.DepthOfField.PlaceFocus(request)));
    }

    [Fact]
    public void SingleComponent_IsTheMainOneUnsaid()
    {
        var request = Examples.PlaceFocus();
        request.Components[0].ClearMain();
        while (request.Components.Count > 1)
        {
            request.Components.RemoveAt(1);
        }

        Assert.True(Calls.DepthOfField.PlaceFocus(request).Solution.Components[0].Sharp);
    }

    [Fact]
    public void Placement_EvaluatedAgain_HasTheSameZoneAndBlur()
    {
        var request = Examples.PlaceFocus();
        var solution = Calls.DepthOfField.PlaceFocus(request).Solution;
        Assert.Equal("f/9", solution.Aperture.Mark);
        var evaluate = new EvaluateDepthOfFieldRequest
        {
            Camera = request.Camera.Clone(),
            Aperture = new() { Set = new() { Mark = "f/9" } },
            PermittedBlur = request.PermittedBlur,
        };
        evaluate.Camera.Closeness = new() { Magnification = solution.Focus.Magnification };
        evaluate.OffsetsMm.Add(solution.Components.SelectMany(component => new[] { component.NearOffsetMm, component.FarOffsetMm }));
        var again = Calls.DepthOfField.EvaluateDepthOfField(evaluate);
        Assert.Equal(again.Zone, solution.Zone);
        var blurs = solution.Components.SelectMany(component => new[] { component.NearBlurUm, component.FarBlurUm });
        Assert.All(blurs.Zip(again.Points), pair => Assert.Equal(pair.Second.BlurUm, pair.First, 1e-9));
    }

    [Fact]
    public void Camera_TurnedTogetherWithTheSet_SeesTheSame()
    {
        var (request, turned) = (Examples.PlaceFocus(), Examples.PlaceFocus());
        turned.Direction.AzimuthDeg += 90;
        foreach (var component in turned.Components)
        {
            (component.Position.XMm, component.Position.YMm) = (-component.Position.YMm, component.Position.XMm);
        }

        var (first, second) = (Calls.DepthOfField.PlaceFocus(request).Solution, Calls.DepthOfField.PlaceFocus(turned).Solution);
        Assert.Equal(first.FocusOffsetMm, second.FocusOffsetMm, 1e-9);
        Assert.All(first.Components.Zip(second.Components), pair => Assert.Equal(pair.First.NearOffsetMm, pair.Second.NearOffsetMm, 1e-9));
    }

    [Fact]
    public void Importance_OfANeighbour_DrawsFocusToIt()
    {
        var request = Examples.PlaceFocus();
        request.Aperture = new() { Set = new() { Mark = "f/16" } };
        (request.Components[1].Importance, request.Components[2].Importance) = (0, 0);
        var without = Calls.DepthOfField.PlaceFocus(request).Solution;
        request.Components[2].Importance = 0.4;
        var with = Calls.DepthOfField.PlaceFocus(request).Solution;
        Assert.True(with.Components[0].Sharp && with.Components[2].Sharp);
        Assert.Equal(0.0, without.SlipForwardMm / without.SlipBackMm - 1, 0.1);
        Assert.True(with.FocusOffsetMm > without.FocusOffsetMm);
    }

    [Fact]
    public void EffectiveAperture_IsThatAtTheAimPoint()
    {
        var request = Examples.PlaceFocus();
        request.Aperture = new() { Effective = new() { FNumber = 12 } };
        Assert.Equal(12 / (1 + 36 / 330.0), Calls.DepthOfField.PlaceFocus(request).Solution.Aperture.FNumber, 1e-12);
    }

    [Fact]
    public void SmallestAperture_TooWide_GivesTheNearestAndRemediesThatHold()
    {
        var request = Examples.PlaceFocus();
        request.Limits.SmallestAperture = new() { Mark = "f/5.6" };
        var missed = Calls.DepthOfField.PlaceFocus(request).NotReached;
        Assert.Equal(DepthObstacle.SmallestAperture, missed.Obstacle);
        Assert.Equal("f/5.6", missed.Nearest.Aperture.Mark);
        Assert.Equal(missed.Nearest.Components[0].DepthMm - missed.Nearest.Zone.TotalDepthMm, missed.ShortfallMm, 1e-9);
        Assert.Equal(missed.Nearest.Components[0].NearBlurUm, missed.Nearest.Components[0].FarBlurUm, 1e-9);
        Assert.True(missed.Nearest.SlipForwardMm < 0 && missed.Nearest.SlipBackMm < 0);
        Assert.Equal(
            [DepthRemedyKind.FrameWider, DepthRemedyKind.Stack, DepthRemedyKind.PermitMoreBlur, DepthRemedyKind.HoldLessDepth],
            missed.Remedies.Select(remedy => remedy.Kind));
        Assert.Equal(2u, missed.Remedies[1].Frames);

        var wider = request.Clone();
        wider.Camera.Closeness = new() { Magnification = missed.Remedies[0].Magnification };
        Assert.True(Calls.DepthOfField.PlaceFocus(wider).Solution.Components[0].Sharp);
        wider.Camera.Closeness.Magnification *= 1.001;
        Assert.NotNull(Calls.DepthOfField.PlaceFocus(wider).NotReached);

        var field = request.Clone();
        field.Camera.Closeness = new() { FieldWidthMm = missed.Remedies[0].FieldWidthMm * 1.000001 };
        Assert.True(Calls.DepthOfField.PlaceFocus(field).Solution.Components[0].Sharp);
        Assert.Equal(missed.Remedies[0].FieldWidthMm * 24 / 36, missed.Remedies[0].FieldHeightMm, 1e-9);
        Assert.DoesNotContain(missed.Remedies.Skip(1), remedy => remedy.HasFieldWidthMm || remedy.HasFieldHeightMm);

        var blurred = request.Clone();
        blurred.PermittedBlur = new() { DiameterUm = missed.Remedies[2].PermittedBlurUm };
        Assert.True(Calls.DepthOfField.PlaceFocus(blurred).Solution.Components[0].Sharp);
    }

    [Fact]
    public void GivenAperture_TooWide_IsClosedAsTheRemedySays()
    {
        var request = Examples.PlaceFocus();
        request.Aperture = new() { Set = new() { Mark = "f/4" } };
        var missed = Calls.DepthOfField.PlaceFocus(request).NotReached;
        Assert.Equal(DepthObstacle.GivenAperture, missed.Obstacle);
        Assert.Equal(DepthRemedyKind.CloseAperture, missed.Remedies[0].Kind);
        Assert.Equal("f/9", missed.Remedies[0].Aperture.Mark);
        request.Aperture.Set.Mark = missed.Remedies[0].Aperture.Mark;
        Assert.True(Calls.DepthOfField.PlaceFocus(request).Solution.Components[0].Sharp);
    }

    [Theory]
    [InlineData(12, null)]
    [InlineData(-12, null)]
    [InlineData(5, "f/9")]
    public void FreshPlate_OutsideTheZone_IsHeldByTheSettingThatIsTold(double higherMm, string? given)
    {
        var request = Examples.PlaceFocus();
        request.FreshPlateHigherMm = higherMm;
        request.Aperture = given is null ? null : new() { Set = new() { Mark = given } };
        var answer = Calls.DepthOfField.PlaceFocus(request);
        Assert.False(answer.Solution.FreshPlateSharp);
        var setting = answer.FreshPlateSetting;
        Assert.True(setting.Aperture.FNumber >= answer.Solution.Aperture.FNumber);

        // Both heights are within the permitted blur at the mark, and one of them is not at a third stop wider.
        var evaluate = new EvaluateDepthOfFieldRequest
        {
            Camera = request.Camera.Clone(),
            Aperture = new() { Set = new() { Mark = setting.Aperture.Mark } },
            PermittedBlur = request.PermittedBlur,
        };
        evaluate.Camera.Closeness = new() { Magnification = setting.Focus.Magnification };
        var component = answer.Solution.Components[0];
        var moved = answer.Solution.FocusOffsetMm - setting.FocusOffsetMm;
        double[] standIn = [component.NearOffsetMm + moved, component.FarOffsetMm + moved];
        evaluate.OffsetsMm.Add(standIn.Concat(standIn.Select(offset => offset - answer.Solution.FreshPlateShiftMm)));
        var points = Calls.DepthOfField.EvaluateDepthOfField(evaluate).Points;
        Assert.All(points, point => Assert.True(point.BlurWithDiffractionUm <= answer.Solution.PermittedBlurUm));
        evaluate.Aperture.Set = new() { FNumber = setting.Aperture.FNumber / 1.13 };
        points = Calls.DepthOfField.EvaluateDepthOfField(evaluate).Points;
        Assert.Contains(points, point => point.BlurWithDiffractionUm > answer.Solution.PermittedBlurUm);
    }

    [Fact]
    public void FreshPlate_InTheZoneOrBeyondAnyAperture_HasNoSetting()
    {
        var request = Examples.PlaceFocus();
        request.FreshPlateHigherMm = 2;
        Assert.Null(Calls.DepthOfField.PlaceFocus(request).FreshPlateSetting);
        request.FreshPlateHigherMm = 60;
        var answer = Calls.DepthOfField.PlaceFocus(request);
        Assert.True(!answer.Solution.FreshPlateSharp && answer.FreshPlateSetting is null);
    }

    [Fact]
    public void FocusBeyondHyperfocal_NeverSlipsOutBackwards()
    {
        var request = Examples.PlaceFocus();
        request.Camera.Closeness = new() { Magnification = 0.001 };
        request.Aperture = new() { Set = new() { Mark = "f/32" } };
        var solution = Calls.DepthOfField.PlaceFocus(request).Solution;
        Assert.False(solution.HasSlipBackMm);
        Assert.True(solution.SlipForwardMm > 0);
    }
}
