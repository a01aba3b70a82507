using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Solves a flash exposure by guide numbers for one of its quantities.</summary>
/// <remarks>
/// <code>
/// Q = Q1 + Qo                             light of all units adds up       (31)
/// r = log2(Q p S / 100) - log2(N²) - n - c                                 (32)
/// R = N² * 2^(n + c) * 100 / (S p)        the Q at which r is 0            (33)
/// N = sqrt(Q p S / 100 * 2^-(n + c))      aperture                         (34)
/// S = 100 N² * 2^(n + c) / (Q p)          ISO                              (35)
/// q = R - Qo                              what the first units must give   (36)
/// D = Di * sqrt(Qi / q)                   distance                         (37)
/// x = log2(Qi / q)                        power, stops below full          (38)
/// G = Gi * sqrt(q / Qi)                   guide number                     (39)
/// p = ceiling(R1 / Q)                     pops, R1 = R at one pop          (40)
/// g = D / 1000 * sqrt(Q S / 100)          guide number of all              (41)
/// H = C / 100 * Q * p                     luminous exposure in lx s        (42)
/// </code>
/// <para>Q1, Qo: (30) of the first and of the other units. N: f-number, S: ISO, p: pops, n: light lost in the lens, c:
/// compensation, both in stops. Qi: the first units at Di = 1000 mm, at full power or with Gi = 1 m. Light adds, that is
/// f-numbers add as squares: neither guide numbers nor f-numbers themselves add.</para>
/// <para>Valid at sync speed or slower. Where a limit stands in the way the outcome names it and is the nearest to be
/// had. Source: docs/models/exposure.md, Flash.</para>
/// </remarks>
public static class FlashExposure
{
    private const double Rounding = 1e-9;

    /// <summary>Solves for <see cref="FlashInput.Unknown"/>.</summary>
    public static FlashOutcome Solve<TTrail>(FlashInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("other units");
        var Qo = trail.Given("Qo", 0, "", "no unit yet");
        foreach (var unit in input.Others)
        {
            var Qi = unit.FNumberSquared(ref trail, "Qi");
            Qo = trail.Let("Qo", Qo + Qi, "", "exposure (31)");
        }

        trail.Section("first units");
        var set = input.Unknown switch
        {
            FlashUnknown.Aperture => Aperture(input, Qo, ref trail),
            FlashUnknown.Iso => Iso(input, Qo, ref trail),
            FlashUnknown.Pops => Pops(input, Qo, ref trail),
            _ => First(input, Qo, ref trail),
        };
        return AsSet(input, set, Qo, ref trail);
    }

    private static Set Aperture<TTrail>(FlashInput input, double Qo, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var Q1 = input.First.FNumberSquared(ref trail, "Q1");
        var Q = trail.Let("Q", Q1 + Qo, "", "exposure (31)");
        var (n, c) = Losses(input, ref trail);
        var S = trail.Given("S", input.Iso, "", "ISO");
        var p = trail.Given("p", input.Pops, "", "pops");
        var wanted = trail.Let("wantedN", Sqrt(Q * p * S / 100 * Pow(2, -(n + c))), "", "exposure (34)");
        var exact = Clamp(wanted, input.Limits.WidestFNumber, input.Limits.SmallestFNumber);
        var beyond = 2 * Log2(wanted / exact);
        var set = Abs(beyond) > Rounding
            ? exact
            : Clamp(Nearest(Marks.Aperture, wanted, input.Scale), input.Limits.WidestFNumber, input.Limits.SmallestFNumber);
        return new(exact, set, S, S, input.Pops, input.First, Obstacle(beyond, FlashObstacle.WidestAperture, FlashObstacle.SmallestAperture), Abs(beyond));
    }

