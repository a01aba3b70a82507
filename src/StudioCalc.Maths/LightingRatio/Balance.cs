using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Brings a flash fill and a continuous back light to a wanted ratio by changing one variable.</summary>
/// <remarks>
/// <code>
/// k = E + log2(t) - F - d                 back light over fill           (3)
/// d = E + log2(t) - F - k                 by power, shutter speed held   (4)
/// log2(t) = k - E + F                     by shutter speed, power held   (5)
/// A = V + log2(S / 100) - n - p           the aperture: N = 2^(A / 2)    (6)
/// b = E + log2(t) + log2(S / 100) - log2(N²) - n                         (7)
/// f = F + d + log2(S / 100) - log2(N²) - n                               (8)
/// both = log2(2^b + 2^f)                                                 (9)
/// </code>
/// <para>E: exposure value of the back light at ISO 100. F: flash value of the fill at ISO 100. d: change of the flash's
/// light. t: shutter speed in s. S: ISO. n: light lost in the lens. V: value of the placed light, E + log2(t) or F + d.
/// p: the placed light over the setting. N, S and n cancel in (3): neither aperture, ISO nor a filter on the lens changes
/// a ratio.</para>
/// <para>Valid at sync speed or slower, for lights read alone with one kind of receptor. Where a limit stands in the way
/// the outcome names it and is the nearest to be had. Source: derived in docs/models/lighting-ratio.md.</para>
/// </remarks>
public static class Balance
{
    // Marks are compared as exact values; this is rounding error of a logarithm, far below any mark.
    private const double Rounding = 1e-9;

    /// <summary>How far the back light stands over the fill as metered, at the held shutter speed. (3) [stops]</summary>
    public static double MeteredBackOverFillStops(BalanceInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return input.Back.ExposureValueIso100Stops + Log2(input.ShutterSpeedS) - input.Fill.FlashValueIso100Stops;
    }

    /// <summary>Solves for <paramref name="variable"/> and sets the exposure for the placed light.</summary>
    public static BalanceOutcome Solve<TTrail>(BalanceInput input, BalanceVariable variable, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("ratio");
        trail.Given("E", input.Back.ExposureValueIso100Stops, "stops", "back light, exposure value at ISO 100");
        trail.Given("F", input.Fill.FlashValueIso100Stops, "stops", "fill, flash value at ISO 100");
        trail.Given("k", input.BackOverFillStops, "stops", "back_over_fill_stops");
        var change = variable switch
        {
            BalanceVariable.FlashPower => ByPower(input, ref trail),
            BalanceVariable.ShutterSpeed => ByShutterSpeed(input, ref trail),
            _ => throw new ArgumentOutOfRangeException(nameof(variable)),
        };
        return Place(input, change, ref trail);
    }

    private static Change ByPower<TTrail>(BalanceInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (E, F, k) = (input.Back.ExposureValueIso100Stops, input.Fill.FlashValueIso100Stops, input.BackOverFillStops);
        var beyondSync = Log2(input.SyncSpeedS / input.ShutterSpeedS);
        var beyondSlowest = Log2(input.ShutterSpeedS / input.SlowestShutterSpeedS);
        var (held, blocked, beyond, reason) = beyondSync > Rounding
            ? (input.SyncSpeedS, BalanceObstacle.SyncSpeed, beyondSync, "sync speed, as the held shutter speed is faster")
            : beyondSlowest > Rounding
                ? (input.SlowestShutterSpeedS, BalanceObstacle.SlowestShutterSpeed, beyondSlowest,
                    "slowest shutter speed, as the held one is slower")
                : (input.ShutterSpeedS, BalanceObstacle.None, 0, "shutter speed held");
        var t = trail.Given("t", held, "s", reason, "shutter_speed.time_s");
        var heads = new FlashHeads(input);
        var perStop = trail.Given("perStop", heads.StepsPerStop, "", "power_scale, steps to a stop that every head has");
        var wanted = trail.Let("wanted", E + Log2(t) - F - k, "stops", "lighting ratio (4)");
        var steps = trail.Let("steps", Ceiling(wanted * perStop - 0.5 - 1e-9), "", "nearest power step, a tie towards less light");

        var (most, least) = (heads.MostSteps, heads.LeastSteps);
        var turned = Clamp(steps, least, most);
        var (obstacle, shortfall) = blocked != BalanceObstacle.None ? (blocked, beyond)
            : steps > most ? (BalanceObstacle.FullPower, wanted - most / perStop)
            : steps < least ? (BalanceObstacle.LowestPower, least / perStop - wanted)
            : (BalanceObstacle.None, 0);
        if (turned != steps)
        {
            trail.Given("steps", turned, "", "as far as the first head at its end lets all go");
        }

        steps = turned;
        var d = trail.Let("d", steps / perStop, "stops", "power as set", "change_stops");
        return new(t, d, (int)Round(d * input.PowerScale.StepsPerStop()), d, obstacle, shortfall);
    }

