using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes an answer of <c>PlanFill</c>.</summary>
internal static class PlanFillWriter
{
    /// <summary>The longest list of an answer.</summary>
    public const int MostWays = 1000;

    public static V1.FillWay Way(Maths.FillWay way)
    {
        var answer = new V1.FillWay
        {
            Power = CameraWriter.Power(way.BelowFullStops),
            Place = DistanceWriter.Place(way.Place),
            ElevationDeg = way.ElevationDeg,
            AzimuthDeg = way.AzimuthDeg,
            SubtenseDeg = way.Softness.SubtenseDeg,
            SubtenseAcrossDeg = way.Softness.AcrossDeg,
            SubtenseUpDeg = way.Softness.UpDeg,
            MovementMm = way.MovementMm,
            LowestMm = way.LowestMm,
        };
        if (way.Softness.AimedStops is { } aimed)
        {
            answer.FallOffAimedStops = aimed;
        }

        if (way.Softness.FlatStops is { } flat)
        {
            answer.FallOffFlatStops = flat;
        }

        if (way.Softness.SidewaysStops is { } sideways)
        {
            answer.FallOffSidewaysStops = sideways;
        }

        if (way.Softness.PenumbraMm is { } penumbra)
        {
            answer.PenumbraIsOpen = double.IsInfinity(penumbra);
            if (!answer.PenumbraIsOpen)
            {
                answer.PenumbraMm = penumbra;
            }
        }

        return answer;
    }

    public static V1.FillNotReached NotReached(FillPlanner planner, FillOutcome outcome)
    {
        var answer = new V1.FillNotReached { Obstacle = Obstacle(outcome.Obstacle) };
        if (outcome is { Nearest: { } nearest, ShortfallStops: { } shortfall })
        {
            answer.Nearest = Way(nearest);
            answer.ShortfallStops = shortfall;
        }

        answer.Remedies.Add(FillRemedies.For(planner, outcome).Select(Remedy));
        return answer;
    }

    public static V1.FillLeftOut LeftOut(Maths.FillLeftOut pair) => new() { Obstacle = Obstacle(pair.Obstacle), Way = Way(pair.Way) };

    private static V1.FillRemedy Remedy(Maths.FillRemedy remedy)
    {
        var answer = new V1.FillRemedy { Kind = Kind(remedy.Kind), Way = Way(remedy.Way) };
        if (remedy.ChangeStops is { } change)
        {
            answer.ChangeStops = change;
        }

        return answer;
    }

    private static V1.FillObstacle Obstacle(Maths.FillObstacle obstacle) => obstacle switch
    {
        Maths.FillObstacle.NearestDistance => V1.FillObstacle.NearestDistance,
        Maths.FillObstacle.FarthestDistance => V1.FillObstacle.FarthestDistance,
        Maths.FillObstacle.ListedDistances => V1.FillObstacle.ListedDistances,
        Maths.FillObstacle.Subtense => V1.FillObstacle.Subtense,
        Maths.FillObstacle.FallOff => V1.FillObstacle.FallOff,
        Maths.FillObstacle.HighestPower => V1.FillObstacle.HighestPower,
        Maths.FillObstacle.LowestPower => V1.FillObstacle.LowestPower,
        Maths.FillObstacle.Dark => V1.FillObstacle.Dark,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };

    private static V1.FillRemedyKind Kind(Maths.FillRemedyKind kind) => kind switch
    {
        Maths.FillRemedyKind.AllowNearer => V1.FillRemedyKind.AllowNearer,
        Maths.FillRemedyKind.AllowFurther => V1.FillRemedyKind.AllowFurther,
        Maths.FillRemedyKind.DiffuseFlash => V1.FillRemedyKind.DiffuseFlash,
        Maths.FillRemedyKind.RaiseIso => V1.FillRemedyKind.RaiseIso,
        Maths.FillRemedyKind.EaseLimit => V1.FillRemedyKind.EaseLimit,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
