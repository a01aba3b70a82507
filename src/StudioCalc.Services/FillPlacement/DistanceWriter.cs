using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes distances of a source and what they give.</summary>
internal static class DistanceWriter
{
    public static SolvedDistance Place(SolvedPlace place)
    {
        var answer = new SolvedDistance
        {
            DistanceMm = place.DistanceMm,
            Position = place.Centre.ToAnswer(),
            MovedMm = place.MovedMm,
            OverWantedStops = place.OverWantedStops,
            BandNearMm = place.BandNearMm,
            BandFarMm = place.BandFarMm,
        };
        if (place.InverseSquareMm is { } inverse)
        {
            answer.InverseSquareDistanceMm = inverse;
        }

        if (place.InverseSquareOverStops is { } over)
        {
            answer.InverseSquareOverStops = over;
        }

        return answer;
    }

    public static DistanceNotReached NotReached(DistanceOutcome outcome)
    {
        var answer = new DistanceNotReached { Obstacle = Obstacle(outcome.Obstacle) };
        if (outcome is { Nearest: { } nearest, Powered: { } powered })
        {
            answer.Nearest = Place(nearest);
            answer.ShortfallStops = Math.Abs(nearest.OverWantedStops);
            answer.Remedies.Add(Power(nearest, powered));
        }

        if (outcome.Beyond is { } beyond)
        {
            answer.Remedies.Add(new DistanceRemedy { Kind = DistanceRemedyKind.WidenRange, Distance = Place(beyond) });
        }

        return answer;
    }

    private static DistanceRemedy Power(SolvedPlace nearest, SolvedPlace powered) => new()
    {
        Kind = nearest.OverWantedStops < 0 ? DistanceRemedyKind.RaisePower : DistanceRemedyKind.LowerPower,
        ChangeStops = -nearest.OverWantedStops,
        Distance = Place(powered),
    };

    private static V1.DistanceObstacle Obstacle(Maths.DistanceObstacle obstacle) => obstacle switch
    {
        Maths.DistanceObstacle.NearestDistance => V1.DistanceObstacle.NearestDistance,
        Maths.DistanceObstacle.FarthestDistance => V1.DistanceObstacle.FarthestDistance,
        Maths.DistanceObstacle.MostLight => V1.DistanceObstacle.MostLight,
        Maths.DistanceObstacle.Dark => V1.DistanceObstacle.Dark,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };
}
