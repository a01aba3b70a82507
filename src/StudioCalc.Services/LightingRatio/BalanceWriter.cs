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
            way.Solution = Solution(input, input, outcome);
            Note(way, input, outcome);
            return way;
        }

        way.NotReached = new()
        {
            Obstacle = ToContract(outcome.Obstacle),
            ShortfallStops = outcome.ShortfallStops,
            Nearest = Solution(input, input, outcome),
        };
        way.NotReached.Remedies.Add(
            BalanceRemedies.For(input, variable, outcome).Select(remedy => Remedy(input, remedy, distanceMm)));
        Note(way, way.NotReached);
        return way;
    }

    private static void Note(BalanceWay way, BalanceInput input, BalanceOutcome outcome)
    {
        if (Math.Abs(outcome.RestStops) > RestWorthSayingStops + Rounding)
        {
            way.Advisories.Add(Advise.RoundedRatio(outcome.RestStops));
        }

        var margin = Math.Log2(outcome.ShutterSpeedS / input.SyncSpeedS);
        if (margin < SyncMarginStops - Rounding)
        {
            way.Advisories.Add(Advise.SyncMargin(Math.Max(0, margin)));
        }
    }

    private static void Note(BalanceWay way, BalanceNotReached notReached)
    {
        if (notReached.Obstacle is not (V1.BalanceObstacle.WidestAperture or V1.BalanceObstacle.SmallestAperture))
        {
            way.Advisories.Add(Advise.LensFilterKeepsRatio());
        }

        var kinds = notReached.Remedies.Select(remedy => remedy.Kind).ToHashSet();
        if (kinds.Overlaps([V1.BalanceRemedyKind.MoveFlashCloser, V1.BalanceRemedyKind.MoveFlashAway]))
        {
            way.Advisories.Add(Advise.InverseSquareAssumed());
        }

        if (kinds.Overlaps(
            [
                V1.BalanceRemedyKind.MoveFlashCloser,
                V1.BalanceRemedyKind.MoveFlashAway,
                V1.BalanceRemedyKind.DiffuseFlash,
                V1.BalanceRemedyKind.DimBackLight,
            ]))
        {
            way.Advisories.Add(Advise.MovingLights());
        }
    }

    // Steps count from the power that the request states, also where a remedy has changed it.
    private static BalanceSolution Solution(BalanceInput asked, BalanceInput input, BalanceOutcome outcome) => new()
    {
        Aperture = CameraWriter.Aperture(outcome.FNumber, input.Scale),
        ShutterSpeed = CameraWriter.ShutterSpeed(outcome.ShutterSpeedS, input.Scale),
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
        Ratio = new() { KeyToFill = outcome.Ratio.KeyToFill, KeyPlusFillToFill = outcome.Ratio.KeyPlusFillToFill },
    };

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

        if (remedy.Outcome.Obstacle == Maths.BalanceObstacle.None)
        {
            answer.Solution = Solution(asked, remedy.Input, remedy.Outcome);
        }
        else
        {
            answer.ShortfallStops = remedy.Outcome.ShortfallStops;
        }

        return answer;
    }

    private static V1.BalanceVariable ToContract(Maths.BalanceVariable variable) => variable switch
    {
        Maths.BalanceVariable.FlashPower => V1.BalanceVariable.FlashPower,
        Maths.BalanceVariable.ShutterSpeed => V1.BalanceVariable.ShutterSpeed,
        _ => throw new ArgumentOutOfRangeException(nameof(variable)),
    };

    private static V1.BalanceObstacle ToContract(Maths.BalanceObstacle obstacle) => obstacle switch
    {
        Maths.BalanceObstacle.SyncSpeed => V1.BalanceObstacle.SyncSpeed,
        Maths.BalanceObstacle.SlowestShutterSpeed => V1.BalanceObstacle.SlowestShutterSpeed,
        Maths.BalanceObstacle.FullPower => V1.BalanceObstacle.FullPower,
        Maths.BalanceObstacle.LowestPower => V1.BalanceObstacle.LowestPower,
        Maths.BalanceObstacle.WidestAperture => V1.BalanceObstacle.WidestAperture,
        Maths.BalanceObstacle.SmallestAperture => V1.BalanceObstacle.SmallestAperture,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };

    private static V1.BalanceRemedyKind ToContract(Maths.BalanceRemedyKind kind) => kind switch
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
