using System.Globalization;
using System.Text;
using StudioCalc.Photos;

namespace StudioCalc.Cli;

/// <summary>The pace of a shoot as a table, with the summary under it.</summary>
internal static class PaceTable
{
    private const int Name = 28;
    private const int Cell = 12;

    public static string Text(ShootPace pace)
    {
        var text = new StringBuilder();
        Row(text, "dish", "first frame", "minutes", "changeover", "frames", "kept", "keep rate");
        foreach (var dish in pace.Dishes)
        {
            Row(text, dish.Dish, dish.First.ToString("MM-dd HH:mm", CultureInfo.InvariantCulture), Number(dish.Minutes), Number(dish.ChangeoverMinutes), Count(dish.Frames), Count(dish.Kept), Share(dish.KeepRate));
        }

        text.Append('\n');
        Row(text, "", "median", "P10", "P90", "count");
        Row(text, "minutes a dish", pace.DishMinutes, Number);
        Row(text, "minutes of changeover", pace.ChangeoverMinutes, Number);
        Row(text, "seconds between frames", pace.FrameGapSeconds, Number);
        Row(text, "frames a dish", pace.FramesPerDish, Number);
        Row(text, "keep rate", pace.KeepRate, Share);
        text.Append('\n');
        Row(text, "dishes", Count(pace.Dishes.Count));
        Row(text, "frames", Count(pace.Frames));
        if (pace.FramesOfNoDish > 0)
        {
            Row(text, "frames of no dish", Count(pace.FramesOfNoDish));
        }

        Row(text, "hours without breaks", Number(pace.Hours));
        Row(text, "dishes an hour", Number(pace.DishesPerHour));
        Row(text, "frames an hour", Number(pace.FramesPerHour));
        if (pace.Kept is not null)
        {
            Row(text, "kept frames an hour", Number(pace.KeptPerHour));
        }

        return text.Append(Notes(pace)).ToString();
    }

    public static string Notes(ShootPace pace) => string.Concat(pace.Notes.Select(note => $"{note.Code}  {Printable(note.Text)}\n"));

    private static void Row(StringBuilder text, string name, Spread? spread, Func<double?, string> show)
    {
        if (spread is not null)
        {
            Row(text, name, show(spread.Median), show(spread.P10), show(spread.P90), Count(spread.Count));
        }
    }

    private static void Row(StringBuilder text, string name, params ReadOnlySpan<string> cells)
    {
        var shown = Printable(name);
        var line = new StringBuilder(shown.Length > Name ? shown[..(Name - 1)] + "…" : shown.PadRight(Name));
        foreach (var cell in cells)
        {
            line.Append("  ").Append(cell.PadLeft(Cell));
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }

    private static string Printable(string text) => string.Concat(text.Select(letter => char.IsControl(letter) ? '?' : letter));

    private static string Number(double? number) => number is { } value ? value.ToString("0.0", CultureInfo.InvariantCulture) : "-";

    private static string Share(double? share) => share is { } value ? value.ToString("0.00", CultureInfo.InvariantCulture) : "-";

    private static string Count(int? count) => count?.ToString(CultureInfo.InvariantCulture) ?? "-";
}
