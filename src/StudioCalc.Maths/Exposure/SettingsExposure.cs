using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What camera settings admit, and the light that they suit.</summary>
/// <remarks>
/// <code>
/// A  = log2(N²)          T = -log2(t)                             (9)
/// B  = A + T                                                      (10)
/// E  = B - log2(S / 100)                                          (11)
/// L  = K / 100 * 2^E     in cd/m²                                 (12)
/// Ev = C / 100 * 2^E     in lx                                    (13)
/// Sv = log2(S / 3.125)   Bv = A + T - Sv                          (25)
/// r  = pi K / C                                                   (26)
/// </code>
/// <para>B is the exposure value of the settings: one more admits half the light. r is the reflectance of a matt surface
/// on which both meters agree. Source: ISO 2720:1974 and the additive
/// system of photographic exposure, as quoted in Wikipedia, "Exposure value"; derived in docs/models/exposure.md.</para>
/// </remarks>
public sealed record SettingsExposure
{
    /// <summary>Additive value of the aperture, Av. [stops]</summary>
    public required double ApertureValueStops { get; init; }

    /// <summary>Additive value of the shutter speed, Tv. [stops]</summary>
    public required double TimeValueStops { get; init; }

    /// <summary>Additive value of the ISO, Sv. [stops]</summary>
    public required double SpeedValueStops { get; init; }

    /// <summary>Additive value of the luminance that the settings suit, Bv. [stops]</summary>
    public required double BrightnessValueStops { get; init; }

    /// <summary>Reflectance of a matt surface on which both meters agree.</summary>
    public required double MeterReflectance { get; init; }

    /// <summary>Exposure value of aperture and shutter speed. [stops]</summary>
    public required double ExposureValueStops { get; init; }

    /// <summary>The light that the settings suit.</summary>
    public required LightLevel Suits { get; init; }

    /// <summary>Luminance of that light. [cd/m²]</summary>
    public required double LuminanceCdPerM2 { get; init; }

    /// <summary>Illuminance of that light. [lx]</summary>
    public required double IlluminanceLx { get; init; }

    /// <summary>Evaluates <paramref name="settings"/>.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="reflectedConstant">Reflected-light constant K in cd s/m², above 0.</param>
    /// <param name="incidentConstant">Incident-light constant C in lx s, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static SettingsExposure Evaluate<TTrail>(
        CameraSettings settings, double reflectedConstant, double incidentConstant, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var N = trail.Given("N", settings.FNumber, "", "aperture", "settings.aperture.f_number");
        var t = trail.Given("t", settings.ShutterSpeedS, "s", "shutter speed", "settings.shutter_speed.time_s");
        var S = trail.Given("S", settings.Iso, "", "ISO", "settings.iso.speed");
        var K = trail.Given(
            "K", Guard.Positive(reflectedConstant), "cd s/m²", "reflected_constant", "settings.reflected_constant");
        var C = trail.Given("C", Guard.Positive(incidentConstant), "lx s", "incident_constant", "settings.incident_constant");
        var A = trail.Let("A", Log2(N * N), "stops", "exposure (9)", "settings.aperture_value_stops");
        var T = trail.Let("T", 0 - Log2(t), "stops", "exposure (9)", "settings.time_value_stops");
        var B = trail.Let("B", A + T, "stops", "exposure (10)", "settings.exposure_value_stops");
        var E = trail.Let("E", B - Log2(S / 100), "stops", "exposure (11)", "settings.exposure_value_iso100_stops");
        var Sv = trail.Let("Sv", Log2(S / 3.125), "stops", "exposure (25)", "settings.speed_value_stops");
        var pi = trail.Given("pi", PI, "", "pi");
        return new()
        {
            ApertureValueStops = A,
            TimeValueStops = T,
            SpeedValueStops = Sv,
            BrightnessValueStops = trail.Let("Bv", A + T - Sv, "stops", "exposure (25)", "settings.brightness_value_stops"),
            MeterReflectance = trail.Let("r", pi * K / C, "", "exposure (26)", "settings.meter_reflectance"),
            ExposureValueStops = B,
            Suits = new(E),
            LuminanceCdPerM2 = trail.Let("L", K / 100 * Pow(2, E), "cd/m²", "exposure (12)", "settings.luminance_cd_per_m2"),
            IlluminanceLx = trail.Let("Ev", C / 100 * Pow(2, E), "lx", "exposure (13)", "settings.illuminance_lx"),
        };
    }
}
