using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What says how far the mid-tone lies below clipping.</summary>
public enum HeadroomDefinition
{
    /// <summary>Saturation speed against exposure index: 78/S over 10/S.</summary>
    SaturationSpeed,

    /// <summary>Saturation speed against a meter's mid-tone: 78/S over q K/S.</summary>
    Meter,

    /// <summary>Measured on this camera.</summary>
    Measured,

    /// <summary>Diffuse white lies half a stop below clipping.</summary>
    DiffuseWhite,
}

/// <summary>A surface and what is known of clipping.</summary>
public sealed record HeadroomInput
{
    /// <summary>Reflectance of the surface.</summary>
    public required double Reflectance { get; init; }

    /// <summary>How far the light on it stands over the setting. [stops]</summary>
    public double LightOverSettingStops { get; init; }

    /// <summary>What says where clipping is.</summary>
    public HeadroomDefinition Definition { get; init; }

    /// <summary>From mid-tone to clipping as measured; used with that definition only. [stops]</summary>
    public double MeasuredHeadroomStops { get; init; }

    /// <summary>Reflectance of the mid-tone, or null for the definition's own.</summary>
    public double? MidToneReflectance { get; init; }

    /// <summary>Reflected-light constant K of the meter. [cd s/m²]</summary>
    public double ReflectedConstant { get; init; } = Receptor.Reflected.Default();

    /// <summary>Incident-light constant C of the meter. [lx s]</summary>
    public double IncidentConstant { get; init; } = Receptor.Flat.Default();

    /// <summary>Lens factor q.</summary>
    public double LensFactor { get; init; } = Maths.LensFactor.Standard;
}

/// <summary>How many stops are left before a surface clips.</summary>
/// <remarks>
/// <code>
/// h = log2(78 / 10)              saturation speed                 (29)
/// h = log2(78 / (q K))           meter                            (29)
/// h = log2(sqrt(2) / r)          diffuse white                    (29)
/// s = log2(R / r) + x            surface over mid-tone            (29)
/// l = h - s                      left                             (29)
/// </code>
/// <para>R: reflectance of the surface. r: reflectance of the mid-tone, 0.18 unless given; with the meter pi K/C (26). x:
/// light over the setting. All but a measured headroom hold only where the set ISO is a saturation speed. Speculars are
/// brighter than any reflectance says. Source: ISO 12232 as quoted in Wikipedia, "Film speed", and in a forum article on
/// the 1998 edition (the standard's text not seen).</para>
/// </remarks>
/// <param name="MidToneReflectance">Reflectance of the mid-tone used.</param>
/// <param name="HeadroomStops">From mid-tone to clipping. [stops]</param>
/// <param name="SurfaceOverMidToneStops">The surface over the mid-tone; positive is brighter. [stops]</param>
/// <param name="LeftStops">Left before the surface clips; negative is clipped. [stops]</param>
/// <param name="ShareOfClipping">Exposure of the surface over the one that clips.</param>
public sealed record Headroom(
    double MidToneReflectance, double HeadroomStops, double SurfaceOverMidToneStops, double LeftStops, double ShareOfClipping)
{
    /// <summary>Reflectance of a grey card.</summary>
    public const double GreyCard = 0.18;

    /// <summary>Evaluates <paramref name="input"/>. (29)</summary>
    public static Headroom Evaluate<TTrail>(HeadroomInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("mid-tone");
        var r = MidTone(input, ref trail);
        var h = ToClipping(input, r, ref trail);

        trail.Section("surface");
        var R = trail.Given("R", Guard.Positive(input.Reflectance), "", "reflectance");
        var x = trail.Given("x", Guard.Finite(input.LightOverSettingStops), "stops", "light_over_setting_stops");
        var s = trail.Let("s", Log2(R / r) + x, "stops", "exposure (29)", "surface_over_mid_tone_stops");
        var left = trail.Let("left", h - s, "stops", "exposure (29)", "left_stops");
        return new(r, h, s, left, trail.Let("share", Pow(2, s - h), "", "by definition of a stop", "share_of_clipping"));
    }

    private static double MidTone<TTrail>(HeadroomInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        const string field = "mid_tone_reflectance";
        if (input.MidToneReflectance is { } given)
        {
            return trail.Given("r", Guard.Positive(given), "", field, field);
        }

        if (input.Definition != HeadroomDefinition.Meter)
        {
            return trail.Given("r", GreyCard, "", "grey card", field);
        }

        var pi = trail.Given("pi", PI, "", "pi");
        var K = trail.Given("K", Guard.Positive(input.ReflectedConstant), "cd s/m²", "reflected_constant");
        var C = trail.Given("C", Guard.Positive(input.IncidentConstant), "lx s", "incident_constant");
        return trail.Let("r", pi * K / C, "", "exposure (26)", field);
    }

    private static double ToClipping<TTrail>(HeadroomInput input, double r, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        const string field = "headroom_stops";
        const string source = "exposure (29)";
        switch (input.Definition)
        {
            case HeadroomDefinition.SaturationSpeed:
                return trail.Let("h", Log2(78.0 / 10), "stops", source, field);
            case HeadroomDefinition.Meter:
                var q = trail.Given("q", Guard.Positive(input.LensFactor), "", "lens_factor");
                var K = trail.Given("K", Guard.Positive(input.ReflectedConstant), "cd s/m²", "reflected_constant");
                return trail.Let("h", Log2(78 / (q * K)), "stops", source, field);
            case HeadroomDefinition.DiffuseWhite:
                return trail.Let("h", Log2(Sqrt(2) / r), "stops", source, field);
            case HeadroomDefinition.Measured:
                return trail.Given("h", Guard.Finite(input.MeasuredHeadroomStops), "stops", "measured_headroom_stops", field);
            default:
                throw new ArgumentOutOfRangeException(nameof(input));
        }
    }
}
