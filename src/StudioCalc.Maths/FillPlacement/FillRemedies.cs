namespace StudioCalc.Maths;

/// <summary>Something that makes a fill reach.</summary>
public enum FillRemedyKind
{
    /// <summary>Let it stand nearer.</summary>
    AllowNearer,

    /// <summary>Let it stand further.</summary>
    AllowFurther,

    /// <summary>Diffuse the flash, or put a neutral-density gel on it.</summary>
    DiffuseFlash,

    /// <summary>Raise the ISO, so that the fill may be darker.</summary>
    RaiseIso,

    /// <summary>Let the limits on subtense and fall-off go.</summary>
    EaseLimit,
}

/// <summary>A remedy, and what comes of it.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="ChangeStops">Change of the flash's light that it makes or allows; positive is more. [stops]</param>
/// <param name="Way">The first way that then serves.</param>
public sealed record FillRemedy(FillRemedyKind Kind, double? ChangeStops, FillWay Way);

/// <summary>Prices what would make a fill reach, by planning again with it.</summary>
public static class FillRemedies
{
    // So that the nearest way itself is reached and not just missed by rounding.
    private const double MarginStops = 1e-9;

    /// <summary>The remedies that help.</summary>
    /// <param name="planner">The plan without ways.</param>
    /// <param name="outcome">Its outcome.</param>
    public static IEnumerable<FillRemedy> For(FillPlanner planner, FillOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(planner);
        ArgumentNullException.ThrowIfNull(outcome);
        return new[]
        {
            Allow(planner, outcome, FillRemedyKind.AllowNearer),
            Allow(planner, outcome, FillRemedyKind.AllowFurther),
            Light(planner, outcome),
            Ease(planner, outcome),
        }.OfType<FillRemedy>();
    }

    private static FillRemedy? Allow(FillPlanner planner, FillOutcome outcome, FillRemedyKind kind)
    {
        var input = planner.Input;
        var least = outcome.LeftOut
            .Where(pair => pair.Obstacle is FillObstacle.NearestDistance or FillObstacle.FarthestDistance or FillObstacle.ListedDistances)
            .Where(pair => planner.LimitMissed(pair.Way) == FillObstacle.None)
            .Select(pair => pair.Way.Place.DistanceMm)
            .Where(d => d < input.AllowedMm(d) == (kind == FillRemedyKind.AllowNearer))
            .OrderBy(d => Math.Abs(Math.Log(d / input.AllowedMm(d))))
            .Cast<double?>()
            .FirstOrDefault();
        return least is not { } distance ? null : Priced(kind, null, planner.With(asked => asked.DistancesMm is { } list
            ? asked with { DistancesMm = [.. list, distance] }
            : asked with { NearestMm = Math.Min(asked.NearestMm, distance), FarthestMm = Math.Max(asked.FarthestMm, distance) }));
    }

    private static FillRemedy? Light(FillPlanner planner, FillOutcome outcome)
    {
        if (outcome.Nearest is not { } nearest || outcome.ShortfallStops is not > 0)
        {
            return null;
        }

        var over = nearest.Place.OverWantedStops;
        var change = over + Math.Sign(over) * MarginStops;
        return over > 0
            ? Priced(FillRemedyKind.DiffuseFlash, -change, planner.With(asked =>
                asked with { FullStrength = asked.FullStrength * Math.Pow(2, -change) }))
            : Priced(FillRemedyKind.RaiseIso, change, planner.With(asked =>
                asked with { WantedLxS = asked.WantedLxS * Math.Pow(2, change) }));
    }

    private static FillRemedy? Ease(FillPlanner planner, FillOutcome outcome) =>
        outcome.Obstacle is FillObstacle.Subtense or FillObstacle.FallOff
            ? Priced(FillRemedyKind.EaseLimit, null, planner.With(asked =>
                asked with { LeastSubtenseDeg = null, LargestFallOffStops = null }))
            : null;

    private static FillRemedy? Priced(FillRemedyKind kind, double? changeStops, FillPlanner changed) =>
        changed.Plan().Ways is [var first, ..] ? new(kind, changeStops, first) : null;
}
