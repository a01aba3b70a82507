using Google.Protobuf.WellKnownTypes;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads times told by their likely, shortest and longest value. What cannot be is noted.</summary>
internal static class ThreePointReader
{
    private const double MostOfLogNormal = 100;

    public static ThreePoint ReadTimes(
        this RequestContext context, Duration likelyTime, Duration? shortestTime, Duration? longestTime, StepSpread spread,
        FieldPath shortestPath, FieldPath longestPath)
    {
        var likely = likelyTime.ToSeconds();
        var shortest = shortestTime?.ToSeconds() ?? likely;
        var longest = longestTime?.ToSeconds() ?? likely;
        var isLogNormal = spread == StepSpread.LogNormal;
        if (shortest > likely && !isLogNormal)
        {
            context.Violations.Add(shortestPath.ToString(), RefusalReason.Conflict, "Must not be above the likely time.");
        }

        if (longest < likely)
        {
            context.Violations.Add(longestPath.ToString(), RefusalReason.Conflict, "Must not be below the likely time.");
        }
        else if (isLogNormal && longest > MostOfLogNormal * likely)
        {
            context.Violations.Add(longestPath.ToString(), RefusalReason.Conflict,
                "In a log-normal spread it must be at most 100 times the likely time.");
        }

        return new(shortest, likely, longest, spread switch
        {
            StepSpread.Triangle => Spread.Triangle,
            StepSpread.LogNormal => Spread.LogNormal,
            _ => Spread.Pert,
        });
    }
}
