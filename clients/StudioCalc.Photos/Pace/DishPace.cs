namespace StudioCalc.Photos;

/// <summary>The pace of one dish.</summary>
public sealed record DishPace
{
    /// <summary>Its name.</summary>
    public required string Dish { get; init; }

    /// <summary>When its first frame was taken.</summary>
    public required DateTime First { get; init; }

    /// <summary>When its last frame was taken.</summary>
    public required DateTime Last { get; init; }

    /// <summary>Minutes from its first frame to its last, without breaks.</summary>
    public required double Minutes { get; init; }

    /// <summary>Number of frames.</summary>
    public required int Frames { get; init; }

    /// <summary>Number of kept frames; null when it is not told which were kept.</summary>
    public required int? Kept { get; init; }

    /// <summary>Kept share of the frames, from 0 to 1.</summary>
    public double? KeepRate => (double?)Kept / Frames;

    /// <summary>Frames for each kept one; null when none was kept or it is not told.</summary>
    public double? FramesPerKept => Kept > 0 ? (double)Frames / Kept : null;

    /// <summary>Minutes from its last frame to the first of the next dish; null for the last dish, before a break, and where dishes
    /// overlap.</summary>
    public double? ChangeoverMinutes { get; private set; }

    internal static DishPace Of(string dish, IReadOnlyList<(PhotoFrame Frame, DateTime At)> row, PaceOptions options) => new()
    {
        Dish = dish,
        First = row[0].At,
        Last = row[^1].At,
        Minutes = row.Zip(row.Skip(1), (one, next) => next.At - one.At).Where(rest => rest <= options.Break).Sum(rest => rest.TotalMinutes),
        Frames = row.Count,
        Kept = options.Kept is { } kept ? row.Count(item => kept.Has(item.Frame)) : null,
    };

    internal static void Follow(IReadOnlyList<DishPace> dishes, TimeSpan longest)
    {
        for (var at = 0; at + 1 < dishes.Count; at++)
        {
            var rest = dishes[at + 1].First - dishes[at].Last;
            dishes[at].ChangeoverMinutes = rest >= TimeSpan.Zero && rest <= longest ? rest.TotalMinutes : null;
        }
    }
}