    private static Set Iso<TTrail>(FlashInput input, double Qo, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var Q1 = input.First.FNumberSquared(ref trail, "Q1");
        var Q = trail.Let("Q", Q1 + Qo, "", "exposure (31)");
        var (n, c) = Losses(input, ref trail);
        var N = trail.Given("N", input.FNumber, "", "aperture");
        var p = trail.Given("p", input.Pops, "", "pops");
        var wanted = trail.Let("wantedS", 100 * N * N * Pow(2, n + c) / (Q * p), "", "exposure (35)");
        var exact = Clamp(wanted, input.Limits.LowestIso, input.Limits.HighestIso);
        var beyond = Log2(wanted / exact);
        var set = Abs(beyond) > Rounding
            ? exact
            : Clamp(Nearest(Marks.Iso, wanted, input.Scale), input.Limits.LowestIso, input.Limits.HighestIso);
        return new(N, N, exact, set, input.Pops, input.First, Obstacle(beyond, FlashObstacle.LowestIso, FlashObstacle.HighestIso), Abs(beyond));
    }

    private static Set Pops<TTrail>(FlashInput input, double Qo, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var Q1 = input.First.FNumberSquared(ref trail, "Q1");
        var Q = trail.Let("Q", Q1 + Qo, "", "exposure (31)");
        var R1 = Needed(input, 1, ref trail, "R1");
        var exact = trail.Let("pops", R1 / Q, "", "exposure (40)");
        var whole = Clamp(Ceiling(exact * (1 - Rounding)), 1, FlashInput.MostPops);
        var beyond = exact < 0.5 - Rounding || exact > FlashInput.MostPops * (1 + Rounding) ? Log2(exact / whole) : 0;
        return new(
            input.FNumber, input.FNumber, input.Iso, input.Iso, (int)whole, input.First,
            Obstacle(beyond, FlashObstacle.OnePop, FlashObstacle.MostPops), Abs(beyond));
    }

    // Distance, power and guide number all act on the first units alone.
    private static Set First<TTrail>(FlashInput input, double Qo, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var whole = input.Unknown switch
        {
            FlashUnknown.Distance => input.First with { DistanceMm = 1000 },
            FlashUnknown.Power => input.First with { PowerBelowFullStops = 0 },
            FlashUnknown.GuideNumber => input.First with { GuideNumberM = 1 },
            _ => throw new ArgumentOutOfRangeException(nameof(input)),
        };
        var Qi = whole.FNumberSquared(ref trail, "Qi");
        var R = Needed(input, input.Pops, ref trail);
        if (R - Qo <= R * Rounding)
        {
            return Held(input, null, FlashObstacle.OtherUnits, Max(0, Log2(Qo / R)));
        }

        var q = trail.Let("q", R - Qo, "", "exposure (36)");
        switch (input.Unknown)
        {
            case FlashUnknown.Distance:
                var D = trail.Let("D", 1000 * Sqrt(Qi / q), "mm", "exposure (37)");
                return Held(input, whole with { DistanceMm = D });
            case FlashUnknown.GuideNumber:
                var G = trail.Let("G", Sqrt(q / Qi), "m", "exposure (39)");
                return Held(input, whole with { GuideNumberM = G });
            default:
                var x = trail.Let("x", Log2(Qi / q), "stops", "exposure (38)");
                return Power(input, whole, x, Qo, Qi, R);
        }
    }

    private static Set Power(FlashInput input, FlashUnit whole, double x, double Qo, double Qi, double R)
    {
        var powers = input.PowersBelowFullStops;
        var nearest = powers.MinBy(power => Abs(power - x));
        var first = whole with { PowerBelowFullStops = nearest };
        var beyond = Log2((Qo + Qi * Pow(2, -nearest)) / R);
        var obstacle = x < powers[0] - HalfStep(powers[0], powers[Min(1, powers.Count - 1)]) ? FlashObstacle.FullPower
            : x > powers[^1] + HalfStep(powers[Max(0, powers.Count - 2)], powers[^1]) ? FlashObstacle.LowestPower
            : FlashObstacle.None;
        return Held(input, first, obstacle, obstacle == FlashObstacle.None ? 0 : Abs(beyond));

        static double HalfStep(double upper, double lower) => (lower - upper) / 2 + Rounding;
    }

