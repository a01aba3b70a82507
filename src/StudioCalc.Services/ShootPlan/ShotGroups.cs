using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Groups of shots that share plates, numbered by their first shots.</summary>
internal sealed class ShotGroups
{
    /// <param name="order">The shots in the order in which those of a group are taken.</param>
    /// <param name="count">How many shots there are; others than those in order are in no group.</param>
    /// <param name="platesOf">The plates of a shot.</param>
    public ShotGroups(IReadOnlyList<int> order, int count, Func<int, int[]> platesOf)
    {
        PlatesOf = [.. Enumerable.Range(0, count).Select(shot => order.Contains(shot) ? platesOf(shot) : [])];

        // Each shot points to the first of its group, by their places in the order.
        var first = Enumerable.Range(0, order.Count).ToArray();
        var seen = new Dictionary<int, int>();
        for (var i = 0; i < first.Length; i++)
        {
            foreach (var plate in PlatesOf[order[i]])
            {
                if (seen.TryGetValue(plate, out var other))
                {
                    var (one, two) = (Math.Min(first[i], first[other]), Math.Max(first[i], first[other]));
                    for (var k = 0; k < first.Length; k++)
                    {
                        first[k] = first[k] == two ? one : first[k];
                    }
                }
                else
                {
                    seen.Add(plate, i);
                }
            }
        }

        var firsts = first.Distinct().Order().ToList();
        var groupOf = Enumerable.Repeat(-1, count).ToArray();
        for (var i = 0; i < first.Length; i++)
        {
            groupOf[order[i]] = firsts.IndexOf(first[i]);
        }

        GroupOf = groupOf;
        Shots = [.. Enumerable.Range(0, firsts.Count).Select(group => order.Where(shot => groupOf[shot] == group).ToArray())];
        Plates = [.. Shots.Select(group => group.SelectMany(shot => PlatesOf[shot]).Distinct().Order().ToArray())];
    }

    /// <summary>The groups of a day, shots in the order of the request.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="plateOf">Each plate by its name; others count for nothing.</param>
    public static ShotGroups Of(IReadOnlyList<DayShot> shots, IReadOnlyDictionary<string, int> plateOf) => new(
        [.. Enumerable.Range(0, shots.Count)], shots.Count,
        shot => [.. shots[shot].Plates.Where(plateOf.ContainsKey).Select(name => plateOf[name]).Distinct().Order()]);

    /// <summary>The plates of each shot.</summary>
    public IReadOnlyList<int[]> PlatesOf { get; }

    /// <summary>The group of each shot; below 0 of those in none.</summary>
    public IReadOnlyList<int> GroupOf { get; }

    /// <summary>The shots of each group, in their order.</summary>
    public IReadOnlyList<int[]> Shots { get; }

    /// <summary>The plates of each group, in their order.</summary>
    public IReadOnlyList<int[]> Plates { get; }
}
