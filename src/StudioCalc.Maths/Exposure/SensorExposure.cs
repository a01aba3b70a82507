namespace StudioCalc.Maths;

/// <summary>What reaches the sensor, in the terms of ISO 12232.</summary>
/// <remarks>
/// <code>
/// H  = q L t / N²              exposure, in lx s                  (24)
/// I  = 10 / H                  exposure index                     (24)
/// Hs = 78 / S                  exposure that clips, in lx s       (24)
/// Ls = Hs N² / (q t)           luminance that clips, in cd/m²     (24)
/// </code>
/// <para>Far from close-up, without filters and flare. Hs and Ls hold only where the set ISO is a saturation speed;
/// cameras rate theirs by standard output sensitivity or recommended exposure index and clip later. Source: ISO
/// 12232:2006 as implemented in the test suite of the open library colour-hdri; 78 and 10 also in Wikipedia, "Film
/// speed" (the standard's text not seen).</para>
/// </remarks>
public sealed record SensorExposure
{
    /// <summary>Exposure that clips, times the saturation speed. [lx s]</summary>
    public const double SaturationConstant = 78;

    /// <summary>Exposure of the mid-tone, times its exposure index. [lx s]</summary>
    public const double IndexConstant = 10;

    /// <summary>Exposure at the sensor. [lx s]</summary>
    public required double ExposureLxS { get; init; }

    /// <summary>The exposure index that it would be rated at.</summary>
    public required double ExposureIndex { get; init; }

    /// <summary>The exposure that clips. [lx s]</summary>
    public required double SaturationLxS { get; init; }

    /// <summary>The luminance that clips. [cd/m²]</summary>
    public required double SaturationCdPerM2 { get; init; }

    /// <summary>What a luminance gives at the sensor. (24)</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="luminanceCdPerM2">Luminance L, above 0. [cd/m²]</param>
    /// <param name="lensFactor">Lens factor q, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public static SensorExposure Evaluate<TTrail>(
        CameraSettings settings, double luminanceCdPerM2, double lensFactor, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var N = trail.Given("N", settings.FNumber, "", "aperture");
        var t = trail.Given("t", settings.ShutterSpeedS, "s", "shutter speed");
        var S = trail.Given("S", settings.Iso, "", "ISO");
        var L = trail.Given("L", Guard.Positive(luminanceCdPerM2), "cd/m²", "luminance");
        var q = trail.Given("q", Guard.Positive(lensFactor), "", "lens factor", "settings.sensor.lens_factor");
        var H = trail.Let("H", q * L * t / (N * N), "lx s", "exposure (24)", "settings.sensor.focal_plane_exposure_lx_s");
        var I = trail.Let("I", IndexConstant / H, "", "exposure (24)", "settings.sensor.exposure_index", "10 / H");
        var Hs = trail.Let("Hs", SaturationConstant / S, "lx s", "exposure (24)", "settings.sensor.saturation_exposure_lx_s", "78 / S");
        var Ls = trail.Let(
            "Ls", Hs * N * N / (q * t), "cd/m²", "exposure (24)", "settings.sensor.saturation_luminance_cd_per_m2");
        return new() { ExposureLxS = H, ExposureIndex = I, SaturationLxS = Hs, SaturationCdPerM2 = Ls };
    }
}
