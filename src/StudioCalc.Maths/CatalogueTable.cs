using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace StudioCalc.Maths;

/// <summary>A table of comma-separated values, read strictly: known columns only, every row complete, rows in the order of their ids.
/// A text that holds a comma stands in double quotes.</summary>
internal sealed class CatalogueTable
{
    private CatalogueTable(IReadOnlyList<CatalogueRow> rows, string version) => (Rows, Version) = (rows, version);

    public IReadOnlyList<CatalogueRow> Rows { get; }

    /// <summary>Made of the rows, so that it changes whenever one does.</summary>
    public string Version { get; }

    /// <summary>The text of a table that is built into this assembly.</summary>
    public static string BuiltIn(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidDataException($"There is no built-in table {name}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    public static CatalogueTable Read(string text, string[] columns)
    {
        var lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        if (lines[0] != string.Join(',', columns))
        {
            throw new InvalidDataException($"Line 1: the columns must be {string.Join(',', columns)}.");
        }

        var rows = new List<CatalogueRow>();
        for (var line = 1; line < lines.Length; line++)
        {
            var row = new CatalogueRow(line + 1, columns, Split(lines[line], line + 1));
            if (rows.Count > 0 && string.CompareOrdinal(rows[^1].Id, row.Id) >= 0)
            {
                throw row.Bad("id", "ids must be unique and in order");
            }

            rows.Add(row);
        }

        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines)));
        return new(rows, Convert.ToHexStringLower(hash.AsSpan(0, 4)));
    }

    private static List<string> Split(string line, int number)
    {
        var cells = new List<string>();
        var at = 0;
        do
        {
            var isQuoted = at < line.Length && line[at] == '"';
            var start = isQuoted ? at + 1 : at;
            var end = line.IndexOf(isQuoted ? '"' : ',', start);
            if (isQuoted && end < 0)
            {
                throw new InvalidDataException($"Line {number}: a quote does not end.");
            }

            end = end < 0 ? line.Length : end;
            cells.Add(line[start..end]);
            at = isQuoted ? end + 1 : end;
            if (at < line.Length && line[at] != ',')
            {
                throw new InvalidDataException($"Line {number}: a comma must follow a quote.");
            }
        }
        while (at++ < line.Length);

        return cells;
    }
}

/// <summary>A row of a table.</summary>
internal sealed class CatalogueRow
{
    private readonly int _line;
    private readonly string[] _columns;
    private readonly List<string> _cells;

    public CatalogueRow(int line, string[] columns, List<string> cells)
    {
        (_line, _columns, _cells) = (line, columns, cells);
        if (cells.Count != columns.Length)
        {
            throw new InvalidDataException($"Line {line}: {cells.Count} values where there are {columns.Length} columns.");
        }

        Id = Text("id");
        if (!Id.All(letter => letter is '-' or (>= 'a' and <= 'z') or (>= '0' and <= '9')))
        {
            throw Bad("id", "only small letters, digits and hyphens");
        }
    }

    public string Id { get; }

    public string Text(string column) => OptionalText(column) ?? throw Bad(column, "is empty");

    public string? OptionalText(string column)
    {
        var cell = _cells[Array.IndexOf(_columns, column)];
        if (cell != cell.Trim())
        {
            throw Bad(column, "has spaces around it");
        }

        return cell.Length == 0 ? null : cell;
    }

    public double Number(string column) => OptionalNumber(column) ?? throw Bad(column, "is empty");

    public double? OptionalNumber(string column)
    {
        if (OptionalText(column) is not { } text)
        {
            return null;
        }

        const NumberStyles plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        return double.TryParse(text, plain, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : throw Bad(column, "is not a number");
    }

    public T Choice<T>(string column)
        where T : struct, Enum => Enum.TryParse<T>(Text(column), out var value) && Enum.IsDefined(value) && value.ToString() == Text(column)
            ? value
            : throw Bad(column, "is none of " + string.Join(", ", Enum.GetNames<T>()));

    public bool YesOrNo(string column) => Text(column) switch
    {
        "yes" => true,
        "no" => false,
        _ => throw Bad(column, "is neither yes nor no"),
    };

    public InvalidDataException Bad(string column, string why) => new($"Line {_line}, {column}: {why}.");
}
