using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Flash told apart from daylight, by a reading of both and one of the daylight.</summary>
/// <remarks>
/// <code>
/// over   = 2 log2(Nt / Nd)              both over the daylight                  (19)
/// needed = max(2 e, 0.01)               least difference that tells             (20)
/// Nf     = sqrt(Nt² - Nd²)              the flash alone                         (21)
/// share  = Nf² / Nt²                    the flash in both                       (22)
/// gain   = 1 / share                    growth of an error of Nt                (23)
/// error  = e (Nt² + Nd²) / Nf²          both readings off, against each other   (24)
/// </code>
/// <para>Nt, Nd: f-numbers read for both and for the daylight, at one shutter speed and ISO; e: error of a reading in
/// stops. A flash meter adds up all light while its gate is open, so squares of f-numbers are subtracted, never stops. (23)
/// and (24) hold for small errors: d(log2 Nf²) / d(log2 Nt²) = Nt² / Nf². With e of 0.1, flash in less than 0.2 stop over
/// the daylight is not told. Sources: ISO 10157:1991, scope (abstract seen), for what a flash meter adds up; the limit is
/// ours.</para>
/// </remarks>
public sealed record Separation
{
    private const double Rounding = 1e-9;

    /// <summary>Whether the readings are far enough apart; if not, only they and the shortfall stand.</summary>
    public bool IsTold => ShortfallStops <= Rounding;

    /// <summary>Both over the daylight. [stops]</summary>
    public required double TotalOverDaylightStops { get; init; }

    /// <summary>How much further apart the readings would have to be; 0 when they tell. [stops]</summary>
    public required double ShortfallStops { get; init; }

    /// <summary>What the meter would show for the flash alone.</summary>
    public double FNumber { get; init; }

    /// <summary>Share of the flash in both, from 0 to 1.</summary>
    public double FlashShare { get; init; }

    /// <summary>Growth of a small error of the reading of both.</summary>
    public double ErrorGain { get; init; }

    /// <summary>How far the flash may be off. [stops]</summary>
    public double ErrorStops { get; init; }

    /// <summary>Tells the flash apart.</summary>
    /// <param name="totalFNumber">F-number read for both, not below that of the daylight.</param>
    /// <param name="daylightFNumber">F-number read for the daylight, above 0.</param>
    /// <param name="meterErrorStops">Error of a reading in stops, not negative.</param>
    /// <param name="trail">Follows the sum.</param>
    public static Separation Of<TTrail>(double totalFNumber, double daylightFNumber, double meterErrorStops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(totalFNumber, daylightFNumber);
        trail.Section("readings");
        var Nt = trail.Given("Nt", Guard.Positive(totalFNumber), "", "total_aperture");
        var Nd = trail.Given("Nd", Guard.Positive(daylightFNumber), "", "daylight_aperture");
        var e = trail.Given("e", Guard.NotNegative(meterErrorStops), "stops", "meter_error_stops");
        var needed = trail.Let("needed", Max(2 * e, 0.01), "stops", "lighting ratio (20)");
        if (2 * Log2(Nt / Nd) is var apart && apart < needed - Rounding)
        {
            var over = trail.Let("over", 2 * Log2(Nt / Nd), "stops", "lighting ratio (19)", "not_reached.total_over_daylight_stops");
            return new()
            {
                TotalOverDaylightStops = over,
                ShortfallStops = trail.Let("lacking", needed - over, "stops", "needed less read", "not_reached.shortfall_stops"),
            };
        }

        trail.Let("over", 2 * Log2(Nt / Nd), "stops", "lighting ratio (19)");
        trail.Section("flash alone");
        var Nf = trail.Let("Nf", Sqrt(Nt * Nt - Nd * Nd), "", "lighting ratio (21)", "solution.aperture.f_number");
        var share = trail.Let("share", Nf * Nf / (Nt * Nt), "", "lighting ratio (22)", "solution.flash_share");
        return new()
        {
            TotalOverDaylightStops = apart,
            ShortfallStops = 0,
            FNumber = Nf,
            FlashShare = share,
            ErrorGain = trail.Let("gain", 1 / share, "", "lighting ratio (23)", "solution.error_gain"),
            ErrorStops = trail.Let("error", e * (Nt * Nt + Nd * Nd) / (Nf * Nf), "stops", "lighting ratio (24)", "solution.error_stops"),
        };
    }
}
