using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads open hours and names. What cannot be is noted.</summary>
internal static class HoursReader
{
    public static IReadOnlyList<OpenTime> ReadHours(this RequestContext context, IReadOnlyList<OpenHours> hours, FieldPath path)
    {
        var open = hours.Select(one => new OpenTime(one.From.ToMilliseconds(), one.Until.ToMilliseconds())).ToList();
        for (var i = 0; i < open.Count; i++)
        {
            if (open[i].UntilMs <= open[i].FromMs)
            {
                context.Refuse(path.At(i)[OpenHours.UntilFieldNumber].ToString(), "Must be after its start.");
            }

            if (i > 0 && open[i].FromMs < open[i - 1].UntilMs)
            {
                context.Refuse(path.At(i)[OpenHours.FromFieldNumber].ToString(), "Must not be before the end of the hours before it.");
            }
        }

        return open;
    }

    /// <summary>Names with their places in a list; a name that is there twice is noted and keeps its first place.</summary>
    public static Dictionary<string, int> ReadNames(this RequestContext context, IEnumerable<string> names, Func<int, string> pathOf)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var i = 0;
        foreach (var name in names)
        {
            if (!places.TryAdd(name, i))
            {
                context.Refuse(pathOf(i), "This name is there already: each must be unlike any other.");
            }

            i++;
        }

        return places;
    }

    /// <summary>Notes a field that contradicts another.</summary>
    public static void Refuse(this RequestContext context, string path, string text) =>
        context.Violations.Add(path, RefusalReason.Conflict, text);
}
