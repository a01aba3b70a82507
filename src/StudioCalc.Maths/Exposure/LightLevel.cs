using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A point on the scale of continuous light: its exposure value at ISO 100. One more is twice the light.</summary>
/// <remarks>
/// <para>It rises when the light does, where the exposure value of settings rises when they admit less. There is no
/// subtraction operator: a reader would have to look up its sign. The default is exposure value 0.</para>
/// <code>
/// E = log2(N² / t) - log2(S / 100)                                (1)
/// E = log2(100 L / K)          L in cd/m², K in cd s/m²           (2)
/// E = log2(100 Ev / C)         Ev in lx, C in lx s                (3)
/// x = E - log2(N² / t) + log2(S / 100) - n                        (4)
/// </code>
/// <para>n: light lost in the lens, in stops. Source: ISO 2720:1974 as quoted in Wikipedia, "Exposure value"; derived in
/// docs/models/exposure.md.</para>
/// </remarks>
public readonly record struct LightLevel
{
    /// <summary>Makes a level from its exposure value at ISO 100. [stops]</summary>
    public LightLevel(double exposureValueIso100Stops) => ExposureValueIso100Stops = Guard.Finite(exposureValueIso100Stops);

    /// <summary>Exposure value at ISO 100. [stops]</summary>
    public double ExposureValueIso100Stops { get; }

    /// <summary>The light for which <paramref name="settings"/> are right. (1)</summary>
    public static LightLevel FromSettings<TTrail>(CameraSettings settings, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var N = trail.Given("N", settings.FNumber, "", "aperture");
        var t = trail.Given("t", settings.ShutterSpeedS, "s", "shutter speed");
        var S = trail.Given("S", settings.Iso, "", "ISO");
        return new(trail.Let("E", Log2(N * N / t) - Log2(S / 100), "stops", "exposure (1)", answerField));
    }

    /// <summary>The light that reads as a luminance. (2)</summary>
    /// <param name="luminanceCdPerM2">Luminance in cd/m², above 0.</param>
    /// <param name="reflectedConstant">Reflected-light constant K in cd s/m², above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds the level, for the trail.</param>
    public static LightLevel FromLuminance<TTrail>(double luminanceCdPerM2, double reflectedConstant, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var L = trail.Given("L", Guard.Positive(luminanceCdPerM2), "cd/m²", "luminance");
        var K = trail.Given("K", Guard.Positive(reflectedConstant), "cd s/m²", "calibration constant");
        return new(trail.Let("E", Log2(100 * L / K), "stops", "exposure (2)", answerField));
    }

    /// <summary>The light that reads as an illuminance. (3)</summary>
    /// <param name="illuminanceLx">Illuminance in lx, above 0.</param>
    /// <param name="incidentConstant">Incident-light constant C in lx s, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that holds the level, for the trail.</param>
    public static LightLevel FromIlluminance<TTrail>(double illuminanceLx, double incidentConstant, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var Ev = trail.Given("Ev", Guard.Positive(illuminanceLx), "lx", "illuminance");
        var C = trail.Given("C", Guard.Positive(incidentConstant), "lx s", "calibration constant");
        return new(trail.Let("E", Log2(100 * Ev / C), "stops", "exposure (3)", answerField));
    }

    /// <summary>The exposure value to set at an ISO: E + log2(S / 100). [stops]</summary>
    public double ExposureValueAtIsoStops(double iso) => ExposureValueIso100Stops + Log2(Guard.Positive(iso) / 100);

    /// <summary>How much more light there is than <paramref name="settings"/> ask for: positive over-exposes. (4) [stops]</summary>
    public double StopsOver<TTrail>(CameraSettings settings, double lensLossStops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var E = trail.Given("E", ExposureValueIso100Stops, "stops", "the light's exposure value at ISO 100");
        var N = trail.Given("N", settings.FNumber, "", "aperture");
        var t = trail.Given("t", settings.ShutterSpeedS, "s", "shutter speed");
        var S = trail.Given("S", settings.Iso, "", "ISO");
        var n = trail.Given("n", Guard.Finite(lensLossStops), "stops", "lens_loss_stops");
        return trail.Let("x", E - Log2(N * N / t) + Log2(S / 100) - n, "stops", "exposure (4)", "light_over_setting_stops");
    }
}
