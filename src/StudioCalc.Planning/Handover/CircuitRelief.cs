namespace StudioCalc.Planning;

/// <summary>What to take off an overloaded circuit: the fewest devices, and the last of them the smallest that is enough.</summary>
/// <remarks>While the rest is too much: where one device is enough, the smallest such one goes, the first of equals; else the largest goes.
/// Taking the largest first leaves the fewest to take. Source: counting.</remarks>
public static class CircuitRelief
{
    /// <summary>How many of each load to take off.</summary>
    /// <param name="loads">Power of one device, and how many there are. [W]</param>
    /// <param name="usableW">What may stay together. [W]</param>
    public static IReadOnlyList<int> TakeOff(IReadOnlyList<(double PowerW, int Count)> loads, double usableW)
    {
        ArgumentNullException.ThrowIfNull(loads);
        var off = new int[loads.Count];
        while (Excess(loads, off, usableW) is > 0 and var excess && Next(loads, off, excess) is { } next)
        {
            off[next]++;
        }

        return off;
    }

    private static double Excess(IReadOnlyList<(double PowerW, int Count)> loads, int[] off, double usableW)
    {
        var power = -usableW;
        for (var i = 0; i < off.Length; i++)
        {
            power += loads[i].PowerW * (loads[i].Count - off[i]);
        }

        return power;
    }

    private static int? Next(IReadOnlyList<(double PowerW, int Count)> loads, int[] off, double excess)
    {
        int? enough = null, largest = null;
        for (var i = 0; i < off.Length; i++)
        {
            if (off[i] == loads[i].Count || loads[i].PowerW <= 0)
            {
                continue;
            }

            enough = loads[i].PowerW >= excess && (enough is null || loads[i].PowerW < loads[enough.Value].PowerW) ? i : enough;
            largest = largest is null || loads[i].PowerW > loads[largest.Value].PowerW ? i : largest;
        }

        return enough ?? largest;
    }
}
