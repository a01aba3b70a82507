using System.Globalization;

namespace StudioCalc.Photos;

/// <summary>The pace of a past shoot, by the times of its frames.</summary>
public sealed record ShootPace
{
    /// <summary>The dishes, in the order of their first frames.</summary>
    public required IReadOnlyList<DishPace> Dishes { get; init; }

    /// <summary>Number of frames.</summary>
    public required int Frames { get; init; }

    /// <summary>Number of frames that belong to no named dish; they count in no dish.</summary>
    public required int FramesOfNoDish { get; init; }

    /// <summary>Number of kept frames; null when it is not told which were kept.</summary>
    public required int? Kept { get; init; }

    /// <summary>Number of names in the list of kept photos that belong to none of the frames; null without a list.</summary>
    public required int? KeptNamesUnmatched { get; init; }

    /// <summary>Number of names in the list of dishes that belong to none of the frames; null without a list.</summary>
    public required int? DishNamesUnmatched { get; init; }

    /// <summary>Time from the first frame to the last, without breaks, in hours.</summary>
    public required double Hours { get; init; }

    /// <summary>Dishes an hour of that time; null without any time.</summary>
    public double? DishesPerHour => Hours > 0 ? Dishes.Count / Hours : null;

    /// <summary>Frames an hour of that time; null without any time.</summary>
    public double? FramesPerHour => Hours > 0 ? Frames / Hours : null;

    /// <summary>Kept frames an hour of that time; null without any time or when it is not told which were kept.</summary>
    public double? KeptPerHour => Hours > 0 ? Kept / Hours : null;

    /// <summary>Minutes from the first frame of a dish to its last.</summary>
    public required Spread? DishMinutes { get; init; }

    /// <summary>Minutes from the last frame of a dish to the first of the next, without breaks.</summary>
    public required Spread? ChangeoverMinutes { get; init; }

    /// <summary>Seconds from frame to frame within dishes.</summary>
    public required Spread? FrameGapSeconds { get; init; }

    /// <summary>Frames of a dish.</summary>
    public required Spread? FramesPerDish { get; init; }

    /// <summary>Kept share of the frames of a dish, from 0 to 1; null when it is not told which were kept.</summary>
    public required Spread? KeepRate { get; init; }

    /// <summary>What to mind.</summary>
    public required IReadOnlyList<PhotoNote> Notes { get; init; }

    /// <summary>Works out the pace of frames, in any order.</summary>
    public static ShootPace Of(IEnumerable<PhotoFrame> frames, PaceOptions options)
    {
        ArgumentNullException.ThrowIfNull(frames);
        ArgumentNullException.ThrowIfNull(options);
        var all = frames.ToList();
        var notes = new List<PhotoNote>();
        var clock = Clock(all, notes);
        var keptNames = Unmatched(options.Kept?.NotAmong(all), PhotoSubject.KeptList, notes);
        var dishNames = Unmatched(options.Dishes?.NotAmong(all), PhotoSubject.DishList, notes);
        var row = all.Select(frame => (Frame: frame, At: clock(frame))).OrderBy(item => item.At).ThenBy(item => item.Frame.Name, StringComparer.Ordinal).ToList();
        var groups = options.Dishes is { } named ? ByName(row, named) : ByGap(row, options.Gap);
        var dishes = groups.Select(group => DishPace.Of(group.Dish, group.Row, options)).ToList();
        DishPace.Follow(dishes, options.Break);
        var rests = row.Zip(row.Skip(1), (one, next) => next.At - one.At).ToList();
        return new()
        {
            Dishes = dishes,
            Frames = all.Count,
            FramesOfNoDish = all.Count - dishes.Sum(dish => dish.Frames),
            Kept = options.Kept is { } kept ? all.Count(frame => kept.Has(frame)) : null,
            KeptNamesUnmatched = keptNames,
            DishNamesUnmatched = dishNames,
            Hours = rests.Where(rest => rest <= options.Break).Sum(rest => rest.TotalHours),
            DishMinutes = Spread.Of(dishes.Select(dish => dish.Minutes)),
            ChangeoverMinutes = Spread.Of(dishes.Select(dish => dish.ChangeoverMinutes).OfType<double>()),
            FrameGapSeconds = Spread.Of(groups.SelectMany(group => group.Row.Zip(group.Row.Skip(1), (one, next) => next.At - one.At))
                .Where(rest => rest <= options.Break).Select(rest => rest.TotalSeconds)),
            FramesPerDish = Spread.Of(dishes.Select(dish => (double)dish.Frames)),
            KeepRate = Spread.Of(dishes.Select(dish => dish.KeepRate).OfType<double>()),
            Notes = notes,
        };
    }

    private static int? Unmatched(IReadOnlyList<string>? names, PhotoSubject subject, List<PhotoNote> notes)
    {
        if (names is [var first, ..])
        {
            notes.Add(subject, PhotoReason.Unmatched, string.Create(
                CultureInfo.InvariantCulture, $"Names in the list that belong to no frame: {names.Count}, such as {first}."));
        }

        return names?.Count;
    }

    // Where every offset is known, moments are compared; otherwise the cameras' clocks are.
    private static Func<PhotoFrame, DateTime> Clock(List<PhotoFrame> frames, List<PhotoNote> notes)
    {
        var offsets = frames.Select(frame => frame.TimeOffset).Distinct().ToList();
        if (offsets is [] or [not null])
        {
            return frame => frame.CapturedAt;
        }

        if (!offsets.Contains(null))
        {
            notes.Add(PhotoSubject.TimeOffset, PhotoReason.Conflict, $"The times have {offsets.Count} different offsets from UTC; frames are ordered by the moments.");
            var shown = offsets[0]!.Value;
            return frame => frame.CapturedAt - frame.TimeOffset!.Value + shown;
        }

        notes.Add(PhotoSubject.TimeOffset, offsets.Count == 1 ? PhotoReason.Missing : PhotoReason.Conflict, offsets.Count == 1
            ? "The times have no offset from UTC; a change of the clock during the shoot would not show."
            : "Some times have an offset from UTC and some have none; the cameras' clocks are compared as they are.");
        return frame => frame.CapturedAt;
    }

    private static List<(string Dish, List<(PhotoFrame Frame, DateTime At)> Row)> ByGap(List<(PhotoFrame Frame, DateTime At)> row, TimeSpan gap)
    {
        var groups = new List<(string Dish, List<(PhotoFrame, DateTime At)> Row)>();
        foreach (var item in row)
        {
            if (groups.Count == 0 || item.At - groups[^1].Row[^1].At >= gap)
            {
                groups.Add(($"dish {groups.Count + 1}", []));
            }

            groups[^1].Row.Add(item);
        }

        return groups;
    }

    private static List<(string Dish, List<(PhotoFrame Frame, DateTime At)> Row)> ByName(List<(PhotoFrame Frame, DateTime At)> row, DishList named) =>
    [
        .. row.Select(item => (Dish: named.Of(item.Frame), Item: item)).Where(one => one.Dish is not null)
            .GroupBy(one => one.Dish!, one => one.Item, StringComparer.Ordinal)
            .Select(group => (group.Key, group.ToList())),
    ];
}
