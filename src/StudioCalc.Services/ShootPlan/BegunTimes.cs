using StudioCalc.Planning;

namespace StudioCalc.Services;

/// <summary>When what has begun began, and when it ended or is expected to. What was not told is reckoned with likely times.</summary>
internal static class BegunTimes
{
    /// <summary>The shots that are being taken or are taken, by the start of their frames.</summary>
    public static IReadOnlyList<TakenShot> Shots(EventLog log, IReadOnlyList<DayShotRead> shots, V1.ShootDay day)
    {
        List<TakenShot> taken = [];
        for (var i = 0; i < log.Shots.Count; i++)
        {
            if (log.Shots[i].IsTaken)
            {
                taken.Add(Taken(i, log.Shots[i], day.Shots[i].Shooting.Likely.ToMilliseconds(), day.Shots[i].Approval?.Likely.ToMilliseconds() ?? 0));
            }
        }

        taken.Sort((one, other) => (one.StartMs, one.Shot).CompareTo((other.StartMs, other.Shot)));
        for (var i = 0; i < taken.Count; i++)
        {
            var one = taken[i];
            if (!one.IsEndTold)
            {
                // The set has gone on to something else, or the frames take until now at the least.
                var next = log.Shots.SelectMany(shot => new[] { shot.SettingMs, shot.ShootingMs, shot.IdleSettingMs }).OfType<long>()
                    .Where(at => at > one.StartMs).Order().Select(at => (long?)at).FirstOrDefault();
                one = one with { EndMs = next ?? Math.Max(one.EndMs, log.NowMs) };
            }

            var approval = day.Shots[one.Shot].Approval?.Likely.ToMilliseconds() ?? 0;
            taken[i] = one with
            {
                ApprovedMs = log.Shots[one.Shot].ApprovedMs is { } told ? Math.Max(told, one.EndMs) : Math.Max(one.EndMs + approval, approval > 0 ? log.NowMs : 0),
            };
        }

        return taken;
    }

    /// <summary>The stages of a plate that have begun: start and end of each.</summary>
    /// <param name="life">What was told.</param>
    /// <param name="usedMs">When its first frames were taken; none: not yet.</param>
    /// <param name="stages">Its stages.</param>
    /// <param name="nowMs">Now. [ms]</param>
    public static IReadOnlyList<(long StartMs, long EndMs)> Stages(PlateLife life, long? usedMs, IReadOnlyList<Stage> stages, long nowMs)
    {
        if (!life.IsTold && usedMs is null)
        {
            return [];
        }

        var likely = stages.Sum(stage => stage.DurationMs) + stages.SkipLast(1).Sum(stage => stage.LagMs);
        var landed = life.LandedMs ?? usedMs;
        var fired = life.FiredMs ?? Math.Max(0, landed!.Value - likely);

        // One that should have landed is taken to land now.
        landed ??= fired + likely <= nowMs ? nowMs : null;
        List<(long, long)> begun = [];
        var at = 0L;
        foreach (var stage in stages)
        {
            var (start, end) = (Moment(at), Moment(at + stage.DurationMs));
            if (landed is null && begun.Count > 0 && start >= nowMs)
            {
                break;
            }

            begun.Add((start, end));
            at += stage.DurationMs + stage.LagMs;
        }

        if (landed is { } last && begun[^1].Item2 != last)
        {
            begun[^1] = (begun[^1].Item1, last);
        }

        return begun;

        // Between two moments that are known the stages share the time in proportion.
        long Moment(long since) => landed is not { } until ? fired + since
            : likely == 0 ? until
            : fired + (long)((Int128)since * (until - fired) / likely);
    }

    private static TakenShot Taken(int shot, ShotLog log, long shootMs, long approveMs)
    {
        var end = log.ShotMs ?? (log.ApprovedMs is { } approved ? Math.Max(log.ShootingMs ?? 0, approved - approveMs) : null);
        var start = log.ShootingMs ?? Math.Max(log.SettingMs ?? 0, end!.Value - shootMs);
        return new(shot, log.SettingMs ?? start, start, end ?? start + shootMs, 0) { IsEndTold = end is not null };
    }
}

/// <summary>A shot that is being taken or is taken. [ms]</summary>
/// <param name="Shot">Which.</param>
/// <param name="SettingMs">When the set began to be changed for it.</param>
/// <param name="StartMs">Its first frame.</param>
/// <param name="EndMs">Its last frame.</param>
/// <param name="ApprovedMs">Its approval, expected unless told.</param>
internal sealed record TakenShot(int Shot, long SettingMs, long StartMs, long EndMs, long ApprovedMs)
{
    public bool IsEndTold { get; init; }
}
