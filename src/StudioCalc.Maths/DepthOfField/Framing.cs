using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a lens takes in.</summary>
/// <remarks>
/// <code>
/// m = W / F                                     (23)
/// </code>
/// <para>W: side of the sensor. F: the same side of the field in the focused plane.</para>
/// </remarks>
public static class Framing
{
    /// <summary>Magnification from a side of the sensor and of the field. (23)</summary>
    /// <param name="sensorSideMm">Side of the sensor W, above 0. [mm]</param>
    /// <param name="fieldSideMm">Side of the field F, above 0. [mm]</param>
    /// <param name="trail">Follows the sum; it must hold F already.</param>
    public static double MagnificationOf<TTrail>(double sensorSideMm, double fieldSideMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var W = trail.Given("W", Guard.Positive(sensorSideMm), "mm", "width of the sensor");
        var F = Guard.Positive(fieldSideMm);
        return trail.Let("m", W / F, "", "depth of field (23)");
    }
}
