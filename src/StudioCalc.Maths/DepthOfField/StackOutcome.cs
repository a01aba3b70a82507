using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What is in the way of a stack.</summary>
public enum StackObstacle
{
    /// <summary>It takes longer than the available time.</summary>
    Time,

    /// <summary>It takes more frames than a stack may have.</summary>
    Frames,

    /// <summary>Diffraction alone blurs as much as is permitted: no frame holds any depth.</summary>
    Diffraction,
}

/// <summary>Whether a stack holds anything, and fits the time and the limit of frames.</summary>
/// <remarks>
/// <code>
/// i = max(recycle, settle)        t = settle + (n - 1) i     (54)
/// k = floor((T - settle) / i) + 1                            (55)
/// </code>
/// <para>i: interval between frames, as the camera settles while the flash recycles. t: time from the settling before the first
/// frame to the last frame. k: frames that fit the time T. Source: common sense; docs/models/depth-of-field.md.</para>
/// </remarks>
public sealed record StackOutcome
{
    private const double Rounding = 1e-9;

    /// <summary>What is in the way; null when the stack fits.</summary>
    public StackObstacle? Obstacle { get; init; }

    /// <summary>The frames that fit, all of them where nothing is in the way; null when not even one does.</summary>
    public StackFrames? Stack { get; init; }

    /// <summary>Distance from the first focused plane to the last of <see cref="Stack"/>. [mm]</summary>
    public double TravelMm { get; init; }

    /// <summary>Time of <see cref="Stack"/>; null when the times are not known. [s]</summary>
    public double? TimeS { get; init; }

    /// <summary>Frames of the whole stack; null above the limit.</summary>
    public int? FramesNeeded { get; init; }

    /// <summary>Time that is missing for them; null above the limit. [s]</summary>
    public double? ShortfallS { get; init; }

    /// <summary>Depth from the front that <see cref="Stack"/> holds. [mm]</summary>
    public double DepthThatFitsMm { get; init; }

    /// <summary>Depth that is left without a frame. [mm]</summary>
    public double ShortfallMm { get; init; }

    /// <summary>Plans a stack.</summary>
    /// <param name="input">What it is to hold.</param>
    /// <param name="times">How long its frames take; null when not known.</param>
    /// <param name="trail">Follows the sum.</param>
    public static StackOutcome Plan<TTrail>(StackInput input, StackTimes? times, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.DefocusBlurMm is null)
        {
            return Nothing(input, ref trail);
        }

        var most = MostFrames(times);
        var whole = StackFrames.Plan(input, StackFrames.MostFrames, ref trail);
        var fits = whole.IsWhole && whole.Frames.Count <= most;
        var needed = (double)whole.Frames.Count;
        double? needs = null;
        double? takes = null;
        if (times is not null)
        {
            trail.Section("time");
            var recycle = trail.Given("recycle", times.RecycleS, "s", "recycle_time, 0 without one");
            var settle = trail.Given("settle", times.SettleS, "s", "settle_time, 0 without one");
            var i = trail.Let("i", Max(recycle, settle), "s", "depth of field (54)");
            var n = trail.Given("n", needed, "", whole.IsWhole ? "frames of the stack" : "the most frames of a stack");
            needs = trail.Let("t", settle + (n - 1) * i, "s", "depth of field (54)");
            takes = settle + (Min(n, most) - 1) * i;
        }

        trail.Section("answer");
        if (fits)
        {
            return new()
            {
                Stack = whole,
                TimeS = takes,
                FramesNeeded = whole.Frames.Count,
                DepthThatFitsMm = input.DepthMm,
                TravelMm = Travel(whole, "solution.", ref trail),
            };
        }

        var stack = most < 1 ? null : whole with { Frames = [.. whole.Frames.Take(most)], IsWhole = false };
        var travel = stack is null ? 0 : Travel(stack, "not_reached.nearest.", ref trail);
        var S = trail.Given("S", input.DepthMm, "mm", "depth_mm");
        var held = trail.Given(
            "held", stack is null ? 0 : Min(input.DepthMm, stack.Frames[^1].FarMm), "mm", "depth that the frames hold that fit",
            "not_reached.depth_that_fits_mm");
        return new()
        {
            Obstacle = whole.IsWhole ? StackObstacle.Time : StackObstacle.Frames,
            Stack = stack,
            TravelMm = travel,
            TimeS = stack is null ? null : takes,
            FramesNeeded = whole.IsWhole ? whole.Frames.Count : null,
            ShortfallS = whole.IsWhole ? needs - times!.AvailableS : null,
            DepthThatFitsMm = held,
            ShortfallMm = trail.Let("short", S - held, "mm", "depth that is left", "not_reached.shortfall_mm"),
        };
    }

    private static StackOutcome Nothing<TTrail>(StackInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("diffraction");
        var Ne = SharpZone.EffectiveFNumber(input.Lens, input.FNumber, ref trail);
        Diffraction.AiryDiscUm(Ne, input.WavelengthUm!.Value, ref trail);
        trail.Given("c", input.PermittedBlurMm, "mm", "permitted blur");
        trail.Section("answer");
        var S = trail.Given("S", input.DepthMm, "mm", "depth_mm");
        var held = trail.Given("held", 0, "mm", "diffraction leaves no depth", "not_reached.depth_that_fits_mm");
        return new()
        {
            Obstacle = StackObstacle.Diffraction,
            ShortfallMm = trail.Let("short", S - held, "mm", "depth that is left", "not_reached.shortfall_mm"),
        };
    }

    // (55)
    internal static int MostFrames(StackTimes? times)
    {
        if (times?.AvailableS is not { } available)
        {
            return StackFrames.MostFrames;
        }

        var interval = Max(Guard.NotNegative(times.RecycleS), Guard.NotNegative(times.SettleS));
        var left = available - times.SettleS;
        return left < -Rounding ? 0
            : interval == 0 ? StackFrames.MostFrames
            : (int)Min(StackFrames.MostFrames, Floor(left / interval + Rounding) + 1);
    }

    private static double Travel<TTrail>(StackFrames stack, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var k = trail.Given("k", stack.Frames.Count, "", "frames", field + "frames");
        if (stack.StepMm is { } ofRail)
        {
            var step = trail.Given("step", ofRail, "mm", "depth of field (50)", field + "step_mm");
            return trail.Let("travel", (k - 1) * step, "mm", "all steps", field + "travel_mm");
        }

        var first = trail.Given("first", stack.Frames[0].FocusMm, "mm", "first focus behind the front", field + "positions[0].focus_offset_mm");
        var last = trail.Given("last", stack.Frames[^1].FocusMm, "mm", "last focus behind the front");
        return trail.Let("travel", last - first, "mm", "from the first focus to the last", field + "travel_mm");
    }
}
