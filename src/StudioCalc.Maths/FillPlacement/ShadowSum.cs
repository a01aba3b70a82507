using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What shadows take, as share and in stops.</summary>
/// <remarks>
/// <code>
/// S = 1 - left / e                       shaded share          (83)
/// x = log2(left / e)                     change                (84)
/// </code>
/// <para>e, left: light without and with what stands in the way, of one source or of all, each as metered and flash added to what stays
/// on over the shutter speed, (15). Source: definitions.</para>
/// </remarks>
public static class ShadowSum
{
    /// <summary>Shaded share S; 0 without light. (83)</summary>
    /// <param name="light">Light without things in the way e.</param>
    /// <param name="left">Light with them.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double Share<TTrail>(double light, double left, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var e = trail.Given("e", light, "", "light without anything in the way, fill placement (80)");
        var l = trail.Given("l", left, "", "light left, fill placement (81)");
        return e > 0
            ? trail.Let("S", 1 - l / e, "", "fill placement (83)", answerField)
            : trail.Given("S", 0, "", "there is no light to take", answerField);
    }

    /// <summary>Change x; null where nothing is left, or nothing was there. (84) [stops]</summary>
    /// <param name="light">Light without things in the way e.</param>
    /// <param name="left">Light with them.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double? ChangeStops<TTrail>(double light, double left, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        if (!(light > 0 && left > 0))
        {
            return null;
        }

        var e = trail.Given("e", light, "", "light without anything in the way, fill placement (80)");
        var l = trail.Given("l", left, "", "light left, fill placement (81)");
        return trail.Let("x", Log2(l / e), "stops", "fill placement (84)", answerField);
    }
}
