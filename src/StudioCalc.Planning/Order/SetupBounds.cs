namespace StudioCalc.Planning;

/// <summary>The least setups of what is left of a day after a block.</summary>
/// <remarks>Exact for few blocks, by every set of blocks left and every one before it (Held and Karp, 1962, from memory); else the cheapest
/// setup into each block.</remarks>
internal sealed class SetupBounds
{
    private const int MostExact = 16;

    private readonly long[][] _setup;
    private readonly long[]? _least;
    private readonly int _n;

    /// <param name="setup">From block, or from the start in the last row, to block.</param>
    public SetupBounds(long[][] setup)
    {
        (_setup, _n) = (setup, setup.Length - 1);
        if (_n > MostExact)
        {
            return;
        }

        _least = new long[(1 << _n) * (_n + 1)];
        for (var left = 1; left < 1 << _n; left++)
        {
            for (var before = 0; before <= _n; before++)
            {
                if (before < _n && (left >> before & 1) == 1)
                {
                    continue;
                }

                var least = long.MaxValue;
                for (var j = 0; j < _n; j++)
                {
                    if ((left >> j & 1) == 1)
                    {
                        least = Math.Min(least, setup[before][j] + _least[(left & ~(1 << j)) * (_n + 1) + j]);
                    }
                }

                _least[left * (_n + 1) + before] = least;
            }
        }
    }

    public long Least(int left, int before)
    {
        if (_least is not null)
        {
            return _least[left * (_n + 1) + before];
        }

        var sum = 0L;
        for (var j = 0; j < _n; j++)
        {
            if ((left >> j & 1) == 0)
            {
                continue;
            }

            var least = _setup[before][j];
            for (var i = 0; i < _n; i++)
            {
                least = (left >> i & 1) == 1 && i != j ? Math.Min(least, _setup[i][j]) : least;
            }

            sum += least;
        }

        return sum;
    }
}
