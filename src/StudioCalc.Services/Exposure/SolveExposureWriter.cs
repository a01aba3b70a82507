using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes the maths' outcome of solving for a setting as its answer.</summary>
internal static class SolveExposureWriter
{
    public static SolveExposureResponse Response(ExposureInput input, ExposureOutcome outcome)
    {
        var response = new SolveExposureResponse { ModelRevision = ModelRevision.Current };
        if (outcome.Obstacle == Maths.ExposureObstacle.None)
        {
            response.Solution = Solution(input, outcome);
            return response;
        }

        response.NotReached = new()
        {
            Obstacle = ToContract(outcome.Obstacle),
            ShortfallStops = outcome.ShortfallStops,
            Nearest = Solution(input, outcome),
            Remedies = { ExposureRemedies.For(input, outcome).Select(Remedy) },
        };
        response.Advisories.Add(Advise.MovingLights());
        return response;
    }

    private static ExposureSolution Solution(ExposureInput input, ExposureOutcome outcome) => new()
    {
        Aperture = CameraWriter.Aperture(
            outcome.FNumber, input.Scale, input.Limits.WidestFNumber, input.Limits.SmallestFNumber),
        ShutterSpeed = CameraWriter.ShutterSpeed(
            outcome.ShutterSpeedS, input.Scale, input.Limits.FastestShutterSpeedS, input.Limits.SlowestShutterSpeedS),
        Iso = CameraWriter.Iso(outcome.Iso, input.Scale, input.Limits.LowestIso, input.Limits.HighestIso),
        RestStops = outcome.RestStops,
        LensLossStops = outcome.LensLossStops,
        EffectiveFNumber = outcome.EffectiveFNumber,
    };

    private static V1.ExposureRemedy Remedy(Maths.ExposureRemedy remedy)
    {
        var answer = new V1.ExposureRemedy { Kind = ToContract(remedy.Kind), ChangeStops = remedy.ChangeStops };
        if (remedy.Outcome.Obstacle == Maths.ExposureObstacle.None)
        {
            answer.Solution = Solution(remedy.Input, remedy.Outcome);
        }
        else
        {
            answer.ShortfallStops = remedy.Outcome.ShortfallStops;
            answer.Obstacle = ToContract(remedy.Outcome.Obstacle);
        }

        return answer;
    }

    private static V1.ExposureObstacle ToContract(Maths.ExposureObstacle obstacle) => obstacle switch
    {
        Maths.ExposureObstacle.WidestAperture => V1.ExposureObstacle.WidestAperture,
        Maths.ExposureObstacle.SmallestAperture => V1.ExposureObstacle.SmallestAperture,
        Maths.ExposureObstacle.FastestShutterSpeed => V1.ExposureObstacle.FastestShutterSpeed,
        Maths.ExposureObstacle.SlowestShutterSpeed => V1.ExposureObstacle.SlowestShutterSpeed,
        Maths.ExposureObstacle.LowestIso => V1.ExposureObstacle.LowestIso,
        Maths.ExposureObstacle.HighestIso => V1.ExposureObstacle.HighestIso,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };

    private static V1.ExposureRemedyKind ToContract(Maths.ExposureRemedyKind kind) => kind switch
    {
        Maths.ExposureRemedyKind.OpenAperture => V1.ExposureRemedyKind.OpenAperture,
        Maths.ExposureRemedyKind.CloseAperture => V1.ExposureRemedyKind.CloseAperture,
        Maths.ExposureRemedyKind.SlowerShutterSpeed => V1.ExposureRemedyKind.SlowerShutterSpeed,
        Maths.ExposureRemedyKind.FasterShutterSpeed => V1.ExposureRemedyKind.FasterShutterSpeed,
        Maths.ExposureRemedyKind.RaiseIso => V1.ExposureRemedyKind.RaiseIso,
        Maths.ExposureRemedyKind.LowerIso => V1.ExposureRemedyKind.LowerIso,
        Maths.ExposureRemedyKind.UnfilterLens => V1.ExposureRemedyKind.UnfilterLens,
        Maths.ExposureRemedyKind.FilterLens => V1.ExposureRemedyKind.FilterLens,
        Maths.ExposureRemedyKind.MoreLight => V1.ExposureRemedyKind.MoreLight,
        Maths.ExposureRemedyKind.LessLight => V1.ExposureRemedyKind.LessLight,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
