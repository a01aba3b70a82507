using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>The time from frame to frame.</summary>
/// <remarks>
/// <code>
/// tau = max(r, c, o)                                              (40)
/// </code>
/// <para>r: the flash recycles. c: the camera is ready for the next frame. o: whoever takes the picture is. All in s. They run side by
/// side, so the slowest counts, not their sum. Source: definition.</para>
/// </remarks>
public static class FrameTime
{
    /// <summary>Seconds from frame to frame. (40)</summary>
    /// <param name="recycleS">Flash recycling; 0 without flash. [s]</param>
    /// <param name="cameraS">Camera cycle. [s]</param>
    /// <param name="operatorS">What a person needs. [s]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Evaluate<TTrail>(double recycleS, double cameraS, double operatorS, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("frame time");
        var r = trail.Given("r", Guard.NotNegative(recycleS), "s", "flash recycles");
        var c = trail.Given("c", Guard.NotNegative(cameraS), "s", "camera is ready");
        var o = trail.Given("o", Guard.NotNegative(operatorS), "s", "operator is ready");
        return trail.Let("tau", Max(r, Max(c, o)), "s", "shoot plan (40)");
    }
}
