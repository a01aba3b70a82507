using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Changes of the set: their times, and each shot's setup in numbers.</summary>
internal sealed record SetChangesRead(SetupTimes Times, IReadOnlyList<IReadOnlyList<int>> Setups, ThreePoint? Factor);

/// <summary>Reads how long the set takes from shot to shot.</summary>
internal static class SetChangesReader
{
    public static SetChangesRead ReadChanges(this RequestContext context, V1.ShootDay day, FieldPath path)
    {
        var changes = day.Changes ?? new();
        var changesPath = path[V1.ShootDay.ChangesFieldNumber];
        var attributesPath = changesPath[SetChanges.AttributesFieldNumber];
        var attributes = context.ReadNames(
            changes.Attributes.Select(one => one.Name), i => attributesPath.At(i)[AttributeChange.NameFieldNumber].ToString());
        var matrix = changes.Matrix.Count > 0 ? context.ReadMatrix(changes, day.Shots.Count, changesPath) : null;
        var setups = day.Shots.Select((_, i) => matrix is null ? new int[changes.Attributes.Count] : [i]).ToList();
        var values = new Dictionary<(int Attribute, string Value), int>();
        for (var i = 0; i < day.Shots.Count; i++)
        {
            var shotPath = path[V1.ShootDay.ShotsFieldNumber].At(i)[DayShot.AttributesFieldNumber];
            var named = new HashSet<string>(StringComparer.Ordinal);
            for (var k = 0; k < day.Shots[i].Attributes.Count; k++)
            {
                var attribute = day.Shots[i].Attributes[k];
                var at = shotPath.At(k)[SetAttribute.NameFieldNumber].ToString();
                if (!named.Add(attribute.Name))
                {
                    context.Refuse(at, "The shot names this attribute already.");
                }
                else if (!attributes.TryGetValue(attribute.Name, out var a))
                {
                    context.Refuse(at, matrix is null
                        ? "The changes of the set name no such attribute with its time."
                        : "Own times from shot to shot take the place of attributes: leave these out, or the times.");
                }
                else if (matrix is null)
                {
                    // 0 is none.
                    setups[i][a] = values.TryGetValue((a, attribute.Value), out var known) ? known : values[(a, attribute.Value)] = values.Count + 1;
                }
            }
        }

        return new(
            new()
            {
                FirstMs = changes.First?.ToMilliseconds() ?? 0,
                SwapMs = changes.Swap?.ToMilliseconds() ?? 0,
                ChangeMs = matrix is null ? [.. changes.Attributes.Select(one => one.Time.ToMilliseconds())] : [],
                SideBySide = changes.SideBySide,
                Matrix = matrix,
            },
            setups,
            changes.LongestFactor > 1 ? new ThreePoint(1, 1, changes.LongestFactor, Spread.Pert) : null);
    }

    private static long[][] ReadMatrix(this RequestContext context, SetChanges changes, int shots, FieldPath path)
    {
        var matrixPath = path[SetChanges.MatrixFieldNumber];
        var matrix = changes.Matrix.Select((row, i) => row.To.Select((time, j) => i == j ? 0 : time.ToMilliseconds()).ToArray()).ToArray();
        if (matrix.Length != shots)
        {
            context.Refuse(matrixPath.ToString(), "Must have one row for each shot.");
        }

        for (var i = 0; i < matrix.Length; i++)
        {
            if (matrix[i].Length != shots)
            {
                context.Refuse(matrixPath.At(i)[SetChangeRow.ToFieldNumber].ToString(), "Must have one time for each shot.");
            }
        }

        if (changes.Attributes.Count > 0)
        {
            context.Refuse(path[SetChanges.AttributesFieldNumber].ToString(), "Own times take the place of the attributes: leave one out.");
        }

        if (changes.HasSideBySide)
        {
            context.Refuse(path[SetChanges.SideBySideFieldNumber].ToString(), "Belongs to attributes, whose place own times take.");
        }

        return matrix;
    }
}
