using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Frames that fit a time.</summary>
/// <remarks>
/// <code>
/// n = floor(T / dt) + 1                                           (54)
/// stacks = floor(n / m)                                           (55)
/// </code>
/// <para>T: the time. dt: from frame to frame. m: frames of a stack. The first frame is taken when the time begins, so frames are
/// one more than intervals. A quotient that is a whole number but for rounding counts as whole. Source: counting.</para>
/// </remarks>
public static class FrameFit
{
    /// <summary>Frames, and whole stacks of them.</summary>
    /// <param name="timeS">The time, not below 0. [s]</param>
    /// <param name="intervalS">From frame to frame. [s]</param>
    /// <param name="framesInStack">Frames of a stack; null for single frames.</param>
    /// <param name="trail">Follows the sum.</param>
    public static (int Frames, int? Stacks) Count<TTrail>(double timeS, double intervalS, int? framesInStack, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("frames");
        var T = trail.Given("T", Guard.NotNegative(timeS), "s", "likely time of the step");
        var dt = trail.Given("dt", Guard.Positive(intervalS), "s", "frames.interval_s");
        var n = trail.Let("n", Floor(T / dt + 0.000001) + 1, "", "freshness (54)", "frames_that_fit");
        if (framesInStack is not { } inStack)
        {
            return ((int)n, null);
        }

        var m = trail.Given("m", Guard.Positive(inStack), "", "frames.frames_in_stack");
        return ((int)n, (int)trail.Let("stacks", Floor(n / m), "", "freshness (55)", "stacks_that_fit"));
    }
}
