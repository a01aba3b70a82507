using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Focus placed on a plate so that the main component is sharp.</summary>
/// <remarks>
/// <code>
/// forward = f (1 / m - 1 / mf)                                     (48)
/// back    = f (1 / mn - 1 / m)
/// shift   = dH sin e                                               (49)
/// </code>
/// <para>m: magnification at the chosen focus, from <see cref="FocusSettings.Best"/>. forward, back: how far focus may slip. dH: how
/// much higher the fresh plate's main component stands. The aperture, where none is given, is the widest to be set that is not
/// wider than (36) for the main component. Geometric blur only. Source: derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public static class Placement
{
    /// <summary>Places focus.</summary>
    /// <param name="input">What focus is placed on; the main component must lie beyond the front focal point.</param>
    /// <param name="trail">Follows the sum.</param>
    public static PlacementOutcome Solve<TTrail>(PlacementInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        var main = input.Components[input.Main];
        trail.Section("main component");
        var (tn, tf) = input.View.DepthOf(main.Shape, ref trail);
        trail.Section("aperture");
        var f = trail.Given("f", input.Aim.FocalLengthMm, "mm", "focal length at this focus");
        var p = trail.Given("p", input.Aim.PupilMagnification, "", "pupil_magnification");
        var ma = trail.Given("ma", Guard.Positive(input.Aim.Magnification), "", "magnification at the aim point");
        var c = trail.Given("c", Guard.Positive(input.PermittedBlurMm), "mm", "permitted blur");
        var xa = trail.Let("xa", f * (1 / ma + 1 / p), "mm", "depth of field (1)");
        var xn = trail.Let("xn", xa + tn, "mm", "nearest part from the entrance pupil");
        var xf = trail.Let("xf", xa + tf, "mm", "farthest part from the entrance pupil");
        var x = trail.Let("x", 2 * xn * xf / (xn + xf), "mm", "depth of field (30)");
        var mx = trail.Let("mx", f / (x - f / p), "", "depth of field (31)");
        trail.Let("Ng", f * mx * (xf - xn) / (c * (xf + xn)), "", "depth of field (36)");
        var focus = TwoPointFocus.Between(input.PointsOf(main))
            ?? throw new ArgumentException("The main component lies too near.", nameof(input));
        var choice = input.Choice;
        var chosen = choice.Widest(focus, c);
        var isReached = chosen is not null;
        var place = isReached ? "solution." : "not_reached.nearest.";
        var N = trail.Given(
            "N",
            chosen ?? choice.LeastBlur(focus),
            "",
            input.FNumber is not null ? "given aperture" : isReached ? "next smaller mark within the limits" : "smallest aperture",
            place + "aperture.f_number");
        trail.Section("focus");
        var w = trail.Let("w", N * c / f, "", "depth of field (7)");
        var mn = trail.Let("mn", (f - w * xn) / (xn - f / p), "", "depth of field (46)");
        var mf = trail.Let("mf", (f + w * xf) / (xf - f / p), "", "depth of field (47)");
        var m = trail.Given(
            "m",
            isReached ? Best(input, w, mn, mf, mx) : mx,
            "",
            isReached ? "middle of the settings from mn to mf that hold most importance" : "both ends of the main component blur alike",
            place + "focus.magnification");
        var lens = new LensFocus(f, m, p, input.Aim.PrincipalSeparationMm);
        var offset = trail.Let("offset", f * (1 / m - 1 / ma), "mm", "depth of field (1)", place + "focus_offset_mm");
        var forward = trail.Let("forward", f * (1 / m - 1 / mf), "mm", "depth of field (48)", place + "slip_forward_mm");
        double? back = mn > 0 ? trail.Let("back", f * (1 / mn - 1 / m), "mm", "depth of field (48)", place + "slip_back_mm") : null;
        var effective = SharpZone.EffectiveFNumber(lens, N, ref trail, place + "effective_f_number");
        trail.Section("sharp zone");
        var zone = SharpZone.Evaluate(lens, N, c, ref trail, place + "zone.");
        trail.Section("fresh plate");
        var dH = trail.Given("dH", input.FreshPlateHigherMm, "mm", "fresh_plate_higher_mm");
        var E = trail.Given("E", input.View.ElevationDeg, "deg", "elevation_deg");
        var pi = trail.Given("pi", PI, "", "half a turn");
        var shift = trail.Let("shift", dH * Sin(E * pi / 180), "mm", "depth of field (49)", place + "fresh_plate_shift_mm");
        return new()
        {
            Obstacle = isReached ? DepthObstacle.None
                : input.FNumber is null ? DepthObstacle.SmallestAperture : DepthObstacle.GivenAperture,
            ShortfallMm = isReached ? 0 : Missing(xn, xf, zone, ref trail),
            Lens = lens,
            FNumber = N,
            EffectiveFNumber = effective,
            Zone = zone,
            OffsetMm = offset,
            SlipForwardMm = forward,
            SlipBackMm = back,
            FreshPlateShiftMm = shift,
            FreshPlateIsSharp = ComponentBlur.IsWithin(zone, xn - shift, xf - shift),
            Components = [.. input.Components.Select(component => Blur(input, component, lens, N, zone))],
        };
    }

    private static double Best(PlacementInput input, double w, double mn, double mf, double mx)
    {
        var others = input.Components.Where((_, i) => i != input.Main).Select(component =>
        {
            var points = input.PointsOf(component);
            return FocusSettings.Of(input.Aim, w, points.NearMm, points.FarMm, component.Importance);
        });

        // Where the main component just fits, rounding may leave no room between its ends.
        return mn < mf ? FocusSettings.Best(new(mn, mf, 1), [.. others]) : mx;
    }

    private static ComponentBlur Blur(PlacementInput input, PlacedComponent component, LensFocus lens, double fNumber, SharpZone zone)
    {
        var points = input.PointsOf(component);
        return ComponentBlur.Evaluate(lens, fNumber, zone, points.NearMm, points.FarMm);
    }

    private static double Missing<TTrail>(double xn, double xf, SharpZone zone, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("shortfall");
        var ahead = trail.Given("ahead", xn, "mm", "nearest part of the main component");
        var behind = trail.Given("behind", xf, "mm", "its farthest part");
        var (near, far) = (zone.NearDepthMm, zone.FarDepthMm);
        return trail.Let("short", behind - ahead - (near + far), "mm", "its depth beyond the zone", "not_reached.shortfall_mm");
    }
}

