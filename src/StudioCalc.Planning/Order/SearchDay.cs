namespace StudioCalc.Planning;

/// <summary>A day made ready for the search: blocks by small numbers in their order of preference, and bounds that all its states share.</summary>
internal sealed class SearchDay
{
    private readonly OrderTimer _timer;

    public SearchDay(OrderTimer timer, IReadOnlyList<int> preference, int? before, long[] start)
    {
        (_timer, Blocks, Start) = (timer, [.. preference], start);
        Count = Blocks.Length;
        After = new BlockTimer[Count + 1][];
        for (var i = 0; i <= Count; i++)
        {
            After[i] = new BlockTimer[Count];
            for (var j = 0; j < Count; j++)
            {
                After[i][j] = timer.Day.After(i < Count ? Blocks[i] : before, Blocks[j]);
            }
        }

        var classes = new Dictionary<string, int>(StringComparer.Ordinal);
        Class = new int[Count + 1];
        for (var i = 0; i <= Count; i++)
        {
            // What follows a block depends on what it leaves standing on the set only.
            var row = i < Count ? string.Join(',', timer.Day.Day.Blocks[Blocks[i]].Shots[^1].Setup) : "start";
            Class[i] = classes.TryGetValue(row, out var known) ? known : classes[row] = i;
        }

        Setups = new([.. After.Select(row => row.Select(one => one.SetupMs).ToArray())]);
        LeastExcess = [.. Enumerable.Range(0, Count).Select(j => Least(j).Min(timer.Day.LeastExcess))];
        Cheapest = [.. Enumerable.Range(0, Count).Select(j => Least(j).MinBy(one => (!one.Fits, one.SetupMs))!)];
        Positions = new int[Count];
        Array.Fill(Positions, -1);

        // A place may lie beyond these blocks, where some of the day find none at all.
        Has = new bool[timer.Day.Day.Blocks.Count];
        for (var j = 0; j < Count; j++)
        {
            if (timer.Day.Positions[Blocks[j]] is { } position)
            {
                Positions[j] = position;
                Has[position] = true;
            }
        }
    }

    public OrderTimer Timer => _timer;

    public DayShape Day => _timer.Day;

    public int[] Blocks { get; }

    public int Count { get; }

    public long[] Start { get; }

    /// <summary>The timers of each block after each other, and in the last row at the start.</summary>
    public BlockTimer[][] After { get; }

    public int[] Class { get; }

    public SetupBounds Setups { get; }

    public long[] LeastExcess { get; }

    /// <summary>Each block after the setup that is shortest for it.</summary>
    public BlockTimer[] Cheapest { get; }

    private int[] Positions { get; }

    private bool[] Has { get; }

    /// <summary>Whether a block may stand at a place of the order.</summary>
    public bool MayStand(int block, int place) => Positions[block] >= 0 ? Positions[block] == place : !Has[place];

    private IEnumerable<BlockTimer> Least(int j) => Enumerable.Range(0, Count + 1).Where(i => i != j).Select(i => After[i][j]);
}
