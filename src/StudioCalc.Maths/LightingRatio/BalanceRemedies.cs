using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What helps where <see cref="Balance"/> does not reach a ratio, each priced by solving again with it.</summary>
/// <remarks>
/// A remedy acts on a term of equation (3), by the shortfall: the flash (power, distance, diffusion), the back light, or
/// the shutter speed. Where the aperture stands in the way it acts on ISO or the lens instead, which leave the ratio
/// alone. Power turns in whole steps, shutter speed and ISO go to the mark that covers the shortfall, within the camera's
/// limits; a remedy that its own limit leaves without effect is not listed. Where filters are at hand, a remedy that
/// filters takes the weakest that covers the shortfall, and all that it takes.
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
            (BalanceObstacle.SyncSpeed, _) => [Power(g), Move(g), Dim(g)],
            (BalanceObstacle.SlowestShutterSpeed, BalanceVariable.FlashPower) => [Shutter(-g)],
            (BalanceObstacle.SlowestShutterSpeed, _) =>
            [
                Power(-g),
                Move(-g),
                Diffuse(g),
                Brighten(g),
            ],
            (BalanceObstacle.FullPower, _) => [Shutter(-g), Move(g), Dim(g)],
            (BalanceObstacle.LowestPower, _) =>
            [
                Shutter(g),
                Move(-g),
                Diffuse(g),
                Brighten(g),
            ],
            (BalanceObstacle.WidestAperture, _) => [Iso(g), Unfilter(g)],
            (BalanceObstacle.SmallestAperture, _) => [Iso(-g), Filter(g)],
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
            var heads = new FlashHeads(input);
            var wanted = CopySign(Ceiling(Abs(stops) * heads.StepsPerStop - Rounding), stops);
            var change = Clamp(wanted, heads.LeastSteps, heads.MostSteps) / heads.StepsPerStop;
            return Price(
                stops > 0 ? BalanceRemedyKind.RaiseFlashPower : BalanceRemedyKind.LowerFlashPower,
                change,
                input with
                {
                    Fill = new(input.Fill.FlashValueIso100Stops + change),
                    PowerBelowFullStops = Max(0, input.PowerBelowFullStops - change),
                    FurtherHeads =
                    [
                        .. input.FurtherHeads.Select(
                            head => head with { PowerBelowFullStops = Max(0, head.PowerBelowFullStops - change) }),
                    ],
                });
        }

        BalanceRemedy? Move(double stops) =>
            Flash(stops > 0 ? BalanceRemedyKind.MoveFlashCloser : BalanceRemedyKind.MoveFlashAway, stops);

        BalanceRemedy? Diffuse(double loss) => ByFilter(loss, taken => Flash(BalanceRemedyKind.DiffuseFlash, -taken));

        BalanceRemedy? Flash(BalanceRemedyKind kind, double stops) =>
            Price(kind, stops, input with { Fill = new(input.Fill.FlashValueIso100Stops + stops) });

        BalanceRemedy? Dim(double loss) => ByFilter(loss, taken => Back(BalanceRemedyKind.DimBackLight, -taken));

        BalanceRemedy? Brighten(double stops) => Back(BalanceRemedyKind.BrightenBackLight, stops);

        BalanceRemedy? Back(BalanceRemedyKind kind, double stops) =>
            Price(kind, stops, input with { Back = new(input.Back.ExposureValueIso100Stops + stops) });

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
            var wanted = Covering(Marks.Iso, input.Iso, stops);
            var S = stops > 0 ? Max(input.Iso, Min(wanted, input.HighestIso)) : Min(input.Iso, Max(wanted, input.LowestIso));
            return Price(
                stops > 0 ? BalanceRemedyKind.RaiseIso : BalanceRemedyKind.LowerIso,
                Log2(S / input.Iso),
                input with { Iso = S });
        }

        BalanceRemedy? Unfilter(double stops) => Lens(BalanceRemedyKind.UnfilterLens, Min(stops, input.LensLossStops));

        BalanceRemedy? Filter(double loss) => ByFilter(loss, taken => Lens(BalanceRemedyKind.FilterLens, -taken));

        BalanceRemedy? Lens(BalanceRemedyKind kind, double stops) =>
            Price(kind, stops, input with { LensLossStops = input.LensLossStops - stops });

        // The weakest filter at hand that takes enough, or exactly what is needed when none does.
        BalanceRemedy? ByFilter(double loss, Func<double, BalanceRemedy?> price)
        {
            int? weakest = null;
            for (var i = 0; i < input.FiltersAtHandStops.Count; i++)
            {
                var taken = input.FiltersAtHandStops[i];
                if (taken >= loss - Rounding && (weakest is not { } best || taken < input.FiltersAtHandStops[best]))
                {
                    weakest = i;
                }
            }

            var remedy = price(weakest is { } chosen ? input.FiltersAtHandStops[chosen] : loss);
            return remedy is null ? null : remedy with { FilterIndex = weakest };
        }

        double Covering(MarkSeries marks, double value, double stops) =>
            marks.Covering(marks.Admitting(value, stops), input.Scale, stops > 0);
    }
}
