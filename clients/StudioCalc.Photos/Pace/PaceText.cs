using System.Globalization;
using System.Text;
using System.Text.Json;

namespace StudioCalc.Photos;

/// <summary>The pace of a shoot as records.</summary>
public static class PaceText
{
    private static readonly (string Name, Func<DishPace, object?> Value)[] Columns =
    [
        ("dish", dish => dish.Dish),
        ("first_frame_at", dish => Time(dish.First)),
        ("last_frame_at", dish => Time(dish.Last)),
        ("minutes", dish => dish.Minutes),
        ("changeover_minutes", dish => dish.ChangeoverMinutes),
        ("frames", dish => dish.Frames),
        ("kept", dish => dish.Kept),
        ("keep_rate", dish => dish.KeepRate),
        ("frames_per_kept", dish => dish.FramesPerKept),
    ];

    /// <summary>The dishes as comma-separated values with a header.</summary>
    public static string Csv(ShootPace pace)
    {
        ArgumentNullException.ThrowIfNull(pace);
        return CsvText.Line(Columns.Select(column => column.Name)) + string.Concat(pace.Dishes.Select(dish => CsvText.Line(Columns.Select(column => column.Value(dish)))));
    }

    /// <summary>Everything as one JSON object, indented, without what is not known.</summary>
    public static string Json(ShootPace pace)
    {
        ArgumentNullException.ThrowIfNull(pace);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, PhotoJson.Indented))
        {
            json.WriteStartObject();
            (string Name, object? Value)[] values =
            [
                ("dish_count", pace.Dishes.Count), ("frames", pace.Frames), ("frames_of_no_dish", pace.FramesOfNoDish), ("kept", pace.Kept),
                ("kept_names_unmatched", pace.KeptNamesUnmatched), ("dish_names_unmatched", pace.DishNamesUnmatched), ("hours", pace.Hours),
                ("dishes_per_hour", pace.DishesPerHour), ("frames_per_hour", pace.FramesPerHour), ("kept_per_hour", pace.KeptPerHour),
            ];
            foreach (var (name, value) in values)
            {
                PhotoJson.Write(json, name, value);
            }

            (string Name, Spread? Spread)[] spreads =
            [
                ("dish_minutes", pace.DishMinutes), ("changeover_minutes", pace.ChangeoverMinutes), ("frame_gap_s", pace.FrameGapSeconds),
                ("frames_per_dish", pace.FramesPerDish), ("keep_rate", pace.KeepRate),
            ];
            foreach (var (name, spread) in spreads)
            {
                Write(json, name, spread);
            }

            json.WriteStartArray("dishes");
            foreach (var dish in pace.Dishes)
            {
                json.WriteStartObject();
                foreach (var (name, value) in Columns)
                {
                    PhotoJson.Write(json, name, value(dish));
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            PhotoJson.Write(json, pace.Notes);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, string name, Spread? spread)
    {
        if (spread is null)
        {
            return;
        }

        json.WriteStartObject(name);
        PhotoJson.Write(json, "count", spread.Count);
        PhotoJson.Write(json, "median", spread.Median);
        PhotoJson.Write(json, "p10", spread.P10);
        PhotoJson.Write(json, "p90", spread.P90);
        json.WriteEndObject();
    }

    private static string Time(DateTime time) => time.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture);
}
