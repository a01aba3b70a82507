using System.Globalization;

namespace StudioCalc.Photos;

/// <summary>Names the dish of each frame, by file or by the time from which a dish stood before the camera.</summary>
public sealed class DishList
{
    private static readonly string[] Times = ["yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm"];

    private readonly Dictionary<string, string> _byFile = new(StringComparer.Ordinal);
    private readonly List<(DateTime From, string Dish)> _byTime = [];

    private DishList()
    {
    }

    /// <summary>Reads comma-separated values under the header <c>file,dish</c> or <c>from,dish</c>.</summary>
    /// <exception cref="FormatException">The text is no such list; the message says what to write.</exception>
    public static DishList Read(string csv)
    {
        ArgumentNullException.ThrowIfNull(csv);
        var list = new DishList();
        var header = "";
        var line = 0;
        foreach (var record in CsvRecords.Read(csv))
        {
            line++;
            if (line == 1)
            {
                header = string.Join(',', record).ToLowerInvariant();
                if (header is not ("file,dish" or "from,dish"))
                {
                    throw new FormatException("The first line must be file,dish or from,dish.");
                }

                continue;
            }

            if (record is not [{ Length: > 0 } key, { Length: > 0 } dish])
            {
                throw new FormatException($"Record {line} does not have two values.");
            }

            if (header == "file,dish")
            {
                list._byFile[NameList.Plain(key)] = dish;
            }
            else if (DateTime.TryParseExact(key, Times, CultureInfo.InvariantCulture, DateTimeStyles.None, out var from))
            {
                list._byTime.Add((from, dish));
            }
            else
            {
                throw new FormatException($"Record {line}: \"{key}\" is no time; write one such as 2026-11-25 10:15.");
            }
        }

        list._byTime.Sort((one, other) => one.From.CompareTo(other.From));
        return list;
    }

    /// <summary>The names of files that name none of some frames.</summary>
    internal IReadOnlyList<string> NotAmong(IEnumerable<PhotoFrame> frames) => NameList.NotAmong(_byFile.Keys, frames);

    /// <summary>The dish of a frame; null when the list names none for it.</summary>
    public string? Of(PhotoFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return frame.Forms.Select(form => _byFile.GetValueOrDefault(form)).FirstOrDefault(dish => dish is not null)
            ?? _byTime.LastOrDefault(entry => entry.From <= frame.CapturedAt).Dish;
    }
}
