namespace StudioCalc.Planning;

/// <summary>Sums over the replications of one core: whole numbers, so that they add up to the same in any order.</summary>
internal sealed class DayTally(int resources, int blocks)
{
    private readonly long[] _path = new long[resources + 1];
    private readonly bool[] _binds = new bool[resources];

    public long[] BusyMs { get; } = new long[resources];

    /// <summary>Time on the way to the finish; the last for work without a resource.</summary>
    public long[] PathMs { get; } = new long[resources + 1];

    public int[] Binding { get; } = new int[resources];

    public int[] Broken { get; } = new int[blocks];

    public int[] MadeAgain { get; } = new int[blocks];

    public int[] GivenUp { get; } = new int[blocks];

    public long[] WaitMs { get; } = new long[blocks];

    public int[] Waits { get; } = new int[blocks];

    public long FinishMs { get; private set; }

    public long IdleMs { get; private set; }

    public long Finished { get; private set; }

    public long Frames { get; private set; }

    public long Keepers { get; private set; }

    public long Missed { get; private set; }

    public int Over { get; private set; }

    public void Again(int block, int round, int mostPlates, int shots)
    {
        if (round + 1 < mostPlates)
        {
            MadeAgain[block]++;
        }
        else
        {
            GivenUp[block] += shots;
        }
    }

    public void Wait(int block, long waitMs)
    {
        WaitMs[block] += waitMs;
        Waits[block]++;
    }

    public void Add(RunResult result, ReadOnlySpan<bool> broken, long[] busyMs)
    {
        FinishMs += result.FinishMs;
        IdleMs += result.IdleMs;
        Finished += result.Finished;
        Frames += result.Frames;
        Keepers += result.Keepers;
        Missed += result.Missed;
        Over += result.IsOver ? 1 : 0;
        for (var i = 0; i < BusyMs.Length; i++)
        {
            BusyMs[i] += busyMs[i];
        }

        for (var b = 0; b < broken.Length; b++)
        {
            Broken[b] += broken[b] ? 1 : 0;
        }
    }

    public void Walk(DayClock clock, int last)
    {
        Array.Clear(_path);
        Array.Clear(_binds);
        clock.WalkBack(last, _path, _binds);
        for (var i = 0; i < _path.Length; i++)
        {
            PathMs[i] += _path[i];
        }

        for (var i = 0; i < _binds.Length; i++)
        {
            Binding[i] += _binds[i] ? 1 : 0;
        }
    }

    public void Add(DayTally other)
    {
        Sum(BusyMs, other.BusyMs);
        Sum(PathMs, other.PathMs);
        Sum(WaitMs, other.WaitMs);
        Sum(Binding, other.Binding);
        Sum(Broken, other.Broken);
        Sum(MadeAgain, other.MadeAgain);
        Sum(GivenUp, other.GivenUp);
        Sum(Waits, other.Waits);
        FinishMs += other.FinishMs;
        IdleMs += other.IdleMs;
        Finished += other.Finished;
        Frames += other.Frames;
        Keepers += other.Keepers;
        Missed += other.Missed;
        Over += other.Over;
    }

    private static void Sum<T>(T[] to, T[] from)
        where T : System.Numerics.INumber<T>
    {
        for (var i = 0; i < to.Length; i++)
        {
            to[i] += from[i];
        }
    }
}
