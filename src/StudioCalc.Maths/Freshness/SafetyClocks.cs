namespace StudioCalc.Maths;

/// <summary>Clocks of food safety, run over the temperatures of food.</summary>
/// <remarks>Straight runs of temperature are cut exactly where they cross a regime's ends; time at an end itself is held, not counted.
/// A clock is over at its limit, where regimes differ between "at" and "after". Nothing restarts a clock.</remarks>
public static class SafetyClocks
{
    // A limit reached to within a microsecond is reached: sums of parts of seconds are not exact.
    private const double Tolerance = 1e-6;

    /// <summary>The clocks of regimes, the strictest first: over, unknown, running with the least time left.</summary>
    /// <param name="spells">The temperatures, in order.</param>
    /// <param name="facts">What else is known.</param>
    /// <param name="regimeIds">The regimes; none means the strictest limit on time that is held and can tell.</param>
    public static IReadOnlyList<SafetyClock> Run(IReadOnlyList<SafetySpell> spells, SafetyFacts facts, IReadOnlyCollection<string> regimeIds)
    {
        ArgumentNullException.ThrowIfNull(spells);
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(regimeIds);
        if (regimeIds.Count > 0)
        {
            return Order(SafetyRegimes.All.Where(regime => regimeIds.Contains(regime.RegimeId)).Select(regime => Run(regime, spells, facts)));
        }

        var held = SafetyRegimes.All
            .Where(regime => regime.IsTimeLimit && (regime.WithoutProcedureS is null || facts.HasWrittenProcedure))
            .Select(regime => Run(regime, spells, facts))
            .Where(clock => clock.State != SafetyState.Unknown);
        return [Order(held)[0]];
    }

    /// <summary>One clock.</summary>
    public static SafetyClock Run(SafetyRegime regime, IReadOnlyList<SafetySpell> spells, SafetyFacts facts)
    {
        ArgumentNullException.ThrowIfNull(regime);
        ArgumentNullException.ThrowIfNull(spells);
        ArgumentNullException.ThrowIfNull(facts);
        var reasons = new List<SafetyReason>();
        var limit = Limit(regime, facts, reasons);
        if (Unfit(regime, spells, facts) is { } why)
        {
            return new(regime, SafetyState.Unknown, [why], null, limit);
        }

        var course = new SafetyCourse(spells);
        return regime.Count is SafetyCount.CoolingFrom or SafetyCount.CoolingFromStart
            ? Cooling(regime, course, limit, reasons)
            : Time(regime, course, limit, reasons);
    }

    private static List<SafetyClock> Order(IEnumerable<SafetyClock> clocks) =>
        [.. clocks.OrderByDescending(clock => clock.State).ThenBy(clock => clock.LeftS).ThenBy(clock => clock.Regime.Id, StringComparer.Ordinal)];

    private static double Limit(SafetyRegime regime, SafetyFacts facts, List<SafetyReason> reasons)
    {
        var limit = regime.LimitS;
        if (regime.WithoutProcedureS is { } without && !facts.HasWrittenProcedure)
        {
            reasons.Add(SafetyReason.NoWrittenProcedure);
            limit = without;
        }

        if (regime.HotRoom is not { } room)
        {
            return limit;
        }

        if (facts.RoomCelsius is not { } celsius)
        {
            reasons.Add(SafetyReason.RoomNotTold);
            return limit;
        }

        if (celsius <= room.AboveCelsius)
        {
            return limit;
        }

        reasons.Add(SafetyReason.HotRoom);
        return room.LimitS;
    }

    private static SafetyReason? Unfit(SafetyRegime regime, IReadOnlyList<SafetySpell> spells, SafetyFacts facts)
    {
        if (regime.Food is { } food && !facts.Food.Contains(food))
        {
            return SafetyReason.FoodNotTold;
        }

        var start = spells[0].StartCelsius;
        var startsWell = (regime.StartAtMostCelsius, regime.StartAtLeastCelsius) switch
        {
            (null, null) => true,
            var (most, least) => start <= most || start >= least,
        };
        return startsWell ? null : SafetyReason.OtherStart;
    }

    private static SafetyClock Time(SafetyRegime regime, SafetyCourse course, double limit, List<SafetyReason> reasons)
    {
        var periods = course.Periods(regime.AboveCelsius ?? double.NegativeInfinity, regime.BelowCelsius ?? double.PositiveInfinity);
        var counted = regime.Count switch
        {
            SafetyCount.TimeBetween => periods.Sum(period => period.ToS - period.FromS),
            SafetyCount.TimeSinceBetween => periods.Count == 0 ? 0 : course.EndS - periods[0].FromS,
            _ => course.EndS,
        };
        var isOver = counted > 0 && counted >= limit - Tolerance;
        if (course.WarmestCelsius > regime.NeverAboveCelsius)
        {
            reasons.Add(SafetyReason.TooWarm);
            isOver = true;
        }

        if (regime.IsOncePeriod && periods.Count > 1)
        {
            reasons.Add(SafetyReason.SecondPeriod);
            isOver = true;
        }

        return new(regime, isOver ? SafetyState.Over : SafetyState.Running, reasons, counted, limit);
    }

    // Counts from when the food is first below the upper temperature until it has come down to the lower one.
    private static SafetyClock Cooling(SafetyRegime regime, SafetyCourse course, double limit, List<SafetyReason> reasons)
    {
        var target = regime.AboveCelsius!.Value;
        var start = regime.Count == SafetyCount.CoolingFrom ? course.FirstBelow(regime.BelowCelsius!.Value) ?? course.EndS : 0;
        var reached = course.FirstDownTo(target, start);
        var counted = (reached ?? course.EndS) - start;
        if (counted > 0 && counted >= limit - Tolerance)
        {
            return new(regime, SafetyState.Over, reasons, counted, limit);
        }

        if (reached is not { } down || start >= course.EndS)
        {
            return new(regime, SafetyState.Running, reasons, counted, limit);
        }

        return course.Periods(target, double.PositiveInfinity).Exists(period => period.ToS > down)
            ? new(regime, SafetyState.Unknown, [.. reasons, SafetyReason.WarmedAgain], null, limit)
            : new(regime, SafetyState.Running, [.. reasons, SafetyReason.Cooled], counted, limit);
    }
}
