using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A point on the scale of flash light: twice the logarithm of the f-number that it asks for at ISO 100.</summary>
/// <remarks>
/// <para>One more is twice the light. At sync speed or slower it does not depend on the shutter speed, so a flash level
/// and a <see cref="LightLevel"/> are never one type. The default is 0: f/1 at ISO 100.</para>
/// <code>
/// F = log2(N²) - log2(S / 100)                                    (5)
/// F = log2(100 H / C)          H in lx s, C in lx s               (6)
/// x = F - log2(N²) + log2(S / 100) - n                            (7)
/// N = 2^((F + log2(S / 100)) / 2)                                 (8)
/// </code>
/// <para>n: light lost in the lens, in stops. Source: derived in docs/models/exposure.md from the incident-light equation
/// of ISO 2720:1974 with illuminance times time for illuminance.</para>
/// </remarks>
public readonly record struct FlashLevel
{
    /// <summary>Makes a level from its flash value at ISO 100. [stops]</summary>
    public FlashLevel(double flashValueIso100Stops) => FlashValueIso100Stops = Guard.Finite(flashValueIso100Stops);

    /// <summary>Flash value at ISO 100. [stops]</summary>
    public double FlashValueIso100Stops { get; }

    /// <summary>The flash that metered right at an aperture and ISO. (5)</summary>
    public static FlashLevel FromSettings<TTrail>(double fNumber, double iso, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var N = trail.Given("N", Guard.Positive(fNumber), "", "aperture");
        var S = trail.Given("S", Guard.Positive(iso), "", "ISO");
        return new(trail.Let("F", Log2(N * N) - Log2(S / 100), "stops", "exposure (5)", answerField));
    }

    /// <summary>The flash that gives a luminous exposure at the receptor. (6)</summary>
    /// <param name="exposureLxS">Luminous exposure in lx s, above 0.</param>
    /// <param name="incidentConstant">Incident-light constant C in lx s, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds the level, for the trail.</param>
    public static FlashLevel FromExposure<TTrail>(double exposureLxS, double incidentConstant, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var H = trail.Given("H", Guard.Positive(exposureLxS), "lx s", "exposure");
        var C = trail.Given("C", Guard.Positive(incidentConstant), "lx s", "calibration constant");
        return new(trail.Let("F", Log2(100 * H / C), "stops", "exposure (6)", answerField));
    }

    /// <summary>How much more flash there is than <paramref name="settings"/> ask for: positive over-exposes. (7) [stops]</summary>
    public double StopsOver<TTrail>(CameraSettings settings, double lensLossStops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var F = trail.Given("F", FlashValueIso100Stops, "stops", "the flash value at ISO 100");
        var N = trail.Given("N", settings.FNumber, "", "aperture");
        var S = trail.Given("S", settings.Iso, "", "ISO");
        var n = trail.Given("n", Guard.Finite(lensLossStops), "stops", "lens_loss_stops");
        return trail.Let("x", F - Log2(N * N) + Log2(S / 100) - n, "stops", "exposure (7)", "light_over_setting_stops");
    }

    /// <summary>The f-number that the flash asks for at an ISO. (8)</summary>
    public double FNumberAt(double iso) => Pow(2, (FlashValueIso100Stops + Log2(Guard.Positive(iso) / 100)) / 2);
}
