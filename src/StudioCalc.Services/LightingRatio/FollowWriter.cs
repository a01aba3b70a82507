using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes the shutter speed that follows the back light, or what stands in its way.</summary>
internal static class FollowWriter
{
    public static void Write(FollowBackLightResponse response, RequestContext context, FollowInput input, FollowOutcome outcome)
    {
        if (outcome.Obstacle == Maths.BalanceObstacle.None)
        {
            response.Solution = Solution(input, outcome);
            context.Advisories.AddRange(BalanceWriter.Notes(outcome.RestStops, outcome.ShutterSpeedS, input.SyncSpeedS));
            return;
        }

        response.NotReached = new()
        {
            Obstacle = BalanceWriter.ToContract(outcome.Obstacle),
            ShortfallStops = outcome.ShortfallStops,
            Nearest = Solution(input, outcome),
        };
        response.NotReached.Remedies.Add(Follow.RemediesFor(input, outcome).Select(remedy => Remedy(input, remedy)));
        context.Advisories.AddRange(BalanceWriter.Notes(response.NotReached.Obstacle, response.NotReached.Remedies.Select(remedy => remedy.Kind)));
    }

    private static V1.FollowRemedy Remedy(FollowInput input, Maths.FollowRemedy remedy)
    {
        var answer = new V1.FollowRemedy { Kind = BalanceWriter.ToContract(remedy.Kind), ChangeStops = remedy.ChangeStops };
        if (remedy.Outcome.Obstacle == Maths.BalanceObstacle.None)
        {
            answer.Solution = Solution(input, remedy.Outcome);
        }
        else
        {
            answer.ShortfallStops = remedy.Outcome.ShortfallStops;
            answer.Obstacle = BalanceWriter.ToContract(remedy.Outcome.Obstacle);
        }

        return answer;
    }

    private static FollowSolution Solution(FollowInput input, FollowOutcome outcome) => new()
    {
        ShutterSpeed = CameraWriter.ShutterSpeed(
            outcome.ShutterSpeedS, input.Scale, input.SyncSpeedS, input.SlowestShutterSpeedS),
        RestStops = outcome.RestStops,
    };
}
