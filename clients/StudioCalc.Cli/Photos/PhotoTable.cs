using System.Globalization;
using System.Text;
using StudioCalc.Photos;

namespace StudioCalc.Cli;

/// <summary>Photos as a table, line by line, so that a long folder need not be held.</summary>
internal static class PhotoTable
{
    private const string None = "-";

    private static readonly (string Head, int Width, Func<PhotoAnswer, string?> Cell)[] Columns =
    [
        ("photo", 28, answer => answer.Photo.Name),
        ("aperture", 8, answer => Aperture(answer)),
        ("shutter", 9, answer => Shutter(answer)),
        ("ISO", 6, answer => Plain(answer.Facts.Iso, "")),
        ("EV 100", 6, answer => answer.Exposure?.Settings.ExposureValueIso100Stops.ToString("0.0", CultureInfo.InvariantCulture)),
        ("focal", 8, answer => Plain(answer.Facts.FocalLengthMm, " mm")),
        ("distance", 9, answer => answer.Facts.IsFocusedAtInfinity ? "infinite" : Length(answer.Facts.SubjectDistanceMm)),
        ("sensor", 13, answer => answer.Sensor is { Size: var size } ? string.Create(CultureInfo.InvariantCulture, $"{size.WidthMm:0.#}x{size.HeightMm:0.#} mm") : null),
        ("field", 9, answer => answer.Framing?.Focus is { HasFieldWidthMm: true } focus ? Length(focus.FieldWidthMm) : null),
        ("sharp depth", 13, Depth),
    ];

    /// <summary>The heads.</summary>
    public static string Header { get; } = Line(Columns.Select(column => column.Head), "notes");

    /// <summary>One photo.</summary>
    public static string Line(PhotoAnswer answer) =>
        Line(Columns.Select(column => column.Cell(answer) ?? None), string.Join(' ', answer.Notes.Where(IsTold).Select(note => note.Code).Distinct(StringComparer.Ordinal)));

    private static string Line(IEnumerable<string> cells, string last)
    {
        var line = new StringBuilder();
        foreach (var (cell, width) in cells.Zip(Columns.Select(column => column.Width)))
        {
            line.Append(Fit(cell, width).PadRight(width)).Append("  ");
        }

        return line.Append(last).ToString().TrimEnd() + "\n";
    }

    // Missing values show as such in their cells, and the summary counts every code.
    private static bool IsTold(PhotoNote note) => note.Subject is not (PhotoSubject.Orientation or PhotoSubject.TimeOffset or PhotoSubject.EquivalentFocalLength)
        && note.Reason is not (PhotoReason.Missing or PhotoReason.Unknown or PhotoReason.NeedsOtherValue or PhotoReason.NoPermittedBlur or PhotoReason.FromSensorAssumed or PhotoReason.Infinite);

    private static string? Aperture(PhotoAnswer answer) => Plain(answer.Facts.FNumber, "") is { } number ? "f/" + number : null;

    private static string? Shutter(PhotoAnswer answer) => answer.Facts.ExposureTimeS switch
    {
        null => null,
        >= 0.29 and var seconds => Plain(seconds, " s"),
        var seconds => string.Create(CultureInfo.InvariantCulture, $"1/{1 / seconds:0.#} s"),
    };

    private static string? Depth(PhotoAnswer answer) => answer.DepthOfField?.Zone switch
    {
        null => answer.Notes.Any(note => note.Reason == PhotoReason.NoPermittedBlur) ? "no blur given" : null,
        { HasTotalDepthMm: true } zone => Length(zone.TotalDepthMm),
        _ => "infinite",
    };

    private static string? Length(double? mm) => mm switch
    {
        null => null,
        >= 1000 => (mm.Value / 1000).ToString("G4", CultureInfo.InvariantCulture) + " m",
        _ => mm.Value.ToString("G4", CultureInfo.InvariantCulture) + " mm",
    };

    private static string? Plain(double? number, string unit) => number is { } value ? value.ToString("0.##", CultureInfo.InvariantCulture) + unit : null;

    private static string Fit(string text, int width)
    {
        var plain = string.Concat(text.Select(letter => char.IsControl(letter) ? '?' : letter));
        return plain.Length <= width ? plain : $"{plain[..(width / 3)]}…{plain[^(width - (width / 3) - 1)..]}";
    }
}
