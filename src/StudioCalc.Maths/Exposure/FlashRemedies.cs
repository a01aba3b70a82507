using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What helps where <see cref="FlashExposure"/> is not reached, each priced by solving again with it.</summary>
/// <remarks>
/// A remedy makes up the shortfall. Aperture and ISO go to the mark that covers it, power to a step and pops to a whole
/// number that do; a remedy that its own limit leaves without effect is not listed, and neither is one that acts on what is
/// solved for. Where the other units alone give too much they are turned down to half of what is needed.
/// </remarks>
public static class FlashRemedies
{
    private const double Rounding = 1e-9;
    private const double OneStop = 1;

    /// <summary>The remedies for <paramref name="outcome"/>, empty when nothing stands in the way.</summary>
    public static IReadOnlyList<FlashRemedy> For(FlashInput input, FlashOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(outcome);
        var g = outcome.ShortfallStops;
        IEnumerable<FlashRemedy?> remedies = outcome.Obstacle switch
        {
            FlashObstacle.FullPower or FlashObstacle.WidestAperture or FlashObstacle.HighestIso or FlashObstacle.MostPops =>
                [Power(), Move(), Pops(g), Aperture(g), Iso(g)],
            FlashObstacle.LowestPower or FlashObstacle.SmallestAperture or FlashObstacle.LowestIso or FlashObstacle.OnePop =>
                [Power(), Move(), Filter(), Pops(-g), Aperture(-g), Iso(-g), Others(-g)],
            FlashObstacle.OtherUnits => [Others(-g - OneStop), Pops(-g - OneStop), Aperture(-g - OneStop), Iso(-g - OneStop)],
            _ => [],
        };
        return [.. remedies.OfType<FlashRemedy>()];

        FlashRemedy? Price(FlashRemedyKind kind, double change, FlashInput changed)
        {
            if (Abs(change) <= Rounding)
            {
                return null;
            }

            var none = default(NoTrail);
            return new(kind, change, FlashExposure.Solve(changed, ref none));
        }

        // What the first units must gain alone, or null where they cannot make it up.
        double? FirstGain() => outcome.First is not null && outcome.NeededFNumberSquared - outcome.OthersFNumberSquared is var needed
            && needed > outcome.NeededFNumberSquared * Rounding
                ? Log2(needed / outcome.FirstFNumberSquared)
                : null;

        FlashRemedy? Power()
        {
            if (input.Unknown == FlashUnknown.Power || FirstGain() is not { } gain)
            {
                return null;
            }

            var powers = input.PowersBelowFullStops;
            var wanted = input.First.PowerBelowFullStops - gain;
            var covering = gain > 0
                ? powers.Where(power => power <= wanted + Rounding).DefaultIfEmpty(powers[0]).Max()
                : powers.Where(power => power >= wanted - Rounding).DefaultIfEmpty(powers[^1]).Min();
            var change = input.First.PowerBelowFullStops - covering;
            return change * gain <= 0 ? null : Price(
                gain > 0 ? FlashRemedyKind.RaisePower : FlashRemedyKind.LowerPower,
                change,
                input with { First = input.First with { PowerBelowFullStops = covering } });
        }

        FlashRemedy? Move() => FirstGain() is not { } gain ? null : Price(
            gain > 0 ? FlashRemedyKind.MoveCloser : FlashRemedyKind.MoveAway,
            gain,
            input with { First = input.First with { DistanceMm = input.First.DistanceMm * Pow(2, -gain / 2) } });

        FlashRemedy? Filter() => FirstGain() is not { } gain ? null : Price(
            FlashRemedyKind.FilterFlash, gain, input with { First = input.First with { LossStops = input.First.LossStops - gain } });

        FlashRemedy? Others(double stops) => input.Others.Count == 0 ? null : Price(
            FlashRemedyKind.LowerOtherUnits,
            stops,
            input with { Others = [.. input.Others.Select(unit => unit with { LossStops = unit.LossStops - stops })] });

        FlashRemedy? Pops(double stops)
        {
            if (input.Unknown == FlashUnknown.Pops)
            {
                return null;
            }

            var exact = input.Pops * Pow(2, stops);
            var pops = (int)Clamp(stops > 0 ? Ceiling(exact * (1 - Rounding)) : Floor(exact * (1 + Rounding)), 1, FlashInput.MostPops);
            return Price(
                stops > 0 ? FlashRemedyKind.MorePops : FlashRemedyKind.FewerPops,
                Log2((double)pops / input.Pops),
                input with { Pops = pops });
        }

        FlashRemedy? Aperture(double stops)
        {
            if (input.Unknown == FlashUnknown.Aperture)
            {
                return null;
            }

            var N = Covering(Marks.Aperture, input.FNumber, stops, input.Limits.WidestFNumber, input.Limits.SmallestFNumber);
            return Price(
                stops > 0 ? FlashRemedyKind.OpenAperture : FlashRemedyKind.CloseAperture,
                Marks.Aperture.Stops(N, input.FNumber),
                input with { FNumber = N });
        }

        FlashRemedy? Iso(double stops)
        {
            if (input.Unknown == FlashUnknown.Iso)
            {
                return null;
            }

            var S = Covering(Marks.Iso, input.Iso, stops, input.Limits.LowestIso, input.Limits.HighestIso);
            return Price(
                stops > 0 ? FlashRemedyKind.RaiseIso : FlashRemedyKind.LowerIso,
                Marks.Iso.Stops(S, input.Iso),
                input with { Iso = S });
        }

        double Covering(MarkSeries marks, double value, double stops, double lowest, double highest) =>
            Clamp(marks.Covering(marks.Admitting(value, stops), input.Scale, stops > 0), lowest, highest);
    }
}
