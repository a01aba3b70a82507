using System.Globalization;
using System.Text;

namespace StudioCalc.Photos;

/// <summary>Values as text, the same in every country.</summary>
internal static class PhotoText
{
    /// <summary>A value of a column.</summary>
    public static string Of(object? value) => value switch
    {
        null => "",
        bool yes => yes ? "true" : "false",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        string text => Valid(text),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    /// <summary>The capture time as ISO 8601 writes it, with its offset where that is known.</summary>
    public static string? TimeOf(PhotoFacts facts)
    {
        if (facts.CapturedAt is not { } time)
        {
            return null;
        }

        var text = time.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture);
        return facts.TimeOffset is { } offset
            ? text + (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString("hh\\:mm", CultureInfo.InvariantCulture)
            : text;
    }

    /// <summary>A text without halves of surrogate pairs, which file names may hold.</summary>
    public static string Valid(string text)
    {
        if (!text.Any(char.IsSurrogate))
        {
            return text;
        }

        var valid = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            valid.Append(rune.ToString());
        }

        return valid.ToString();
    }
}