    private static Change ByShutterSpeed<TTrail>(BalanceInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (E, F, k) = (input.Back.ExposureValueIso100Stops, input.Fill.FlashValueIso100Stops, input.BackOverFillStops);
        var held = trail.Given("held", input.ShutterSpeedS, "s", "shutter speed before the change");
        var wanted = trail.Let("wanted", Pow(2, k - E + F), "s", "lighting ratio (5)");
        var choice = ShutterChoice.For(wanted, input.Scale, input.SyncSpeedS, input.SlowestShutterSpeedS);
        var t = trail.Given(
            "t", choice.ShutterSpeedS, "s", choice.IsNearest ? "nearest mark" : "as far as the limit allows", "shutter_speed.time_s");
        var gained = trail.Let("gained", Log2(t / held), "stops", "change of the back light", "change_stops");
        var d = trail.Given("d", 0, "stops", "power held");
        return new(t, d, 0, gained, choice.Obstacle, choice.ShortfallStops);
    }

    private static BalanceOutcome Place<TTrail>(BalanceInput input, Change change, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (E, F, k) = (input.Back.ExposureValueIso100Stops, input.Fill.FlashValueIso100Stops, input.BackOverFillStops);
        var (t, d) = (change.ShutterSpeedS, change.FlashStops);

        trail.Section("placement");
        var S = trail.Given("S", input.Iso, "", "ISO held", "iso.speed");
        var n = trail.Given("n", input.LensLossStops, "stops", "lens_loss_stops");
        var p = trail.Given("p", input.PlacedOverSettingStops, "stops", "placement.over_setting_stops");
        var V = input.Placed == PlacedLight.Back
            ? trail.Let("V", E + Log2(t), "stops", "value of the back light, placed")
            : trail.Let("V", F + d, "stops", "value of the fill, placed");
        var A = trail.Let("A", V + Log2(S / 100) - n - p, "stops", "lighting ratio (6)");
        var wanted = trail.Let("wantedN", Pow(2, A / 2), "", "lighting ratio (6)");
        var exact = Clamp(wanted, input.WidestFNumber, input.SmallestFNumber);
        var beyond = Abs(2 * Log2(wanted / exact));
        var blocked = beyond > Rounding;
        var nearest = NearestOrExact(Marks.Aperture, wanted, input.Scale);
        var set = blocked ? exact : Clamp(nearest, input.WidestFNumber, input.SmallestFNumber);
        var N = trail.Given("N", set, "", set == nearest ? "nearest mark" : "as far as the lens goes", "aperture.f_number");

        trail.Section("as set");
        var b = trail.Let(
            "b", E + Log2(t) + Log2(S / 100) - Log2(N * N) - n, "stops", "lighting ratio (7)", "back_over_setting_stops");
        var f = trail.Let(
            "f", F + d + Log2(S / 100) - Log2(N * N) - n, "stops", "lighting ratio (8)", "fill_over_setting_stops");
        var both = trail.Let("both", Log2(Pow(2, b) + Pow(2, f)), "stops", "lighting ratio (9)", "both_over_setting_stops");
        var kSet = trail.Let("kSet", E + Log2(t) - F - d, "stops", "lighting ratio (3)", "back_over_fill_stops");
        var rest = trail.Let("rest", k - kSet, "stops", "asked less reached", "rest_stops");

        var (obstacle, shortfall) = change.Obstacle != BalanceObstacle.None ? (change.Obstacle, change.ShortfallStops)
            : !blocked ? (BalanceObstacle.None, 0)
            : wanted < exact ? (BalanceObstacle.WidestAperture, beyond)
            : (BalanceObstacle.SmallestAperture, beyond);
        return new()
        {
            Obstacle = obstacle,
            ShortfallStops = shortfall,
            FNumber = N,
            ShutterSpeedS = t,
            PowerBelowFullStops = Max(0, input.PowerBelowFullStops - d),
            PowerChangeStops = d,
            PowerSteps = change.PowerSteps,
            Fill = new(F + d),
            ChangeStops = change.GainedStops,
            BackOverSettingStops = b,
            FillOverSettingStops = f,
            BothOverSettingStops = both,
            BackOverFillStops = kSet,
            RestStops = rest,
            Ratio = LightingRatio.FromStops(kSet, ref trail),
        };
    }

    private static double NearestOrExact(MarkSeries marks, double value, StopScale scale) =>
        marks.Nearest(value, scale)?.Value ?? value;

    private readonly record struct Change(
        double ShutterSpeedS,
        double FlashStops,
        int PowerSteps,
        double GainedStops,
        BalanceObstacle Obstacle,
        double ShortfallStops);
}
