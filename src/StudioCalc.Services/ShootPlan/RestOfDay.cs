using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a request of <c>ReplanShoot</c> tells beside the day.</summary>
/// <param name="Log">What has happened.</param>
/// <param name="Ranks">The place of each shot in the order so far.</param>
/// <param name="Portions">How many more can be cooked of each plate; none: enough.</param>
/// <param name="Hours">New hours of a shot's frames.</param>
internal sealed record ReplanRead(
    EventLog Log, IReadOnlyList<int> Ranks, IReadOnlyList<uint?> Portions, IReadOnlyDictionary<int, IReadOnlyList<OpenTime>> Hours);

/// <summary>What is left of a day: what has begun stays, what can no longer be made is left out.</summary>
internal sealed class RestOfDay
{
    private readonly DayDraft _draft;
    private readonly ReplanRead _read;
    private readonly long?[] _usedMs;

    public RestOfDay(DayDraft draft, ReplanRead read, DayLooks looks)
    {
        (_draft, _read) = (draft, read);
        var log = read.Log;
        Taken = BegunTimes.Shots(log, draft.Shots, draft.Asked);
        var plates = draft.Asked.Plates.Count;
        _usedMs = new long?[plates];
        foreach (var one in Taken)
        {
            foreach (var plate in draft.Groups.PlatesOf[one.Shot].Where(plate => IsCurrent(plate, one)))
            {
                _usedMs[plate] = Math.Min(_usedMs[plate] ?? one.StartMs, one.StartMs);
            }
        }

        var waiting = Enumerable.Range(0, log.Shots.Count).Where(shot => !log.Shots[shot].IsTaken).ToList();
        Lost = [.. waiting.Where(shot => draft.Groups.PlatesOf[shot].Any(plate => !IsBegun(plate) && read.Portions[plate] == 0))];
        Left = [.. waiting.Except(Lost)];
        var needed = Left.SelectMany(shot => draft.Groups.PlatesOf[shot]).ToHashSet();
        var taken = Taken.ToDictionary(one => one.Shot);
        Groups = new([.. Taken.Select(one => one.Shot), .. Left], log.Shots.Count, shot =>
            [.. draft.Groups.PlatesOf[shot].Where(plate => needed.Contains(plate) && (!taken.TryGetValue(shot, out var one) || IsCurrent(plate, one)))]);
        Order = [.. Groups.Shots.Select((shots, block) => (Rank: shots.Where(Left.Contains).Select(shot => read.Ranks[shot]).DefaultIfEmpty(-1).Min(), block))
            .OrderBy(one => one.Rank).ThenBy(one => one.block).Select(one => one.block)];
        var day = draft.Arrange(Groups, Positions(), looks, read.Hours);
        Begun = [.. Begin(day)];
        Day = day with
        {
            Day = day.Day with
            {
                Setups = Standing() is { } standing ? day.Day.Setups with { Standing = draft.Changes.Setups[standing] } : day.Day.Setups,
                Progress = new(log.NowMs, Begun, Order),
            },
        };
    }

    /// <summary>Shots that are being taken or are taken, by their starts.</summary>
    public IReadOnlyList<TakenShot> Taken { get; }

    /// <summary>Shots that can no longer be made.</summary>
    public IReadOnlyList<int> Lost { get; }

    /// <summary>Shots that are still to be made.</summary>
    public IReadOnlyList<int> Left { get; }

    public ShotGroups Groups { get; }

    /// <summary>The order so far, as indices of groups.</summary>
    public IReadOnlyList<int> Order { get; }

    public IReadOnlyList<Begun> Begun { get; }

    public DayRead Day { get; }

    /// <summary>Whether a plate is out, or on its way there.</summary>
    public bool IsBegun(int plate) => _read.Log.Current(plate).IsTold || _usedMs[plate] is not null;

    // Whether a shot had the plate as it is now, not one that was lost since.
    private bool IsCurrent(int plate, TakenShot shot) =>
        _read.Log.Plates[plate].Select(life => life.LostMs).OfType<long>().All(lost => lost <= shot.StartMs);

    // Where the set was made ready for a shot whose plate was lost then, other shots may come first.
    private int? Standing()
    {
        var idle = Enumerable.Range(0, _read.Log.Shots.Count).Select(shot => (AtMs: _read.Log.Shots[shot].IdleSettingMs, Shot: shot))
            .Where(one => one.AtMs is not null).OrderBy(one => one).LastOrDefault();
        return idle.AtMs is { } at && Taken.All(one => one.StartMs < at) && _read.Log.Shots.All(shot => (shot.SettingMs ?? -1) < at) ? idle.Shot : null;
    }

    private int?[] Positions()
    {
        // Fixed places count from the start of the day: what is taken has the first ones.
        var positions = new int?[Groups.Shots.Count];
        var first = Groups.Shots.Count(shots => !shots.Any(Left.Contains));
        var own = Enumerable.Range(0, positions.Length)
            .Select(block => (Position: Groups.Shots[block].Where(Left.Contains).Select(shot => _draft.Positions[_draft.Groups.GroupOf[shot]]).FirstOrDefault(), Block: block))
            .Where(one => one.Position is not null && !Groups.Shots[one.Block].Any(shot => !Left.Contains(shot))).OrderBy(one => one).ToList();
        var next = first + (Groups.Shots.Any(shots => shots.Any(Left.Contains) && !shots.All(Left.Contains)) ? 1 : 0);
        foreach (var (position, block) in own)
        {
            positions[block] = next = Math.Max(position!.Value, next);
            next++;
        }

        var last = positions.Length - 1;
        foreach (var (_, block) in Enumerable.Reverse(own))
        {
            positions[block] = last = Math.Min(positions[block]!.Value, last);
            last--;
        }

        return positions;
    }

    private IEnumerable<Begun> Begin(DayRead day)
    {
        foreach (var one in Taken)
        {
            var place = day.Shots[one.Shot];
            yield return new(place.Setup, one.SettingMs, one.StartMs);
            yield return new(place.Shoot, one.StartMs, one.EndMs);
            yield return new(place.Approve, one.EndMs, one.ApprovedMs);
        }

        foreach (var shot in Left)
        {
            // The set is being made ready for it, unless it was for another since.
            if (_read.Log.Shots[shot].SettingMs is { } at && Taken.All(one => one.SettingMs < at)
                && Left.All(other => other == shot || (_read.Log.Shots[other].SettingMs ?? -1) < at))
            {
                yield return new(day.Shots[shot].Setup, at, at + SettingTime(shot, at));
            }
        }

        for (var plate = 0; plate < day.Plates.Count; plate++)
        {
            if (day.Plates[plate] is not { } read)
            {
                continue;
            }

            var stages = BegunTimes.Stages(_read.Log.Current(plate), _usedMs[plate], _draft.Plates[plate].Stages, _read.Log.NowMs);
            for (var i = 0; i < stages.Count; i++)
            {
                yield return new(read.Stage(i), stages[i].StartMs, stages[i].EndMs);
            }
        }
    }

    private long SettingTime(int shot, long atMs)
    {
        var setups = _draft.Changes;
        var before = Taken.LastOrDefault(one => one.StartMs < atMs);
        return before is null ? setups.Times.FirstMs
            : setups.Times.Change(setups.Setups[before.Shot], setups.Setups[shot])
                + (_draft.Groups.PlatesOf[before.Shot].SequenceEqual(_draft.Groups.PlatesOf[shot]) ? 0 : setups.Times.SwapMs);
    }
}
