using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A gel that shifts colour.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="ShiftMired">Its shift in reciprocal megakelvin; positive is warmer.</param>
/// <param name="LossStops">Light that it loses. [stops]</param>
public sealed record ColourGel(string Name, double ShiftMired, double LossStops);

/// <summary>A gel before a light, and how near it comes.</summary>
/// <param name="Gel">The gel.</param>
/// <param name="ResultK">Colour temperature behind it; null when the light turns bluer than any. [K]</param>
/// <param name="RestMired">The shift that is left in reciprocal megakelvin; positive is still warmer.</param>
public sealed record ColourMatch(ColourGel Gel, double? ResultK, double RestMired);

/// <summary>Shifts of correlated colour temperature.</summary>
/// <remarks>
/// <code>
/// M = 1000000 / K               mired, reciprocal megakelvin       (55)
/// s = M2 - M1                   positive is warmer                 (56)
/// K = 1000000 / (M1 + g)        behind a gel of shift g            (57)
/// </code>
/// <para>Holds near the line of black bodies and daylight, where a gel shifts every light by about the same number of
/// mireds; a green or magenta cast is another matter. Source: common practice; the mired is the reciprocal megakelvin of
/// the international lighting vocabulary (from memory).</para>
/// </remarks>
public static class ColourShift
{
    private const double Rounding = 1e-9;

    /// <summary>Common strengths of conversion gels, with typical shifts and losses, rounded.</summary>
    /// <remarks>Source: common practice, from memory. A maker's own figures are better.</remarks>
    public static IReadOnlyList<ColourGel> CommonGels { get; } =
    [
        new("full orange", 160, 0.8),
        new("half orange", 110, 0.5),
        new("quarter orange", 65, 0.3),
        new("eighth orange", 25, 0.15),
        new("full blue", -135, 1.5),
        new("half blue", -80, 0.9),
        new("quarter blue", -35, 0.5),
        new("eighth blue", -20, 0.3),
    ];

    /// <summary>The shift from one colour temperature to another. (56) [mired]</summary>
    /// <param name="fromK">Colour temperature of the light to change. [K]</param>
    /// <param name="toK">Colour temperature that it should have. [K]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double NeededMired<TTrail>(double fromK, double toK, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("shift");
        var K1 = trail.Given("K1", Guard.Positive(fromK), "K", "from_k");
        var K2 = trail.Given("K2", Guard.Positive(toK), "K", "to_k");
        var M1 = trail.Let("M1", 1000000 / K1, "mired", "exposure (55)");
        var M2 = trail.Let("M2", 1000000 / K2, "mired", "exposure (55)");
        return trail.Let("s", M2 - M1, "mired", "exposure (56)", "shift_mired");
    }

    /// <summary>Each gel before a light, nearest match first, then the one that loses less. (57)</summary>
    /// <param name="fromK">Colour temperature of the light to change. [K]</param>
    /// <param name="toK">Colour temperature that it should have. [K]</param>
    /// <param name="gels">The gels.</param>
    public static IReadOnlyList<ColourMatch> Match(double fromK, double toK, IEnumerable<ColourGel> gels)
    {
        var none = default(NoTrail);
        var needed = NeededMired(fromK, toK, ref none);
        return
        [
            .. gels.Select(gel => new ColourMatch(gel, Behind(fromK, gel.ShiftMired), needed - gel.ShiftMired))
                .OrderBy(match => Round(Abs(match.RestMired) / Rounding))
                .ThenBy(match => match.Gel.LossStops),
        ];
    }

    private static double? Behind(double fromK, double shift) =>
        1e6 / fromK + shift is var mired && mired > Rounding ? 1e6 / mired : null;
}
