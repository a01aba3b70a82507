using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a simulated day takes where the request tells nothing: assumptions, every one of them.</summary>
internal static class ThroughputDefaults
{
    public static IEnumerable<StatedDefault> Of(EstimateThroughputRequest request, int mostPlates)
    {
        if (!request.HasPolicy)
        {
            yield return QuoteTexts.Default("policy", "the kitchen fires at the planned time");
        }

        if (!request.HasMostPlates)
        {
            yield return QuoteTexts.Default("most_plates", $"plates of a shot are made at most {mostPlates} times");
        }
    }

    public static IEnumerable<StatedDefault> Of(ShootDay day)
    {
        if (day.Crew?.HasStylists != true)
        {
            yield return QuoteTexts.Default("day.crew.stylists", "1 stylist");
        }

        if (day.Crew?.HasRunners != true)
        {
            yield return QuoteTexts.Default("day.crew.runners", "somebody always can carry");
        }

        if (day.Changes is not { } changes)
        {
            yield return QuoteTexts.Default("day.changes", "the set is changed in no time");
        }
        else if (!changes.HasLongestFactor)
        {
            yield return QuoteTexts.Default("day.changes.longest_factor", "times of change are certain");
        }

        foreach (var (name, text, count) in new[]
        {
            ("day.shots.frames", "shots are finished with one try", day.Shots.Count(shot => shot.Frames is null)),
            ("day.shots.frames.most_tries", "shots get a new plate after 6 tries, or after as many as keepers are wanted",
                day.Shots.Count(shot => shot.Frames is { HasMostTries: false })),
            ("day.shots.approval", "shots are approved in no time", day.Shots.Count(shot => shot.Approval is null)),
            ("longest", "times without a longest are never longer than likely", Times(day).Count(time => time.Longest is null)),
        })
        {
            if (count > 0)
            {
                yield return QuoteTexts.Default(name, FormattableString.Invariant($"{count} {text}"));
            }
        }
    }

    private static IEnumerable<UncertainTime> Times(ShootDay day) => day.Plates.SelectMany(plate => plate.Stages).Select(stage => stage.Time)
        .Concat(day.Shots.SelectMany(shot => new[] { shot.Shooting, shot.Approval, shot.Frames?.TryTime }).OfType<UncertainTime>());
}
