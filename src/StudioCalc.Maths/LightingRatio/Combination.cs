using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What one light adds to several.</summary>
/// <param name="OverSettingStops">The light alone over the setting. [stops]</param>
/// <param name="Share">Its share of all light, from 0 to 1.</param>
public readonly record struct LightPart(double OverSettingStops, double Share);

/// <summary>Several lights at one place and what they come to.</summary>
/// <remarks>
/// <code>
/// x     = V + log2(S / 100) - log2(N²) - n      one light over the setting      (15)
/// X     = log2(sum of 2^x)                      all lights over the setting     (16)
/// share = 2^(x - X)                                                             (17)
/// Nall  = N * 2^(X / 2)                         the aperture all ask for        (18)
/// </code>
/// <para>Light adds as light, never as stops or f-numbers; at one shutter speed and ISO (16) and (18) say that f-numbers
/// add as their squares. The order of the lights does not matter. Each is read alone, with one kind of receptor. Sources:
/// for the squares, articles on several flashes; derived in docs/models/lighting-ratio.md.</para>
/// </remarks>
public sealed record Combination
{
    /// <summary>All lights over the setting. [stops]</summary>
    public required double TotalOverSettingStops { get; init; }

    /// <summary>The f-number that all lights together ask for.</summary>
    public required double FNumber { get; init; }

    /// <summary>Share of all flash, from 0 to 1.</summary>
    public required double FlashShare { get; init; }

    /// <summary>Each light, in the order given.</summary>
    public required IReadOnlyList<LightPart> Parts { get; init; }

    /// <summary>Combines lights for settings.</summary>
    /// <param name="lights">The lights, at least one.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="lensLossStops">Light lost in the lens in stops.</param>
    /// <param name="trail">Follows the sum.</param>
    public static Combination Of<TTrail>(
        ReadOnlySpan<MeteredLight> lights, CameraSettings settings, double lensLossStops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfZero(lights.Length, nameof(lights));
        trail.Section("setting");
        var N = trail.Given("N", settings.FNumber, "", "aperture set");
        var S = trail.Given("S", settings.Iso, "", "ISO set");
        var n = trail.Given("n", Guard.Finite(lensLossStops), "stops", "lens_loss_stops");
        var total = trail.Given("total", 0, "", "nothing added yet");
        var flash = trail.Given("flash", 0, "", "nothing added yet");
        Span<double> over = stackalloc double[lights.Length];
        for (var i = 0; i < lights.Length; i++)
        {
            trail.Section("one light over the setting");
            var V = lights[i].ValueStops(settings.ShutterSpeedS, ref trail);
            var x = trail.Let(
                "x", V + Log2(S / 100) - Log2(N * N) - n, "stops", "lighting ratio (15)", Field<TTrail>(i, "over_setting_stops"));
            total = trail.Let("total", total + Pow(2, x), "", "lighting ratio (16)");
            if (lights[i].IsFlash)
            {
                flash = trail.Let("flash", flash + Pow(2, x), "", "flash alone");
            }

            over[i] = x;
        }

        trail.Section("all lights");
        var X = trail.Let("X", Log2(total), "stops", "lighting ratio (16)", "total_over_setting_stops");
        var Nall = trail.Let("Nall", N * Pow(2, X / 2), "", "lighting ratio (18)", "total_aperture.f_number");
        var parts = new LightPart[lights.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            var x = trail.Given("x", over[i], "stops", "one light over the setting");
            parts[i] = new(x, trail.Let("share", Pow(2, x - X), "", "lighting ratio (17)", Field<TTrail>(i, "share")));
        }

        return new()
        {
            TotalOverSettingStops = X,
            FNumber = Nall,
            FlashShare = trail.Let("flashShare", flash / total, "", "flash in all", "flash_share"),
            Parts = parts,
        };
    }

    // Without a trail no text is made.
    private static string Field<TTrail>(int light, string name) =>
        typeof(TTrail) == typeof(NoTrail) ? "" : FormattableString.Invariant($"shares[{light}].{name}");
}
