using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes the maths' outcome of one way as its answer.</summary>
internal static class BalanceWriter
{
    private const double SyncMarginStops = 1 / 3.0;
    private const double RestWorthSayingStops = 0.1;
    private const double Rounding = 1e-9;

    public static BalanceWay Way(BalanceInput input, Maths.BalanceVariable variable, BalanceOutcome outcome, double? distanceMm)
    {
        var way = new BalanceWay { Variable = ToContract(variable) };
        if (outcome.Obstacle == Maths.BalanceObstacle.None)
        {
            way.Solution = Solution(input, input, outcome, distanceMm);
            way.Advisories.Add(Notes(outcome.RestStops, outcome.ShutterSpeedS, input.SyncSpeedS));
            return way;
        }

        way.NotReached = new()
        {
            Obstacle = ToContract(outcome.Obstacle),
            ShortfallStops = outcome.ShortfallStops,
            Nearest = Solution(input, input, outcome, distanceMm),
        };
        way.NotReached.Remedies.Add(
            BalanceRemedies.For(input, variable, outcome).Select(remedy => Remedy(input, remedy, distanceMm)));
        way.Advisories.Add(Notes(way.NotReached.Obstacle, way.NotReached.Remedies.Select(remedy => remedy.Kind)));
        return way;
    }

    /// <summary>What to say where a ratio is reached, of the settings.</summary>
    public static IEnumerable<Advisory> Notes(double restStops, double shutterSpeedS, double syncSpeedS)
    {
        if (Math.Abs(restStops) > RestWorthSayingStops + Rounding)
        {
            yield return Advise.RoundedRatio(restStops);
        }

        var margin = Math.Log2(shutterSpeedS / syncSpeedS);
        if (margin < SyncMarginStops - Rounding)
        {
            yield return Advise.SyncMargin(Math.Max(0, margin));
        }
    }

    /// <summary>What to say where it is not reached.</summary>
    public static IEnumerable<Advisory> Notes(V1.BalanceObstacle obstacle, IEnumerable<V1.BalanceRemedyKind> remedies)
    {
        if (obstacle is not (V1.BalanceObstacle.WidestAperture or V1.BalanceObstacle.SmallestAperture))
        {
            yield return Advise.LensFilterKeepsRatio();
        }

        var kinds = remedies.ToHashSet();
        if (kinds.Overlaps([V1.BalanceRemedyKind.MoveFlashCloser, V1.BalanceRemedyKind.MoveFlashAway]))
        {
            yield return Advise.InverseSquareAssumed();
        }

        if (kinds.Overlaps(
            [
                V1.BalanceRemedyKind.MoveFlashCloser,
                V1.BalanceRemedyKind.MoveFlashAway,
                V1.BalanceRemedyKind.DiffuseFlash,
                V1.BalanceRemedyKind.DimBackLight,
                V1.BalanceRemedyKind.BrightenBackLight,
            ]))
        {
            yield return Advise.MovingLights();
        }
    }

    public static V1.LightingRatio Ratio(Maths.LightingRatio ratio) =>
        new() { KeyToFill = ratio.KeyToFill, KeyPlusFillToFill = ratio.KeyPlusFillToFill };

    // Steps count from the power that the request states, also where a remedy has changed it.
    private static BalanceSolution Solution(BalanceInput asked, BalanceInput input, BalanceOutcome outcome, double? distanceMm)
    {
        var solution = new BalanceSolution
        {
            Aperture = CameraWriter.Aperture(outcome.FNumber, input.Scale, input.WidestFNumber, input.SmallestFNumber),
            ShutterSpeed = CameraWriter.ShutterSpeed(
                outcome.ShutterSpeedS, input.Scale, input.SyncSpeedS, input.SlowestShutterSpeedS),
            Iso = CameraWriter.Iso(input.Iso, input.Scale),
            Power = CameraWriter.Power(outcome.PowerBelowFullStops),
            PowerSteps = (int)Math.Round(
                (asked.PowerBelowFullStops - outcome.PowerBelowFullStops) * asked.PowerScale.StepsPerStop()),
            FillMeters = CameraWriter.Aperture(outcome.Fill.FNumberAt(input.Iso), input.Scale),
            ChangeStops = outcome.ChangeStops,
            BackOverSettingStops = outcome.BackOverSettingStops,
            FillOverSettingStops = outcome.FillOverSettingStops,
            BothOverSettingStops = outcome.BothOverSettingStops,
            BackOverFillStops = outcome.BackOverFillStops,
            RestStops = outcome.RestStops,
            Ratio = Ratio(outcome.Ratio),
        };
        solution.FurtherPowers.Add(input.FurtherHeads.Select(head =>
            CameraWriter.Power(Math.Max(0, head.PowerBelowFullStops - outcome.PowerChangeStops))));
        if (outcome.RestDistanceFactor is { } factor)
        {
            solution.RestDistanceFactor = factor;
            if (distanceMm is { } distance)
            {
                solution.RestDistanceMm = distance * factor;
            }
        }

        return solution;
    }

