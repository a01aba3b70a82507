using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A shot as read, apart from its plates and its setup.</summary>
internal sealed record DayShotRead(ThreePoint Shooting, ThreePoint? Approval, IReadOnlyList<OpenTime> Open, ShotOdds? Odds);

/// <summary>Reads shots.</summary>
internal static class DayShotReader
{
    private const uint UsualTries = 6;

    public static DayShotRead ReadShot(this RequestContext context, DayShot shot, FieldPath path) => new(
        context.ReadTime(shot.Shooting, path[DayShot.ShootingFieldNumber]),
        shot.Approval is { } approval ? context.ReadTime(approval, path[DayShot.ApprovalFieldNumber]) : null,
        context.ReadHours(shot.Hours, path[DayShot.HoursFieldNumber]),
        shot.Frames is { } frames ? context.ReadFrames(frames, path[DayShot.FramesFieldNumber]) : null);

    public static ThreePoint ReadTime(this RequestContext context, UncertainTime time, FieldPath path) => context.ReadTimes(
        time.Likely, time.Shortest, time.Longest, time.Spread, path[UncertainTime.ShortestFieldNumber], path[UncertainTime.LongestFieldNumber]);

    /// <summary>The places of the groups: those that their shots name.</summary>
    public static int?[] ReadPositions(this RequestContext context, IReadOnlyList<DayShot> shots, IReadOnlyList<int> groupOf, int groups, FieldPath path)
    {
        var positions = new int?[groups];
        var taken = new Dictionary<uint, int>();
        for (var i = 0; i < shots.Count; i++)
        {
            if (!shots[i].HasPosition)
            {
                continue;
            }

            var at = path.At(i)[DayShot.PositionFieldNumber].ToString();
            var (position, group) = (shots[i].Position, groupOf[i]);
            if (position > groups)
            {
                context.Violations.Add(at, RefusalReason.OutOfRange, FormattableString.Invariant($"There are {groups} groups of shots that share plates."));
            }
            else if (positions[group] is { } other && other != position - 1)
            {
                context.Refuse(at, "Another shot that shares its plates has another place: they are shot as one group.");
            }
            else if (!taken.TryAdd(position, group) && taken[position] != group)
            {
                context.Refuse(at, "Another group of shots has this place.");
            }
            else
            {
                positions[group] = (int)position - 1;
            }
        }

        return positions;
    }

    private static ShotOdds ReadFrames(this RequestContext context, ShotFrames frames, FieldPath path)
    {
        var keepers = frames.HasKeepers ? frames.Keepers : 1;
        var tries = frames.HasMostTries ? frames.MostTries : Math.Max(UsualTries, keepers);
        if (tries < keepers)
        {
            context.Refuse(path[ShotFrames.MostTriesFieldNumber].ToString(), "Must not be fewer than the keepers that finish the shot.");
        }

        return new()
        {
            KeeperChance = frames.KeepChance,
            Keepers = (int)keepers,
            MostTries = (int)tries,
            FramesPerTry = frames.HasFramesPerTry ? (int)frames.FramesPerTry : 1,
            Try = frames.TryTime is { } time ? context.ReadTime(time, path[ShotFrames.TryTimeFieldNumber]) : null,
        };
    }
}
