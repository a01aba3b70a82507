using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads what has happened. Events count by their times, so their order in the request does not matter.</summary>
internal static class EventReader
{
    private readonly record struct Told(int Index, ReportedEventKind Kind, long AtMs);

    public static EventLog ReadEvents(
        this RequestContext context, ReplanShootRequest request, IReadOnlyDictionary<string, int> plateOf, IReadOnlyDictionary<string, int> shotOf, FieldPath path)
    {
        var now = request.Now.ToMilliseconds();
        var plates = request.Day.Plates.Select(_ => new List<Told>()).ToList();
        var shots = request.Day.Shots.Select(_ => new List<Told>()).ToList();
        for (var i = 0; i < request.Events.Count; i++)
        {
            var one = request.Events[i];
            var isPlate = one.Kind is ReportedEventKind.Fired or ReportedEventKind.Landed or ReportedEventKind.Lost;
            if (!(isPlate ? plateOf : shotOf).TryGetValue(one.Name, out var at))
            {
                context.Refuse(path.At(i)[ReportedEvent.NameFieldNumber].ToString(),
                    isPlate ? "The day has no plate of this name." : "The day has no shot of this name.");
            }
            else if (one.At.ToMilliseconds() > now)
            {
                context.Refuse(path.At(i)[ReportedEvent.AtFieldNumber].ToString(), "Must not be after now.");
            }
            else
            {
                (isPlate ? plates : shots)[at].Add(new(i, one.Kind, one.At.ToMilliseconds()));
            }
        }

        var lives = plates.Select(events => context.ReadPlate(InOrder(events), path)).ToList();
        var logs = shots.Select((events, shot) =>
            context.ReadShot(InOrder(events), [.. request.Day.Shots[shot].Plates.Where(plateOf.ContainsKey).Select(name => lives[plateOf[name]])], path)).ToList();
        context.CheckSet(shots, logs, path);
        return new(now, lives, logs);
    }

    private static IEnumerable<Told> InOrder(IEnumerable<Told> events) => events.OrderBy(one => one.AtMs).ThenBy(one => Rank(one.Kind)).ThenBy(one => one.Index);

    private static int Rank(ReportedEventKind kind) => kind switch
    {
        ReportedEventKind.Fired or ReportedEventKind.Setting => 0,
        ReportedEventKind.Landed or ReportedEventKind.Shooting => 1,
        ReportedEventKind.Shot => 2,
        _ => 3,
    };

    private static List<PlateLife> ReadPlate(this RequestContext context, IEnumerable<Told> events, FieldPath path)
    {
        List<PlateLife> lives = [new(null, null, null)];
        foreach (var one in events)
        {
            var life = lives[^1];
            if (one.Kind == ReportedEventKind.Fired && life.IsTold)
            {
                Refuse("It was fired or has landed already, and was not lost since.");
            }
            else if (one.Kind == ReportedEventKind.Landed && life.LandedMs is not null)
            {
                Refuse("It has landed already, and was not lost since.");
            }
            else if (one.Kind == ReportedEventKind.Lost && lives.Count > 1 && !life.IsTold)
            {
                Refuse("It was lost already, and not fired since.");
            }
            else
            {
                lives[^1] = one.Kind switch
                {
                    ReportedEventKind.Fired => life with { FiredMs = one.AtMs },
                    ReportedEventKind.Landed => life with { LandedMs = one.AtMs },
                    _ => life with { LostMs = one.AtMs },
                };
                if (one.Kind == ReportedEventKind.Lost)
                {
                    lives.Add(new(null, null, null));
                }
            }

            void Refuse(string text) => context.Refuse(path.At(one.Index)[ReportedEvent.AtFieldNumber].ToString(), text);
        }

        return lives;
    }

    private static ShotLog ReadShot(this RequestContext context, IEnumerable<Told> events, IReadOnlyList<List<PlateLife>> plates, FieldPath path)
    {
        var log = new ShotLog(null, null, null, null);
        var losses = plates.SelectMany(lives => lives).Select(life => life.LostMs).OfType<long>().Order().ToList();
        var seen = 0;
        foreach (var one in events)
        {
            Pass(one.AtMs, isPassed: false);
            var isTwice = one.Kind switch
            {
                ReportedEventKind.Setting => log.SettingMs is not null || log.IsTaken,
                ReportedEventKind.Shooting => log.IsTaken,
                ReportedEventKind.Shot => log.ShotMs is not null || log.ApprovedMs is not null,
                _ => log.ApprovedMs is not null,
            };
            if (isTwice)
            {
                context.Refuse(path.At(one.Index)[ReportedEvent.AtFieldNumber].ToString(), "This, or what follows it, has happened to the shot already.");
                continue;
            }

            if (one.Kind != ReportedEventKind.Setting && !log.IsTaken && plates.Any(lives => !StandsAt(lives, one.AtMs)))
            {
                context.Refuse(path.At(one.Index)[ReportedEvent.AtFieldNumber].ToString(), "A plate that it needs did not stand on the set then.");
            }

            log = one.Kind switch
            {
                ReportedEventKind.Setting => log with { SettingMs = one.AtMs, IdleSettingMs = null },
                ReportedEventKind.Shooting => log with { ShootingMs = one.AtMs, IdleSettingMs = null },
                ReportedEventKind.Shot => log with { ShotMs = one.AtMs },
                _ => log with { ApprovedMs = one.AtMs },
            };
        }

        Pass(long.MaxValue, isPassed: true);
        return log;

        // A loss undoes frames that are not all taken, and leaves the set standing ready for them.
        void Pass(long untilMs, bool isPassed)
        {
            for (; seen < losses.Count && (losses[seen] < untilMs || isPassed); seen++)
            {
                if (log.ShotMs is null && log.ApprovedMs is null)
                {
                    log = new(null, null, null, null) { IdleSettingMs = log.SettingMs ?? log.ShootingMs ?? log.IdleSettingMs };
                }
            }
        }
    }

    /// <summary>Whether a plate may have stood on the set: what was not told is no hindrance, but for a plate that was lost.</summary>
    private static bool StandsAt(List<PlateLife> lives, long atMs)
    {
        var index = lives.FindIndex(life => life.LostMs is not { } lost || lost >= atMs);
        var life = lives[index];
        return (life.FiredMs ?? 0) <= atMs && (life.LandedMs ?? 0) <= atMs && (index == 0 || life.IsTold);
    }

    // The set takes one shot after the other.
    private static void CheckSet(this RequestContext context, List<List<Told>> events, List<ShotLog> logs, FieldPath path)
    {
        for (var i = 0; i < logs.Count; i++)
        {
            for (var k = 0; k < logs.Count; k++)
            {
                if (i != k && logs[i].ShootingMs is { } one && logs[k] is { ShootingMs: { } from, ShotMs: var ended } && one >= from
                    && (ended is { } until ? one < until && (one > from || i > k) : one == from && i > k))
                {
                    var index = events[i].First(told => told.Kind == ReportedEventKind.Shooting && told.AtMs == one).Index;
                    context.Refuse(path.At(index)[ReportedEvent.AtFieldNumber].ToString(), "The frames of another shot were being taken then.");
                }
            }
        }
    }
}
