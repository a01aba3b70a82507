using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes the maths' outcome of a flash request as its answer.</summary>
internal static class SolveFlashWriter
{
    private const double WidestSourceOverDistance = 1 / 5.0;

    public static void Write(SolveFlashResponse response, SolveFlashRequest request, FlashInput input, FlashOutcome outcome)
    {
        if (request.Units.Any(unit => unit.HasGuideNumberM))
        {
            response.Advisories.Add(Advise.GuideNumberAsGiven());
        }

        response.Advisories.Add(Wide(request, outcome));
        var remedies = FlashRemedies.For(input, outcome);
        if (outcome.Pops > 1 || remedies.Any(remedy => remedy.Kind == Maths.FlashRemedyKind.MorePops))
        {
            response.Advisories.Add(Advise.SeveralPops());
        }

        if (outcome.Obstacle == Maths.FlashObstacle.None)
        {
            response.Solution = Solution(input, outcome);
            return;
        }

        response.NotReached = new()
        {
            Obstacle = ToContract(outcome.Obstacle),
            ShortfallStops = outcome.ShortfallStops,
            Nearest = Solution(input, outcome),
        };
        response.NotReached.Remedies.Add(remedies.Select(remedy => Remedy(input, remedy)));
        Note(response, [.. remedies.Select(remedy => remedy.Kind)]);
    }

    private static IEnumerable<Advisory> Wide(SolveFlashRequest request, FlashOutcome outcome)
    {
        for (var i = 0; i < request.Units.Count; i++)
        {
            var unit = request.Units[i];
            double? known = i > 0 ? unit.DistanceMm : outcome.First?.DistanceMm;
            if (known is { } distance && unit.SourceWidthMm > distance * WidestSourceOverDistance)
            {
                yield return Advise.SourceTooWide(
                    SolveFlashUnits.Path(i, V1.FlashUnit.SourceWidthMmFieldNumber), unit.SourceWidthMm, distance);
            }
        }
    }

    private static void Note(SolveFlashResponse response, HashSet<Maths.FlashRemedyKind> kinds)
    {
        if (kinds.Overlaps([Maths.FlashRemedyKind.MoveCloser, Maths.FlashRemedyKind.MoveAway]))
        {
            response.Advisories.Add(Advise.InverseSquareAssumed());
        }

        if (kinds.Overlaps([Maths.FlashRemedyKind.MoveCloser, Maths.FlashRemedyKind.MoveAway, Maths.FlashRemedyKind.FilterFlash]))
        {
            response.Advisories.Add(Advise.MovingLights());
        }
    }

    private static FlashSolution Solution(FlashInput input, FlashOutcome outcome)
    {
        var answer = new FlashSolution
        {
            Aperture = CameraWriter.Aperture(
                outcome.FNumber, input.Scale, input.Limits.WidestFNumber, input.Limits.SmallestFNumber),
            Iso = CameraWriter.Iso(outcome.Iso, input.Scale, input.Limits.LowestIso, input.Limits.HighestIso),
            Pops = (uint)outcome.Pops,
            ExposureLxS = outcome.ExposureLxS,
            RestStops = outcome.RestStops,
            IncidentConstant = input.IncidentConstant,
        };
        if (outcome.First is { } first)
        {
            answer.DistanceMm = first.DistanceMm;
            answer.Power = CameraWriter.Power(first.PowerBelowFullStops);
            answer.FirstGuideNumberM = first.GuideNumberM;
        }

        if (outcome.GuideNumberM is { } guideNumber)
        {
            answer.GuideNumberM = guideNumber;
        }

        if (outcome.EnergyJ is { } energy)
        {
            answer.EnergyJ = energy;
        }

        return answer;
    }

    private static V1.FlashRemedy Remedy(FlashInput input, Maths.FlashRemedy remedy)
    {
        var answer = new V1.FlashRemedy { Kind = ToContract(remedy.Kind), ChangeStops = remedy.ChangeStops };
        if (remedy.Outcome.Obstacle == Maths.FlashObstacle.None)
        {
            answer.Solution = Solution(input, remedy.Outcome);
        }
        else
        {
            answer.ShortfallStops = remedy.Outcome.ShortfallStops;
            answer.Obstacle = ToContract(remedy.Outcome.Obstacle);
        }

        return answer;
    }

    private static V1.FlashObstacle ToContract(Maths.FlashObstacle obstacle) => obstacle switch
    {
        Maths.FlashObstacle.FullPower => V1.FlashObstacle.FullPower,
        Maths.FlashObstacle.LowestPower => V1.FlashObstacle.LowestPower,
        Maths.FlashObstacle.WidestAperture => V1.FlashObstacle.WidestAperture,
        Maths.FlashObstacle.SmallestAperture => V1.FlashObstacle.SmallestAperture,
        Maths.FlashObstacle.LowestIso => V1.FlashObstacle.LowestIso,
        Maths.FlashObstacle.HighestIso => V1.FlashObstacle.HighestIso,
        Maths.FlashObstacle.OtherUnits => V1.FlashObstacle.OtherUnits,
        Maths.FlashObstacle.MostPops => V1.FlashObstacle.MostPops,
        Maths.FlashObstacle.OnePop => V1.FlashObstacle.OnePop,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };

    private static V1.FlashRemedyKind ToContract(Maths.FlashRemedyKind kind) => kind switch
    {
        Maths.FlashRemedyKind.MoveCloser => V1.FlashRemedyKind.MoveCloser,
        Maths.FlashRemedyKind.MoveAway => V1.FlashRemedyKind.MoveAway,
        Maths.FlashRemedyKind.MorePops => V1.FlashRemedyKind.MorePops,
        Maths.FlashRemedyKind.FewerPops => V1.FlashRemedyKind.FewerPops,
        Maths.FlashRemedyKind.OpenAperture => V1.FlashRemedyKind.OpenAperture,
        Maths.FlashRemedyKind.CloseAperture => V1.FlashRemedyKind.CloseAperture,
        Maths.FlashRemedyKind.RaiseIso => V1.FlashRemedyKind.RaiseIso,
        Maths.FlashRemedyKind.LowerIso => V1.FlashRemedyKind.LowerIso,
        Maths.FlashRemedyKind.FilterFlash => V1.FlashRemedyKind.FilterFlash,
        Maths.FlashRemedyKind.LowerOtherUnits => V1.FlashRemedyKind.LowerOtherUnits,
        Maths.FlashRemedyKind.RaisePower => V1.FlashRemedyKind.RaisePower,
        Maths.FlashRemedyKind.LowerPower => V1.FlashRemedyKind.LowerPower,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