    private static FlashOutcome AsSet<TTrail>(FlashInput input, Set set, double Qo, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("as set");
        var Q1 = set.First is { } first ? first.FNumberSquared(ref trail, "Q1") : trail.Given("Q1", 0, "", "first units switched off");
        var Q = trail.Let("Q", Q1 + Qo, "", "exposure (31)");
        var R = Needed(input with { FNumber = set.MarkedFNumber, Iso = set.MarkedIso }, set.Pops, ref trail);
        var (N, S, n, c) = (set.MarkedFNumber, set.MarkedIso, input.LensLossStops, input.CompensationStops);
        var p = trail.Given("p", set.Pops, "", "pops", "pops");
        double? all = null;
        double? energy = null;
        if (set.First is { } on)
        {
            var D = trail.Given("D", on.DistanceMm, "mm", "distance", "distance_mm");
            all = trail.Let("g", D / 1000 * Sqrt(Q * S / 100), "m", "exposure (41)", "guide_number_m");
            if (on.FullEnergyJ is { } full)
            {
                var W = trail.Given("W", full, "J", "full_energy_j");
                var x = trail.Given("x", on.PowerBelowFullStops, "stops", "power", "power.below_full_stops");
                energy = trail.Let("J", W * Pow(2, -x), "J", "exposure (43)", "energy_j");
            }
        }

        var C = trail.Given("C", input.IncidentConstant, "lx s", "incident constant", "incident_constant");
        return new()
        {
            Obstacle = set.Obstacle,
            ShortfallStops = set.ShortfallStops,
            FNumber = set.FNumber,
            Iso = set.Iso,
            Pops = set.Pops,
            First = set.First,
            FirstFNumberSquared = Q1,
            OthersFNumberSquared = Qo,
            NeededFNumberSquared = R,
            GuideNumberM = all,
            EnergyJ = energy,
            ExposureLxS = trail.Let("H", C / 100 * Q * p, "lx s", "exposure (42)", "exposure_lx_s"),
            RestStops = trail.Let("r", Log2(Q * p * S / 100) - Log2(N * N) - n - c, "stops", "exposure (32)", "rest_stops"),
        };
    }

    private static double Needed<TTrail>(FlashInput input, int pops, ref TTrail trail, string symbol = "R")
        where TTrail : struct, ITrail
    {
        var (n, c) = Losses(input, ref trail);
        var N = trail.Given("N", Guard.Positive(input.FNumber), "", "aperture");
        var S = trail.Given("S", Guard.Positive(input.Iso), "", "ISO");
        var p = trail.Given("p", pops, "", "pops");
        return trail.Let(symbol, N * N * Pow(2, n + c) * 100 / (S * p), "", "exposure (33)");
    }

    private static (double LossStops, double CompensationStops) Losses<TTrail>(FlashInput input, ref TTrail trail)
        where TTrail : struct, ITrail => (
            trail.Given("n", Guard.Finite(input.LensLossStops), "stops", "light lost in the lens"),
            trail.Given("c", Guard.Finite(input.CompensationStops), "stops", "compensation_stops"));

    private static Set Held(FlashInput input, FlashUnit? first, FlashObstacle obstacle = FlashObstacle.None, double shortfall = 0) =>
        new(input.FNumber, input.FNumber, input.Iso, input.Iso, input.Pops, first, obstacle, shortfall);

    private static FlashObstacle Obstacle(double beyond, FlashObstacle below, FlashObstacle above) =>
        Abs(beyond) <= Rounding ? FlashObstacle.None : beyond < 0 ? below : above;

    private static double Nearest(MarkSeries marks, double value, StopScale scale) => marks.Nearest(value, scale)?.Value ?? value;

    private readonly record struct Set(
        double FNumber,
        double MarkedFNumber,
        double Iso,
        double MarkedIso,
        int Pops,
        FlashUnit? First,
        FlashObstacle Obstacle,
        double ShortfallStops);
}
