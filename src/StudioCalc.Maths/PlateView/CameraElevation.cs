namespace StudioCalc.Maths;

/// <summary>Elevations of a camera under either way of counting.</summary>
/// <remarks>
/// <code>
/// E = 90 - Z                                    (20)
/// </code>
/// <para>E: elevation from the table, 0 level with it and 90 straight down. Z: the same counted from the vertical. [deg] Source:
/// definition; guides use either.</para>
/// </remarks>
public static class CameraElevation
{
    /// <summary>Elevation from the table E, of one counted from the vertical. (20) [deg]</summary>
    /// <param name="fromVerticalDeg">Elevation from the vertical Z. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double FromVerticalDeg<TTrail>(double fromVerticalDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var Z = trail.Given("Z", Guard.Finite(fromVerticalDeg), "deg", "elevation, counted from the vertical");
        return trail.Let("E", 90 - Z, "deg", "plate view (20)", answerField);
    }
}
