using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Blur on the sensor by a subject that moves while it is exposed.</summary>
/// <remarks>
/// <code>
/// w = v cos(a)              speed along the sensor's plane         (20)
/// t = b / (1000000 m w)     b in µm, w in m/s                      (21)
/// b = 1000000 m w t                                               (22)
/// </code>
/// <para>m: image over subject size. a: angle between the motion and the sensor's plane. t: shutter speed for light that
/// stays on, t0.1 for flash. Motion straight towards the camera has no limit here: the growth of the image is left out.
/// Source: geometry; common practice allows one or two pixels.</para>
/// </remarks>
public static class MotionBlur
{
    /// <summary>Speed along the sensor's plane, 0 at a right angle to it. (20) [m/s]</summary>
    /// <param name="speedMPerS">Speed v, above 0. [m/s]</param>
    /// <param name="angleDeg">Angle a, from 0 to 90. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double AcrossMPerS<TTrail>(double speedMPerS, double angleDeg, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var v = trail.Given("v", Guard.Positive(speedMPerS), "m/s", "speed_m_per_s");
        var a = trail.Given("a", Guard.Finite(angleDeg) * PI / 180, "rad", "angle_deg, 180 degrees are pi");
        return angleDeg >= 90
            ? trail.Given("w", 0, "m/s", "nothing moves across")
            : trail.Let("w", v * Cos(a), "m/s", "exposure (20)");
    }

    /// <summary>The longest time within a blur, or null when nothing moves across. (21) [s]</summary>
    /// <param name="permittedBlurUm">Permitted blur b on the sensor, above 0. [µm]</param>
    /// <param name="magnification">Magnification m, above 0.</param>
    /// <param name="acrossMPerS">Speed along the sensor's plane w, not negative. [m/s]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds the time, for the trail.</param>
    public static double? LongestExposureS<TTrail>(
        double permittedBlurUm, double magnification, double acrossMPerS, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var w = Guard.NotNegative(acrossMPerS);
        if (w == 0)
        {
            return null;
        }

        var b = trail.Given("b", Guard.Positive(permittedBlurUm), "µm", "permitted_blur_um");
        var m = trail.Given("m", Guard.Positive(magnification), "", "magnification");
        return trail.Let("tMotion", b / (1000000 * m * w), "s", "exposure (21)", answerField);
    }

    /// <summary>Blur on the sensor in a time. (22) [µm]</summary>
    /// <param name="timeS">Time t, above 0. [s]</param>
    /// <param name="magnification">Magnification m, above 0.</param>
    /// <param name="acrossMPerS">Speed along the sensor's plane w, not negative. [m/s]</param>
    /// <param name="trail">Follows the sum; it must hold w already.</param>
    /// <param name="answerField">The answer field that holds the blur, for the trail.</param>
    public static double BlurUm<TTrail>(
        double timeS, double magnification, double acrossMPerS, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var w = Guard.NotNegative(acrossMPerS);
        var t = trail.Given("t", Guard.Positive(timeS), "s", "time of exposure");
        var m = trail.Given("m", Guard.Positive(magnification), "", "magnification");
        return trail.Let("b", 1000000 * m * w * t, "µm", "exposure (22)", answerField);
    }
}
