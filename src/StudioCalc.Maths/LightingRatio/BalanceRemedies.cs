using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What helps where <see cref="Balance"/> does not reach a ratio, each priced by solving again with it.</summary>
/// <remarks>
/// A remedy acts on a term of equation (3), by the shortfall: the flash (power, distance, diffusion), the back light, or
/// the shutter speed. Where the aperture stands in the way it acts on ISO or the lens instead, which leave the ratio
/// alone. Power turns in whole steps, shutter speed and ISO go to the mark that covers the shortfall; a remedy that its
/// own limit leaves without effect is not listed.
/// </remarks>
public static class BalanceRemedies
{
    private const double Rounding = 1e-9;

    /// <summary>The remedies for <paramref name="outcome"/>, empty when nothing stands in the way.</summary>
    public static IReadOnlyList<BalanceRemedy> For(BalanceInput input, BalanceVariable variable, BalanceOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(outcome);
        var g = outcome.ShortfallStops;
        IEnumerable<BalanceRemedy?> remedies = (outcome.Obstacle, variable) switch
        {
            (BalanceObstacle.SyncSpeed, BalanceVariable.FlashPower) => [Shutter(g)],
            (BalanceObstacle.SyncSpeed, _) => [Power(g), Flash(BalanceRemedyKind.MoveFlashCloser, g), Back(-g)],
            (BalanceObstacle.SlowestShutterSpeed, BalanceVariable.FlashPower) => [Shutter(-g)],
            (BalanceObstacle.SlowestShutterSpeed, _) =>
            [
                Power(-g),
                Flash(BalanceRemedyKind.MoveFlashAway, -g),
                Flash(BalanceRemedyKind.DiffuseFlash, -g),
                Back(g),
            ],
            (BalanceObstacle.FullPower, _) => [Shutter(-g), Flash(BalanceRemedyKind.MoveFlashCloser, g), Back(-g)],
            (BalanceObstacle.LowestPower, _) =>
            [
                Shutter(g),
                Flash(BalanceRemedyKind.MoveFlashAway, -g),
                Flash(BalanceRemedyKind.DiffuseFlash, -g),
                Back(g),
            ],
            (BalanceObstacle.WidestAperture, _) => [Iso(g), Lens(g)],
            (BalanceObstacle.SmallestAperture, _) => [Iso(-g), Lens(-g)],
            _ => [],
        };
        return [.. remedies.OfType<BalanceRemedy>()];

        BalanceRemedy? Price(BalanceRemedyKind kind, double change, BalanceInput changed)
        {
            if (Abs(change) <= Rounding)
            {
                return null;
            }

            var none = default(NoTrail);
            return new(kind, change, changed, Balance.Solve(changed, variable, ref none));
        }

        BalanceRemedy? Power(double stops)
        {
            var perStop = input.PowerScale.StepsPerStop();
            var room = stops > 0
                ? Floor(input.PowerBelowFullStops * perStop + Rounding)
                : Floor((input.LowestPowerBelowFullStops - input.PowerBelowFullStops) * perStop + Rounding);
            var steps = Min(Ceiling(Abs(stops) * perStop - Rounding), Max(0, room));
            var change = CopySign(steps / perStop, stops);
            return Price(
                stops > 0 ? BalanceRemedyKind.RaiseFlashPower : BalanceRemedyKind.LowerFlashPower,
                change,
                input with
                {
                    Fill = new(input.Fill.FlashValueIso100Stops + change),
                    PowerBelowFullStops = Max(0, input.PowerBelowFullStops - change),
                });
        }

        BalanceRemedy? Flash(BalanceRemedyKind kind, double stops) =>
            Price(kind, stops, input with { Fill = new(input.Fill.FlashValueIso100Stops + stops) });

        BalanceRemedy? Back(double stops) => Price(
            stops > 0 ? BalanceRemedyKind.BrightenBackLight : BalanceRemedyKind.DimBackLight,
            stops,
            input with { Back = new(input.Back.ExposureValueIso100Stops + stops) });

        BalanceRemedy? Shutter(double stops)
        {
            var wanted = Covering(Marks.ShutterSpeed, input.ShutterSpeedS, stops);
            var t = Clamp(wanted, input.SyncSpeedS, Max(input.SyncSpeedS, input.SlowestShutterSpeedS));
            return Price(
                stops > 0 ? BalanceRemedyKind.SlowerShutterSpeed : BalanceRemedyKind.FasterShutterSpeed,
                Log2(t / input.ShutterSpeedS),
                input with { ShutterSpeedS = t });
        }

        BalanceRemedy? Iso(double stops)
        {
            var S = Covering(Marks.Iso, input.Iso, stops);
            return Price(
                stops > 0 ? BalanceRemedyKind.RaiseIso : BalanceRemedyKind.LowerIso,
                Log2(S / input.Iso),
                input with { Iso = S });
        }

        BalanceRemedy? Lens(double stops)
        {
            var change = Min(stops, input.LensLossStops);
            return Price(
                stops > 0 ? BalanceRemedyKind.UnfilterLens : BalanceRemedyKind.FilterLens,
                change,
                input with { LensLossStops = input.LensLossStops - change });
        }

        // The mark at which the change is at least as large as asked; the exact value beyond the marks.
        double Covering(MarkSeries marks, double value, double stops)
        {
            var exact = value * Pow(2, stops);
            if (marks.Nearest(exact, input.Scale) is not { } mark)
            {
                return exact;
            }

            var falls = Log2(exact / mark.Value) * Sign(stops);
            if (falls <= Rounding)
            {
                return mark.Value;
            }

            var step = Pow(2, (double)Sign(stops) / mark.Scale.StepsPerStop());
            return marks.Nearest(mark.Value * step, input.Scale)?.Value ?? exact;
        }
    }
}
