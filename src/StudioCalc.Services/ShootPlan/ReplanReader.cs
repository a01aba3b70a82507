using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads what a request of <c>ReplanShoot</c> tells beside the day.</summary>
internal static class ReplanReader
{
    private static readonly FieldPath Root = FieldPath.Root(ReplanShootRequest.Descriptor);

    public static ReplanRead ReadReplan(this RequestContext context, ReplanShootRequest request, DayDraft draft)
    {
        var plateOf = Places(request.Day.Plates.Select(plate => plate.Name));
        var log = context.ReadEvents(request, plateOf, draft.ShotOf, Root[ReplanShootRequest.EventsFieldNumber]);
        return new(log, context.ReadOrder(request, draft.ShotOf), context.ReadPortions(request, plateOf), context.ReadDaylight(request, draft.ShotOf));
    }

    private static int[] ReadOrder(this RequestContext context, ReplanShootRequest request, IReadOnlyDictionary<string, int> shotOf)
    {
        var path = Root[ReplanShootRequest.OrderFieldNumber];
        var ranks = new int[request.Day.Shots.Count];
        Array.Fill(ranks, -1);
        for (var i = 0; i < request.Order.Count; i++)
        {
            if (!shotOf.TryGetValue(request.Order[i], out var shot))
            {
                context.Refuse(path.ItemAt(i), "The day has no shot of this name.");
            }
            else if (ranks[shot] >= 0)
            {
                context.Refuse(path.ItemAt(i), "The order has this shot already.");
            }
            else
            {
                ranks[shot] = i;
            }
        }

        if (request.Order.Count < ranks.Length)
        {
            context.Refuse(path.ToString(), "Must have every shot of the day, those that are done too.");
        }

        return ranks;
    }

    private static uint?[] ReadPortions(this RequestContext context, ReplanShootRequest request, Dictionary<string, int> plateOf)
    {
        var path = Root[ReplanShootRequest.PortionsFieldNumber];
        var portions = new uint?[request.Day.Plates.Count];
        for (var i = 0; i < request.Portions.Count; i++)
        {
            var at = path.At(i)[PortionsLeft.PlateFieldNumber].ToString();
            if (!plateOf.TryGetValue(request.Portions[i].Plate, out var plate))
            {
                context.Refuse(at, "The day has no plate of this name.");
            }
            else if (portions[plate] is not null)
            {
                context.Refuse(at, "The portions of this plate are told already.");
            }
            else
            {
                portions[plate] = request.Portions[i].Count;
            }
        }

        return portions;
    }

    private static Dictionary<int, IReadOnlyList<OpenTime>> ReadDaylight(
        this RequestContext context, ReplanShootRequest request, IReadOnlyDictionary<string, int> shotOf)
    {
        var path = Root[ReplanShootRequest.DaylightFieldNumber];
        var hours = new Dictionary<int, IReadOnlyList<OpenTime>>();
        for (var i = 0; i < request.Daylight.Count; i++)
        {
            var at = path.At(i)[DaylightChange.ShotFieldNumber].ToString();
            var open = context.ReadHours(request.Daylight[i].Hours, path.At(i)[DaylightChange.HoursFieldNumber]);
            if (!shotOf.TryGetValue(request.Daylight[i].Shot, out var shot))
            {
                context.Refuse(at, "The day has no shot of this name.");
            }
            else if (!hours.TryAdd(shot, open))
            {
                context.Refuse(at, "The daylight of this shot is told already.");
            }
        }

        return hours;
    }

    // A name that is there twice is refused with the day.
    private static Dictionary<string, int> Places(IEnumerable<string> names)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (name, i) in names.Select((name, i) => (name, i)))
        {
            places.TryAdd(name, i);
        }

        return places;
    }
}
