namespace StudioCalc.Planning;

/// <summary>One state of the search: blocks done, the last of them, and how it came about.</summary>
internal struct SearchState
{
    public int Done;
    public int Last;
    public int Parent;
    public int Next;
    public bool IsDropped;
    public long ExcessMs;
    public long SetupMs;
    public long FinishMs;
    public long Sum;
    public OrderCost Bound;
}

/// <summary>States with the same number of blocks done; those that another is no worse than in anything are dropped.</summary>
internal sealed class StateLayer(int releases)
{
    private readonly Dictionary<long, int> _heads = [];
    private SearchState[] _states = new SearchState[64];
    private long[] _free = new long[64 * releases];

    public int Count { get; private set; }

    public ref SearchState this[int index] => ref _states[index];

    public Span<long> Free(int index) => _free.AsSpan(index * releases, releases);

    /// <summary>Adds a state unless one with the same key is no worse in anything; drops those that it is no worse than.</summary>
    public void Add(long key, in SearchState state, ReadOnlySpan<long> free)
    {
        var head = _heads.GetValueOrDefault(key, -1);
        var before = -1;
        for (var at = head; at >= 0; at = _states[at].Next)
        {
            ref var other = ref _states[at];
            if (NoWorse(other, Free(at), state, free))
            {
                return;
            }

            if (NoWorse(state, free, other, Free(at)))
            {
                other.IsDropped = true;
                if (before < 0)
                {
                    head = other.Next;
                }
                else
                {
                    _states[before].Next = other.Next;
                }

                continue;
            }

            before = at;
        }

        Grow();
        _states[Count] = state;
        _states[Count].Next = head;
        free.CopyTo(Free(Count));
        _heads[key] = Count++;
    }

    /// <summary>Those not dropped, in the order in which they came; the best so many of them if there are more.</summary>
    /// <param name="width">How many are kept.</param>
    /// <param name="best">The best bound of what is cut; none if nothing is.</param>
    public int[] Kept(int width, out OrderCost? best)
    {
        var kept = Enumerable.Range(0, Count).Where(i => !_states[i].IsDropped).ToArray();
        best = null;
        if (kept.Length <= width)
        {
            return kept;
        }

        Array.Sort(kept, (a, b) =>
        {
            var order = _states[a].Bound.CompareTo(_states[b].Bound);
            order = order != 0 ? order : _states[a].Sum.CompareTo(_states[b].Sum);
            return order != 0 ? order : a.CompareTo(b);
        });
        best = _states[kept[width]].Bound;
        return kept[..width];
    }

    private static bool NoWorse(in SearchState a, ReadOnlySpan<long> freeA, in SearchState b, ReadOnlySpan<long> freeB)
    {
        if (a.Sum > b.Sum || a.ExcessMs > b.ExcessMs || a.SetupMs > b.SetupMs)
        {
            return false;
        }

        for (var i = 0; i < freeA.Length; i++)
        {
            if (freeA[i] > freeB[i])
            {
                return false;
            }
        }

        return true;
    }

    private void Grow()
    {
        if (Count == _states.Length)
        {
            Array.Resize(ref _states, 2 * Count);
            Array.Resize(ref _free, 2 * Count * releases);
        }
    }
}
