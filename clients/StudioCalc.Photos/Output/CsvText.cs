namespace StudioCalc.Photos;

/// <summary>Records as comma-separated values (RFC 4180): quoted where needed, lines ended by CR LF.</summary>
public static class CsvText
{
    private const string NeedQuotes = "\",\r\n";
    private const string Formulas = "=+-@＝＋－＠";

    /// <summary>One record. Texts that a spreadsheet would take for a formula get an apostrophe in front; numbers never do.</summary>
    public static string Line(IEnumerable<object?> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return string.Join(',', cells.Select(cell => Quoted(cell is string text ? Harmless(PhotoText.Of(text)) : PhotoText.Of(cell)))) + "\r\n";
    }

    private static string Harmless(string text) =>
        text.Length > 0 && (char.IsControl(text[0]) || text.TrimStart() is [var first, ..] && Formulas.Contains(first, StringComparison.Ordinal)) ? "'" + text : text;

    private static string Quoted(string text) =>
        text.AsSpan().ContainsAny(NeedQuotes) || text.Length > 0 && (text[0] == ' ' || text[^1] == ' ')
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
}