    private static V1.BalanceRemedy Remedy(BalanceInput asked, Maths.BalanceRemedy remedy, double? distanceMm)
    {
        var answer = new V1.BalanceRemedy { Kind = ToContract(remedy.Kind), ChangeStops = remedy.ChangeStops };
        if (remedy.DistanceFactor is { } factor)
        {
            answer.DistanceFactor = factor;
            if (distanceMm is { } distance)
            {
                answer.DistanceMm = distance * factor;
            }
        }

        if (remedy.FilterIndex is { } index)
        {
            answer.FilterIndex = (uint)index;
        }

        if (remedy.Outcome.Obstacle == Maths.BalanceObstacle.None)
        {
            answer.Solution = Solution(asked, remedy.Input, remedy.Outcome, distanceMm * (remedy.DistanceFactor ?? 1));
        }
        else
        {
            answer.ShortfallStops = remedy.Outcome.ShortfallStops;
            answer.Obstacle = ToContract(remedy.Outcome.Obstacle);
        }

        return answer;
    }

    private static V1.BalanceVariable ToContract(Maths.BalanceVariable variable) => variable switch
    {
        Maths.BalanceVariable.FlashPower => V1.BalanceVariable.FlashPower,
        Maths.BalanceVariable.ShutterSpeed => V1.BalanceVariable.ShutterSpeed,
        _ => throw new ArgumentOutOfRangeException(nameof(variable)),
    };

    public static V1.BalanceObstacle ToContract(Maths.BalanceObstacle obstacle) => obstacle switch
    {
        Maths.BalanceObstacle.SyncSpeed => V1.BalanceObstacle.SyncSpeed,
        Maths.BalanceObstacle.SlowestShutterSpeed => V1.BalanceObstacle.SlowestShutterSpeed,
        Maths.BalanceObstacle.FullPower => V1.BalanceObstacle.FullPower,
        Maths.BalanceObstacle.LowestPower => V1.BalanceObstacle.LowestPower,
        Maths.BalanceObstacle.WidestAperture => V1.BalanceObstacle.WidestAperture,
        Maths.BalanceObstacle.SmallestAperture => V1.BalanceObstacle.SmallestAperture,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };

    public static V1.BalanceRemedyKind ToContract(Maths.BalanceRemedyKind kind) => kind switch
    {
        Maths.BalanceRemedyKind.RaiseFlashPower => V1.BalanceRemedyKind.RaiseFlashPower,
        Maths.BalanceRemedyKind.LowerFlashPower => V1.BalanceRemedyKind.LowerFlashPower,
        Maths.BalanceRemedyKind.MoveFlashCloser => V1.BalanceRemedyKind.MoveFlashCloser,
        Maths.BalanceRemedyKind.MoveFlashAway => V1.BalanceRemedyKind.MoveFlashAway,
        Maths.BalanceRemedyKind.DiffuseFlash => V1.BalanceRemedyKind.DiffuseFlash,
        Maths.BalanceRemedyKind.DimBackLight => V1.BalanceRemedyKind.DimBackLight,
        Maths.BalanceRemedyKind.BrightenBackLight => V1.BalanceRemedyKind.BrightenBackLight,
        Maths.BalanceRemedyKind.FasterShutterSpeed => V1.BalanceRemedyKind.FasterShutterSpeed,
        Maths.BalanceRemedyKind.SlowerShutterSpeed => V1.BalanceRemedyKind.SlowerShutterSpeed,
        Maths.BalanceRemedyKind.RaiseIso => V1.BalanceRemedyKind.RaiseIso,
        Maths.BalanceRemedyKind.LowerIso => V1.BalanceRemedyKind.LowerIso,
        Maths.BalanceRemedyKind.FilterLens => V1.BalanceRemedyKind.FilterLens,
        Maths.BalanceRemedyKind.UnfilterLens => V1.BalanceRemedyKind.UnfilterLens,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
