using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Blur by a camera that is held in the hand.</summary>
/// <remarks>
/// <code>
/// h = (1 + m)²                                                     (45)
/// </code>
/// <para>h: blur by a turn about the sensor over that of a far subject by the same turn, m: image over subject size. A
/// sideways shift adds a blur in proportion to m. Source: a mailing-list derivation (second-hand), for a simple lens.</para>
/// </remarks>
public static class CameraShake
{
    /// <summary>Blur over that of a far subject. (45)</summary>
    /// <param name="magnification">Magnification m, not negative.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Factor<TTrail>(double magnification, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var m = trail.Given("m", Guard.NotNegative(magnification), "", "magnification");
        return trail.Let("h", (1 + m) * (1 + m), "", "exposure (45)", "camera_shake_factor");
    }
}