/// <summary>What comes of placing focus.</summary>
public sealed record PlacementOutcome
{
    /// <summary>What stands in the way.</summary>
    public required DepthObstacle Obstacle { get; init; }

    /// <summary>Depth of the main component beyond the zone; 0 when reached. [mm]</summary>
    public required double ShortfallMm { get; init; }

    /// <summary>The lens at the chosen focus, or the nearest to be had.</summary>
    public required LensFocus Lens { get; init; }

    /// <summary>Set f-number.</summary>
    public required double FNumber { get; init; }

    /// <summary>Effective f-number at the chosen focus.</summary>
    public required double EffectiveFNumber { get; init; }

    /// <summary>The sharp zone.</summary>
    public required SharpZone Zone { get; init; }

    /// <summary>Focused plane behind the plane through the aim point. [mm]</summary>
    public required double OffsetMm { get; init; }

    /// <summary>How far focus may slip towards the camera; negative when the main component is out. [mm]</summary>
    public required double SlipForwardMm { get; init; }

    /// <summary>How far focus may slip away from the camera; null without end. [mm]</summary>
    public required double? SlipBackMm { get; init; }

    /// <summary>How far the fresh plate's main component stands nearer. [mm]</summary>
    public required double FreshPlateShiftMm { get; init; }

    /// <summary>Whether it is sharp with focus left as it is.</summary>
    public required bool FreshPlateIsSharp { get; init; }

    /// <summary>The components, in their order.</summary>
    public required IReadOnlyList<ComponentBlur> Components { get; init; }
}
