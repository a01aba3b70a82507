using System.Text;

namespace StudioCalc.Photos;

/// <summary>Reads comma-separated values (RFC 4180).</summary>
internal static class CsvRecords
{
    /// <exception cref="FormatException">A quote is not closed.</exception>
    public static IEnumerable<IReadOnlyList<string>> Read(string text)
    {
        var (cells, cell, isQuoted) = (new List<string>(), new StringBuilder(), false);
        var plain = text.TrimStart('\uFEFF').ReplaceLineEndings("\n");
        for (var at = 0; at < plain.Length; at++)
        {
            var letter = plain[at];
            if (isQuoted && letter == '"' && at + 1 < plain.Length && plain[at + 1] == '"')
            {
                cell.Append('"');
                at++;
            }
            else if (letter == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (isQuoted || letter is not ('\n' or ','))
            {
                cell.Append(letter);
            }
            else
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
                if (letter == '\n')
                {
                    if (cells.Exists(one => one.Length > 0))
                    {
                        yield return cells;
                    }

                    cells = [];
                }
            }
        }

        if (isQuoted)
        {
            throw new FormatException("A quotation mark is not closed.");
        }

        cells.Add(cell.ToString().Trim());
        if (cells.Exists(one => one.Length > 0))
        {
            yield return cells;
        }
    }
}
