using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How far two lights at one place are apart.</summary>
/// <remarks>
/// <code>
/// k = Vkey - Vfill                   key over fill                (11)
/// overKey  = log2(1 + 2^-k)          both over the key            (12)
/// overFill = log2(1 + 2^k)           both over the fill           (13)
/// share    = 1 / (1 + 2^k)           the fill in both             (14)
/// </code>
/// <para>Lights of one kind keep their difference at every shutter speed; flash against light that stays on does not. (12)
/// to (14) hold where both lights reach the surface. Source: definition of a stop; light adds as light.</para>
/// </remarks>
public sealed record Comparison
{
    /// <summary>The key over the fill. [stops]</summary>
    public required double KeyOverFillStops { get; init; }

    /// <summary>The same as ratios.</summary>
    public required LightingRatio Ratio { get; init; }

    /// <summary>Both together over the key. [stops]</summary>
    public required double BothOverKeyStops { get; init; }

    /// <summary>Both together over the fill. [stops]</summary>
    public required double BothOverFillStops { get; init; }

    /// <summary>Share of the fill in both together, from 0 to 1.</summary>
    public required double FillShare { get; init; }

    /// <summary>Compares two lights.</summary>
    /// <param name="key">The light that should be the stronger one.</param>
    /// <param name="fill">The other one.</param>
    /// <param name="shutterSpeedS">Shutter speed in s, above 0; without effect on two lights of one kind.</param>
    /// <param name="trail">Follows the sum.</param>
    public static Comparison Of<TTrail>(MeteredLight key, MeteredLight fill, double shutterSpeedS, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("key at the shutter speed");
        var V = key.ValueStops(shutterSpeedS, ref trail);
        var keyV = trail.Let("keyV", V, "stops", "the key");
        trail.Section("fill at the shutter speed");
        V = fill.ValueStops(shutterSpeedS, ref trail);
        var fillV = trail.Let("fillV", V, "stops", "the fill");
        trail.Section("key against fill");
        var kSet = trail.Let("kSet", keyV - fillV, "stops", "lighting ratio (11)", "key_over_fill_stops");
        return new()
        {
            KeyOverFillStops = kSet,
            Ratio = LightingRatio.FromStops(kSet, ref trail),
            BothOverKeyStops = trail.Let(
                "overKey", Log2(1 + Pow(2, -kSet)), "stops", "lighting ratio (12)", "key_plus_fill_over_key_stops"),
            BothOverFillStops = trail.Let(
                "overFill", Log2(1 + Pow(2, kSet)), "stops", "lighting ratio (13)", "key_plus_fill_over_fill_stops"),
            FillShare = trail.Let("share", 1 / (1 + Pow(2, kSet)), "", "lighting ratio (14)", "fill_share"),
        };
    }
}
