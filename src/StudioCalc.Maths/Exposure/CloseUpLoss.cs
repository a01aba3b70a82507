using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Light lost by focusing close.</summary>
/// <remarks>
/// <code>
/// c  = 2 log2(1 + m / p)          forward                         (16)
/// c  = 2 log2((1 + p m) / p)      mounted back to front           (17)
/// c  = log2(X)                    X: the lens's own factor        (18)
/// Ne = N 2^(c / 2)                                                (19)
/// </code>
/// <para>m: image over subject size. p: exit pupil over entrance pupil diameter; some writers use the inverse. Ne: the
/// f-number that the sensor sees. (16) and (17) hold for a lens that focuses by moving as a whole. A lens that focuses
/// inside shortens its focal length and loses less, up to half a stop at life size: (18) is then the right one. A lens
/// back to front with p above 1 may gain light far off; c is then negative. Source: a large-format forum's derivation
/// through the pupils (second-hand); for p = 1 a macro lens maker's manual prints the same numbers.</para>
/// </remarks>
public static class CloseUpLoss
{
    /// <summary>Loss of a lens the right way round. (16) [stops]</summary>
    /// <param name="magnification">Magnification m, not negative.</param>
    /// <param name="pupilMagnification">Pupil magnification p, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Forward<TTrail>(double magnification, double pupilMagnification, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (m, p) = Given(magnification, pupilMagnification, ref trail);
        return trail.Let("c", 2 * Log2(1 + m / p), "stops", "exposure (16)");
    }

    /// <summary>Loss of a lens mounted back to front. (17) [stops]</summary>
    /// <param name="magnification">Magnification m, not negative.</param>
    /// <param name="pupilMagnification">Pupil magnification p of the lens the right way round, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Reversed<TTrail>(double magnification, double pupilMagnification, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (m, p) = Given(magnification, pupilMagnification, ref trail);
        return trail.Let("c", 2 * Log2((1 + p * m) / p), "stops", "exposure (17)");
    }

    /// <summary>Loss by a factor from the lens's table, or measured. (18) [stops]</summary>
    /// <param name="exposureFactor">Exposure factor X, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double FromFactor<TTrail>(double exposureFactor, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var X = trail.Given("X", Guard.Positive(exposureFactor), "", "exposure_factor");
        return trail.Let("c", Log2(X), "stops", "exposure (18)");
    }

    /// <summary>The f-number that the sensor sees. (19)</summary>
    /// <param name="fNumber">Set f-number N, above 0.</param>
    /// <param name="lossStops">Light lost by focusing close, c. [stops]</param>
    public static double EffectiveFNumber(double fNumber, double lossStops) =>
        Guard.Positive(fNumber) * Pow(2, Guard.Finite(lossStops) / 2);

    private static (double M, double P) Given<TTrail>(double magnification, double pupilMagnification, ref TTrail trail)
        where TTrail : struct, ITrail =>
        (trail.Given("m", Guard.NotNegative(magnification), "", "magnification"),
            trail.Given("p", Guard.Positive(pupilMagnification), "", "pupil_magnification"));
}
