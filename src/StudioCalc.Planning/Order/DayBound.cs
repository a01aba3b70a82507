namespace StudioCalc.Planning;

/// <summary>A bound on what any order of a whole day costs, by the bounds of its parts.</summary>
internal static class DayBound
{
    public static OrderCost Of(DayShape day, int[] blocks)
    {
        var (excess, setups) = (0L, 0L);
        var finish = day.Start[day.Layout.Finish];
        var resources = day.Layout.Capacity.Length;
        var (work, tail, head) = (new long[resources], new long[resources], new long[resources]);
        Array.Fill(tail, Windows.Never);
        Array.Fill(head, Windows.Never);
        foreach (var block in blocks)
        {
            var after = blocks.Where(before => before != block).Select(before => day.After(before, block)).Append(day.After(null, block)).ToList();
            excess += after.Min(day.LeastExcess);
            var cheapest = after.MinBy(timer => timer.SetupMs)!;
            setups += cheapest.SetupMs;
            var linear = cheapest.Linear;
            for (var u = 0; u < linear.Used.Length; u++)
            {
                var k = linear.Used[u];
                work[k] += linear.Work[u];
                tail[k] = Math.Min(tail[k], linear.Tail[u]);
                head[k] = Math.Min(head[k], linear.Start[u * (linear.Used.Length + 1) + linear.Used.Length]);
            }

            finish = Math.Max(finish, linear.Finish[^1]);
        }

        for (var k = 0; k < resources; k++)
        {
            if (head[k] < Windows.Never)
            {
                var units = day.Start.AsSpan(day.Layout.At[k], day.Layout.Capacity[k]);
                var start = Math.Max(head[k], units[0]);
                finish = Math.Max(finish, tail[k] + (units.Length == 1
                    ? Windows.Pass(day.Open[k], start, work[k])
                    : start + (work[k] + units.Length - 1) / units.Length));
            }
        }

        return new(0, excess, finish, setups);
    }
}
