namespace StudioCalc.Photos;

/// <summary>Answers as comma-separated values with a header.</summary>
public static class PhotoCsv
{
    /// <summary>The header.</summary>
    public static string Header { get; } = CsvText.Line([.. PhotoColumn.All.Select(column => column.Name), PhotoColumn.NotesName]);

    /// <summary>One photo as a line; the codes of its notes stand in the last cell, with gaps between them.</summary>
    public static string Line(PhotoAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return CsvText.Line([.. PhotoColumn.All.Select(column => column.Value(answer)), string.Join(' ', answer.Notes.Select(note => note.Code).Distinct(StringComparer.Ordinal))]);
    }
}
