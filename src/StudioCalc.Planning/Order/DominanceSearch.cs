namespace StudioCalc.Planning;

/// <summary>Orders by a dynamic programme over sets of blocks, with dominance.</summary>
/// <remarks>
/// A state is a set of blocks done, what stands on the set, the moments at which each unit is free, the excess and the setups so far. Of two
/// with the same set and standing, one that is larger in nothing makes the other needless: all that follows rises with the releases
/// (see <see cref="BlockTimer"/>). States whose bound is no better than the best order known are dropped. Layers beyond a width are cut;
/// then nothing is proved but the bound. Source: bounded dynamic programming, Bautista et al. (2012), from memory.
/// </remarks>
internal sealed class DominanceSearch(SearchDay day, OrderCost best, int width, CancellationToken cancellation)
{
    private readonly List<(int Last, int Parent)[]> _paths = [];
    private readonly bool _triangle = day.Day.Day.Setups.Detour() is null;

    /// <summary>The best cost known.</summary>
    public OrderCost Best { get; private set; } = best;

    /// <summary>The best order that was found, if it is better than what was known.</summary>
    public int[]? Found { get; private set; }

    /// <summary>Whether a layer was cut.</summary>
    public bool WasCut { get; private set; }

    /// <summary>The best bound of all that was cut.</summary>
    public OrderCost? CutBound { get; private set; }

    /// <summary>States that were kept, over all layers.</summary>
    public int Kept { get; private set; }

    public void Run(OrderCost before)
    {
        var releases = day.Day.Layout.Length;
        var layer = new StateLayer(releases);
        layer.Add(0, new() { Last = day.Count, Parent = -1, ExcessMs = before.ExcessMs, SetupMs = before.SetupMs }, day.Start);
        int[] kept = [0];
        for (var place = 0; place < day.Count && kept.Length > 0; place++)
        {
            var next = new StateLayer(releases);
            var bounds = new Dictionary<long, LeftBounds>();
            for (var i = 0; i < kept.Length; i++)
            {
                cancellation.ThrowIfCancellationRequested();

                Expand(layer, kept[i], place, next, bounds);
            }

            kept = next.Kept(width, out var cut);
            if (cut is { } bound)
            {
                WasCut = true;
                CutBound = CutBound is { } known && known <= bound ? known : bound;
            }

            Kept += kept.Length;
            var path = new (int Last, int Parent)[next.Count];
            for (var i = 0; i < path.Length; i++)
            {
                path[i] = (next[i].Last, next[i].Parent);
            }

            _paths.Add(path);
            layer = next;
        }
    }

    private void Expand(StateLayer layer, int index, int place, StateLayer next, Dictionary<long, LeftBounds> bounds)
    {
        Span<long> free = stackalloc long[day.Day.Layout.Length];
        var state = layer[index];
        if (place > 0 && state.Bound >= Best)
        {
            return;
        }

        for (var j = 0; j < day.Count; j++)
        {
            if ((state.Done >> j & 1) == 1 || !day.MayStand(j, place))
            {
                continue;
            }

            layer.Free(index).CopyTo(free);
            var timer = day.After[state.Last][j];
            if (day.Timer.Release(timer, free) is not { } excess)
            {
                continue;
            }

            var done = state.Done | 1 << j;
            var key = ((long)done << 6) | (uint)day.Class[j];
            if (!bounds.TryGetValue(key, out var left))
            {
                bounds.Add(key, left = new(day, ~done & ((1 << day.Count) - 1), j, _triangle));
            }

            var child = new SearchState
            {
                Done = done, Last = j, Parent = index, ExcessMs = state.ExcessMs + excess, SetupMs = state.SetupMs + timer.SetupMs,
            };
            child.FinishMs = left.Finish(free);
            child.Bound = new(0, child.ExcessMs + left.ExcessMs, child.FinishMs, child.SetupMs + left.SetupMs);
            if (child.Bound >= Best)
            {
                continue;
            }

            foreach (var unit in free)
            {
                child.Sum += unit;
            }

            if (place == day.Count - 1)
            {
                Best = child.Bound;
                Found = Path(index, j);
            }
            else
            {
                next.Add(key, child, free);
            }
        }
    }

    private int[] Path(int index, int last)
    {
        var order = new int[day.Count];
        order[^1] = day.Blocks[last];
        for (var place = day.Count - 2; place >= 0; place--)
        {
            var (block, parent) = _paths[place][index];
            order[place] = day.Blocks[block];
            index = parent;
        }

        return order;
    }
}
