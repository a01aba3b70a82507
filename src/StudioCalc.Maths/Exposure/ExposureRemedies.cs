using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Something that helps where an exposure is not reached.</summary>
public enum ExposureRemedyKind
{
    /// <summary>Open the aperture.</summary>
    OpenAperture,

    /// <summary>Close the aperture.</summary>
    CloseAperture,

    /// <summary>Set a slower shutter speed.</summary>
    SlowerShutterSpeed,

    /// <summary>Set a faster shutter speed.</summary>
    FasterShutterSpeed,

    /// <summary>Raise the ISO.</summary>
    RaiseIso,

    /// <summary>Lower the ISO.</summary>
    LowerIso,

    /// <summary>Take filters off the lens.</summary>
    UnfilterLens,

    /// <summary>Put a neutral-density filter on the lens.</summary>
    FilterLens,

    /// <summary>Bring more light.</summary>
    MoreLight,

    /// <summary>Dim the light.</summary>
    LessLight,
}

/// <summary>A remedy, and what comes of it.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="ChangeStops">Exposure gained by it; negative is less. [stops]</param>
/// <param name="Input">The calculation's input with the remedy applied.</param>
/// <param name="Outcome">The calculation run again with it.</param>
public sealed record ExposureRemedy(ExposureRemedyKind Kind, double ChangeStops, ExposureInput Input, ExposureOutcome Outcome);

/// <summary>What helps where <see cref="ExposureSolver"/> does not reach an exposure, each priced by solving again.</summary>
/// <remarks>A held setting goes to the mark that covers the shortfall, as far as its own limit; a remedy that its limit
/// leaves without effect is not listed.</remarks>
public static class ExposureRemedies
{
    private const double Rounding = 1e-9;

    /// <summary>The remedies for <paramref name="outcome"/>, empty when nothing stands in the way.</summary>
    public static IReadOnlyList<ExposureRemedy> For(ExposureInput input, ExposureOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(outcome);
        if (outcome.Obstacle == ExposureObstacle.None)
        {
            return [];
        }

        var lacksLight = outcome.Obstacle
            is ExposureObstacle.WidestAperture or ExposureObstacle.SlowestShutterSpeed or ExposureObstacle.HighestIso;
        var g = lacksLight ? outcome.ShortfallStops : -outcome.ShortfallStops;
        IEnumerable<ExposureRemedy?> remedies = [Aperture(), Shutter(), Iso(), Filter(), Light()];
        return [.. remedies.OfType<ExposureRemedy>()];

        ExposureRemedy? Price(ExposureRemedyKind kind, double change, ExposureInput changed)
        {
            if (change * Sign(g) <= Rounding)
            {
                return null;
            }

            var none = default(NoTrail);
            return new(kind, change, changed, ExposureSolver.Solve(changed, ref none));
        }

        ExposureRemedy? Aperture()
        {
            if (input.Unknown == ExposureUnknown.Aperture)
            {
                return null;
            }

            var N = Covering(Marks.Aperture, input.FNumber, input.Limits.WidestFNumber, input.Limits.SmallestFNumber);
            return Price(
                lacksLight ? ExposureRemedyKind.OpenAperture : ExposureRemedyKind.CloseAperture,
                Marks.Aperture.Stops(N, input.FNumber),
                input with { FNumber = N });
        }

        ExposureRemedy? Shutter()
        {
            if (input.Unknown == ExposureUnknown.ShutterSpeed)
            {
                return null;
            }

            var t = Covering(
                Marks.ShutterSpeed, input.ShutterSpeedS, input.Limits.FastestShutterSpeedS, input.Limits.SlowestShutterSpeedS);
            return Price(
                lacksLight ? ExposureRemedyKind.SlowerShutterSpeed : ExposureRemedyKind.FasterShutterSpeed,
                Marks.ShutterSpeed.Stops(t, input.ShutterSpeedS),
                input with { ShutterSpeedS = t });
        }

        ExposureRemedy? Iso()
        {
            if (input.Unknown == ExposureUnknown.Iso)
            {
                return null;
            }

            var S = Covering(Marks.Iso, input.Iso, input.Limits.LowestIso, input.Limits.HighestIso);
            return Price(
                lacksLight ? ExposureRemedyKind.RaiseIso : ExposureRemedyKind.LowerIso,
                Marks.Iso.Stops(S, input.Iso),
                input with { Iso = S });
        }

        ExposureRemedy? Filter()
        {
            var change = Min(g, Max(0, input.FilterLossStops));
            return Price(
                lacksLight ? ExposureRemedyKind.UnfilterLens : ExposureRemedyKind.FilterLens,
                change,
                input with { FilterLossStops = input.FilterLossStops - change });
        }

        ExposureRemedy? Light() => Price(
            lacksLight ? ExposureRemedyKind.MoreLight : ExposureRemedyKind.LessLight,
            g,
            input with { Light = new(input.Light.ExposureValueIso100Stops + g) });

        double Covering(MarkSeries marks, double value, double lowest, double highest) =>
            Clamp(marks.Covering(marks.Admitting(value, g), input.Scale, lacksLight), lowest, highest);
    }
}
