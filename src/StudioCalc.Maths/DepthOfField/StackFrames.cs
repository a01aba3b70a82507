using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The frames that hold a depth.</summary>
/// <remarks>
/// <code>
/// d    = sqrt(c² - a²)                                       (41)
/// rail:  step = D (1 - o)                                    (50)
///        n    = max(1, ceil((S - D) / step) + 1)             (51)
/// ring:  m    = (f / xn - w) / (1 - f / (p xn))              (52)
///        next xn = xf - o (xf - xn)                          (53)
/// </code>
/// <para>c: permitted blur. a: Airy disc (13) at the front of the subject, where it is largest. d: blur that is left for defocus.
/// D: depth that one frame holds within d. S: depth of the subject. o: overlap. xn, xf: near and far limit from the entrance pupil,
/// by (10) and (11); w by (7) with d. By focusing rail magnification stays that at the front, so every step is the same. By focus ring
/// depth grows towards the back: (52) puts the near limit at xn, first at the front of the subject, and (53) goes on until a far
/// limit covers the back. A frame whose far limit is infinite ends the stack; it is focused no farther than that takes, at
/// m = w. By focus ring the focal length and the place of the entrance pupil are taken to stay, which lenses that focus inside
/// only come near. Source: interval covering, derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public sealed record StackFrames
{
    /// <summary>The most frames of a stack.</summary>
    public const int MostFrames = 10000;

    private const string BlurIs = "blur by defocus that passes as sharp";

    // Rounding error of a whole number of steps, and of a limit that meets the back.
    private const double Rounding = 1e-9;

    /// <summary>The frames in order, front first; fewer than needed where a limit stood in the way.</summary>
    public required IReadOnlyList<PlannedFrame> Frames { get; init; }

    /// <summary>Whether the frames hold the whole depth.</summary>
    public required bool IsWhole { get; init; }

    /// <summary>Depth that the first frame holds; may be infinite. [mm]</summary>
    public double DepthPerFrameMm => Frames[0].FarMm - Frames[0].NearMm;

    /// <summary>Travel from frame to frame by focusing rail; null by focus ring, or for one frame that reaches to infinity. [mm]</summary>
    public double? StepMm { get; init; }

    /// <summary>Plans up to a number of frames.</summary>
    /// <param name="input">What the stack is to hold; diffraction must leave blur for defocus.</param>
    /// <param name="mostFrames">The most frames to plan, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static StackFrames Plan<TTrail>(StackInput input, int mostFrames, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        Guard.Positive(input.Lens.Magnification);
        Guard.Positive(input.DepthMm);
        Guard.Positive(1 - Guard.NotNegative(input.OverlapShare));
        var blur = Left(input, ref trail);
        return input.Method == StackMethod.FocusingRail
            ? ByRail(input, blur, mostFrames, ref trail)
            : ByRing(input, blur, mostFrames, ref trail);
    }

    private static double Left<TTrail>(StackInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (input.DefocusBlurMm is null)
        {
            throw new ArgumentException("Diffraction leaves no blur for defocus.", nameof(input));
        }

        if (input.WavelengthUm is not { } wavelength)
        {
            return Guard.Positive(input.PermittedBlurMm);
        }

        trail.Section("diffraction");
        var a = Diffraction.AiryDiscUm(SharpZone.EffectiveFNumber(input.Lens, input.FNumber, ref trail), wavelength, ref trail);
        var c = trail.Given("c", input.PermittedBlurMm, "mm", "permitted blur");
        return trail.Let("d", Sqrt((c - a / 1000) * (c + a / 1000)), "mm", "depth of field (41)");
    }

    private static StackFrames ByRail<TTrail>(StackInput input, double blurMm, int mostFrames, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("one frame");
        var lens = input.Lens;
        var zone = SharpZone.Evaluate(lens, input.FNumber, blurMm, ref trail, blurIs: BlurIs);
        var near = zone.NearDepthMm;
        var x = lens.FromEntrancePupilMm;
        if (zone.FarIsInfinite)
        {
            return new() { Frames = [new(near, lens.Magnification, x, 0, double.PositiveInfinity)], IsWhole = true };
        }

        var far = zone.FarDepthMm;
        trail.Section("steps");
        var D = trail.Let("D", near + far, "mm", "depth of field (8), (9)");
        var o = trail.Given("o", input.OverlapShare, "", "overlap_share");
        var S = trail.Given("S", input.DepthMm, "mm", "depth_mm");
        var step = trail.Let("step", D * (1 - o), "mm", "depth of field (50)");
        var n = trail.Let("n", Max(1, Ceiling((S - D) / step - 0.000000001) + 1), "", "depth of field (51)");
        var frames = new PlannedFrame[(int)Min(n, mostFrames)];
        for (var i = 0; i < frames.Length; i++)
        {
            frames[i] = new(near + i * step, lens.Magnification, x, i * step, D + i * step);
        }

        return new() { Frames = frames, IsWhole = n <= mostFrames, StepMm = step };
    }

    private static StackFrames ByRing<TTrail>(StackInput input, double blurMm, int mostFrames, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("first frame");
        var f = trail.Given("f", input.Lens.FocalLengthMm, "mm", "focal length at this focus");
        var m = trail.Given("m", input.Lens.Magnification, "", "magnification at the front");
        var p = trail.Given("p", input.Lens.PupilMagnification, "", "pupil_magnification");
        var N = trail.Given("N", Guard.Positive(input.FNumber), "", "set f-number");
        var c = trail.Given("c", Guard.Positive(blurMm), "mm", BlurIs);
        var w = trail.Let("w", N * c / f, "", "depth of field (7)");
        var xn = trail.Let("xn", f * (1 / m + 1 / p), "mm", "depth of field (1)");
        var m1 = trail.Let("m1", Max(w, (f / xn - w) / (1 - f / (p * xn))), "", "depth of field (52)");
        var o = input.OverlapShare;
        var (front, back) = (xn, xn + input.DepthMm);
        List<PlannedFrame> frames = [Frame(m1, xn)];
        while (frames[^1].FarMm < input.DepthMm * (1 - Rounding) && frames.Count < mostFrames)
        {
            var xf = front + frames[^1].FarMm;
            xn = xf - o * (xf - xn);
            frames.Add(Frame(Max(w, (f / xn - w) / (1 - f / (p * xn))), xn));
        }

        trail.Section("march");
        trail.Given("back", back, "mm", "back of the subject from the entrance pupil");
        trail.Given("n", frames.Count, "", "depth of field (52), (53), repeated until a far limit covers the back");
        if (double.IsFinite(frames[^1].FarMm))
        {
            trail.Given("xl", front + frames[^1].FarMm, "mm", "the last far limit, depth of field (11)");
        }

        return new() { Frames = frames, IsWhole = frames[^1].FarMm >= input.DepthMm * (1 - Rounding) };

        PlannedFrame Frame(double magnification, double near)
        {
            var x = f * (1 / magnification + 1 / p);
            return magnification > w
                ? new(x - front, magnification, x, near - front, f * (1 + magnification / p) / (magnification - w) - front)
                : new(x - front, magnification, x, f * (1 + w / p) / (2 * w) - front, double.PositiveInfinity);
        }
    }
}
