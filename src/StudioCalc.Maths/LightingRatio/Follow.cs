using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Daylight that has changed since settings were made, and how far the shutter speed can go.</summary>
public sealed record FollowInput
{
    /// <summary>The back light that the settings were made for.</summary>
    public required LightLevel First { get; init; }

    /// <summary>The back light now.</summary>
    public required LightLevel Now { get; init; }

    /// <summary>The shutter speed that was set. [s]</summary>
    public required double ShutterSpeedS { get; init; }

    /// <summary>Change of the flash, with the aperture closed by as much. [stops]</summary>
    public double FlashStops { get; init; }

    /// <summary>The scale of the camera's dials.</summary>
    public StopScale Scale { get; init; } = StopScale.Third;

    /// <summary>The fastest shutter speed at which flash covers the frame. [s]</summary>
    public required double SyncSpeedS { get; init; }

    /// <summary>The slowest shutter speed allowed; infinite when there is no limit. [s]</summary>
    public double SlowestShutterSpeedS { get; init; } = double.PositiveInfinity;
}

/// <summary>A shutter speed that follows, or the nearest to be had.</summary>
/// <param name="Obstacle">What stood in the way.</param>
/// <param name="ShortfallStops">How far; 0 when nothing did. [stops]</param>
/// <param name="ShutterSpeedS">The shutter speed to set. [s]</param>
/// <param name="RestStops">The back light over the fill, against what it was; positive is brighter. [stops]</param>
public sealed record FollowOutcome(BalanceObstacle Obstacle, double ShortfallStops, double ShutterSpeedS, double RestStops);

/// <summary>A change that lets the shutter speed follow, and the calculation run again with it.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="ChangeStops">Light gained by what it acts on. [stops]</param>
/// <param name="Outcome">The calculation run again.</param>
public sealed record FollowRemedy(BalanceRemedyKind Kind, double ChangeStops, FollowOutcome Outcome);

/// <summary>Follows daylight by the shutter speed, with the flash untouched.</summary>
/// <remarks>
/// <code>
/// wanted = held * 2^(d - (E - E0))                                (26)
/// rest   = E - E0 + log2(t / held) - d                            (27)
/// </code>
/// <para>E0, E: exposure value of the back light at ISO 100 at first and now; d: change of the flash, 0 when untouched; t: the
/// shutter speed as set. By (3) the ratio is E + log2(t) - F, so t makes good what E lost, and the back light's exposure
/// stays as well; aperture, ISO and the fill's exposure are as they were. A flash that is turned by d needs the aperture
/// closed by d. Source: derived in docs/models/lighting-ratio.md.</para>
/// </remarks>
public static class Follow
{
    /// <summary>Finds the shutter speed. (26) (27)</summary>
    public static FollowOutcome Solve<TTrail>(FollowInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("shutter speed");
        var E0 = trail.Given("E0", input.First.ExposureValueIso100Stops, "stops", "back light at first, exposure value at ISO 100");
        var E = trail.Given("E", input.Now.ExposureValueIso100Stops, "stops", "back light now, exposure value at ISO 100");
        var d = trail.Given("d", input.FlashStops, "stops", "change of the flash");
        var held = trail.Given("held", Guard.Positive(input.ShutterSpeedS), "s", "shutter_speed");
        var wanted = trail.Let("wanted", held * Pow(2, d - (E - E0)), "s", "lighting ratio (26)");
        var choice = ShutterChoice.For(wanted, input.Scale, input.SyncSpeedS, input.SlowestShutterSpeedS);
        var t = trail.Given(
            "t", choice.ShutterSpeedS, "s", choice.IsNearest ? "nearest mark" : "as far as the limit allows", "shutter_speed.time_s");
        var rest = trail.Let("rest", E - E0 + Log2(t / held) - d, "stops", "lighting ratio (27)", "rest_stops");
        return new(choice.Obstacle, choice.ShortfallStops, t, rest);
    }

    /// <summary>What helps, each priced by solving again; empty when nothing stands in the way.</summary>
    public static IReadOnlyList<FollowRemedy> RemediesFor(FollowInput input, FollowOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(outcome);
        var g = outcome.ShortfallStops;
        return outcome.Obstacle switch
        {
            BalanceObstacle.SyncSpeed => [Back(BalanceRemedyKind.DimBackLight, -g), Flash(BalanceRemedyKind.RaiseFlashPower, g)],
            BalanceObstacle.SlowestShutterSpeed =>
                [Back(BalanceRemedyKind.BrightenBackLight, g), Flash(BalanceRemedyKind.LowerFlashPower, -g)],
            _ => [],
        };

        FollowRemedy Back(BalanceRemedyKind kind, double stops) =>
            Price(kind, stops, input with { Now = new(input.Now.ExposureValueIso100Stops + stops) });

        FollowRemedy Flash(BalanceRemedyKind kind, double stops) =>
            Price(kind, stops, input with { FlashStops = input.FlashStops + stops });

        FollowRemedy Price(BalanceRemedyKind kind, double stops, FollowInput changed)
        {
            var none = default(NoTrail);
            return new(kind, stops, Solve(changed, ref none));
        }
    }
}
