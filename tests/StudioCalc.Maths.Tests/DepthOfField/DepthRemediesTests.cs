using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class DepthRemediesTests
{
    private static readonly ApertureChoice Choice = new(Depths.Thirds.Settable(), 0.55);

    [Fact]
    public void Remedies_Applied_HoldThePoints_AndALittleLessDoesNot() =>
        Gen.Select(Gen.OneOf(Depths.FromPupil, Depths.FromSensor), Depths.BlurMm).Sample((points, blur) =>
        {
            var focus = TwoPointFocus.Between(points)!;
            if (Choice.Widest(focus, blur) is not null)
            {
                return;
            }

            foreach (var remedy in DepthRemedies.For(points, blur, Choice, 0.55))
            {
                switch (remedy.Kind)
                {
                    case DepthRemedyKind.FrameWider:
                        var back = remedy.CameraBackMm!.Value;
                        Assert.Equal(remedy.FNumber, Choice.Widest(TwoPointFocus.Between(points.Moved(back)), blur));
                        Assert.Null(Choice.Widest(TwoPointFocus.Between(points.Moved(back * 0.999)), blur));
                        Assert.True(remedy.Lens!.Magnification < focus.Lens.Magnification);
                        break;
                    case DepthRemedyKind.PermitMoreBlur:
                        Assert.Equal(remedy.FNumber, Choice.Widest(focus, remedy.PermittedBlurMm!.Value));
                        Assert.Null(Choice.Widest(focus, remedy.PermittedBlurMm.Value * 0.999));
                        break;
                    case DepthRemedyKind.HoldLessDepth:
                        var share = remedy.DepthMm!.Value / points.DepthMm;
                        var plane = points.FromSensor ? focus.Lens.FromSensorMm : focus.Lens.FromEntrancePupilMm;
                        Assert.NotNull(Choice.Widest(TwoPointFocus.Between(points.Shrunk(share * (1 - 1e-9), plane)), blur));
                        Assert.Null(Choice.Widest(TwoPointFocus.Between(points.Shrunk(share * 1.001, plane)), blur));
                        break;
                    default:
                        Assert.Equal(DepthRemedyKind.Stack, remedy.Kind);
                        Assert.InRange(remedy.Frames!.Value, 2, DepthRemedies.MostFrames);
                        break;
                }
            }
        });

    [Fact]
    public void Stack_AsARemedy_IsThatOfItsOwnPlan_AndNoOtherApertureTakesFewerFrames() =>
        Gen.Select(Depths.FromPupil, Depths.BlurMm).Sample((points, blur) =>
        {
            var focus = TwoPointFocus.Between(points)!;
            if (Choice.Widest(focus, blur) is not null
                || DepthRemedies.For(points, blur, Choice, 0.55).FirstOrDefault(remedy => remedy.Kind == DepthRemedyKind.Stack) is not { } stack)
            {
                return;
            }

            var none = default(NoTrail);
            var front = new LensFocus(points.FocalLengthMm, focus.NearMagnification, points.PupilMagnification);
            foreach (var fNumber in Choice.FNumbers)
            {
                var input = new StackInput(front, fNumber, blur, points.DepthMm, 0.2, StackMethod.FocusRing) { WavelengthUm = 0.55 };
                if (input.DefocusBlurMm is not null)
                {
                    var plan = StackFrames.Plan(input, StackFrames.MostFrames, ref none);
                    Assert.True(plan.Frames.Count >= stack.Frames);
                    Assert.True(fNumber != stack.FNumber || plan.Frames.Count == stack.Frames);
                }
            }
        });
}
