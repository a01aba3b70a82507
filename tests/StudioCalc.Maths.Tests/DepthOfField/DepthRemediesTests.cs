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
                        Assert.InRange(remedy.Frames!.Value, 2, FocusFrames.Most);
                        break;
                }
            }
        });

    [Fact]
    public void Frames_OfAStack_AreAsManyAsARailNeedsOrFewer()
    {
        var focus = TwoPointFocus.Between(new() { FocalLengthMm = 100, NearMm = 420, FarMm = 460 })!;
        var (m, n, c) = (focus.NearMagnification, 5.6, 0.015);
        var front = SharpZone.Evaluate(new(100, m), n, c).TotalDepthMm;
        var rail = (int)Math.Ceiling((40 - front) / (front * (1 - FocusFrames.Overlap))) + 1;
        var ring = FocusFrames.Count(focus, n, c)!.Value;
        Assert.InRange(ring, rail / 2, rail);
        Assert.True(FocusFrames.Count(focus, n, 2 * c) < ring);
        Assert.Null(FocusFrames.Count(focus, n, c / 100));
    }

    [Fact]
    public void Frames_OfAStack_EachStartWithinTheLastOnesZone()
    {
        var focus = TwoPointFocus.Between(new() { FocalLengthMm = 100, PupilMagnification = 0.8, NearMm = 500, FarMm = 560 })!;
        var (x, frames) = (focus.NearMm, 0);
        while (x < focus.FarMm)
        {
            var (near, far) = (x, 2 * x);
            for (var i = 0; i < 100; i++)
            {
                var middle = (near + far) / 2;
                var tried = SharpZone.Evaluate(focus.Lens.RefocusedAt(middle), 8, 0.02);
                (near, far) = tried.NearFromEntrancePupilMm < x ? (middle, far) : (near, middle);
            }

            var zone = SharpZone.Evaluate(focus.Lens.RefocusedAt(near), 8, 0.02);
            frames++;
            x = zone.FarFromEntrancePupilMm >= focus.FarMm
                ? double.PositiveInfinity
                : zone.FarFromEntrancePupilMm - 0.2 * (zone.FarFromEntrancePupilMm - x);
        }

        Assert.Equal(frames, FocusFrames.Count(focus, 8, 0.02));
    }
}
