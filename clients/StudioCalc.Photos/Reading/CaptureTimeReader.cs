using System.Globalization;
using System.Text.RegularExpressions;
using MetadataExtractor.Formats.Exif;

namespace StudioCalc.Photos;

/// <summary>Reads when a photo was taken: date and time, parts of a second, offset from UTC.</summary>
internal static partial class CaptureTimeReader
{
    private const int TagOffsetOriginal = 0x9011;
    private const int TagOffsetDigitized = 0x9012;
    private const int MostFigures = 7;

    public static PhotoFacts Read(PhotoFacts facts, Tags tags, List<PhotoNote> notes)
    {
        var (time, fault) = Time(tags, ExifDirectoryBase.TagDateTimeOriginal, ExifDirectoryBase.TagSubsecondTimeOriginal);
        var offsetTag = TagOffsetOriginal;
        if (time is null)
        {
            notes.Add(PhotoSubject.CaptureTime, fault, fault switch
            {
                PhotoReason.Missing => "The file has no capture time.",
                PhotoReason.Blank => "The capture time is left blank: the camera's clock was not set.",
                _ => "The capture time is written in a form that is no date and time.",
            });
            (time, _) = Time(tags, ExifDirectoryBase.TagDateTimeDigitized, ExifDirectoryBase.TagSubsecondTimeDigitized);
            offsetTag = TagOffsetDigitized;
            if (time is null)
            {
                return facts;
            }

            notes.Add(PhotoSubject.CaptureTime, PhotoReason.FromOtherField, "The capture time comes from the field of when the file was made.");
        }

        return facts with { CapturedAt = time, TimeOffset = Offset(tags.Text(offsetTag), notes) };
    }

    private static (DateTime? Time, PhotoReason Fault) Time(Tags tags, int tag, int subsecondTag)
    {
        if (tags.Raw(tag) is null)
        {
            return (null, PhotoReason.Missing);
        }

        var text = tags.Text(tag) ?? "";
        if (!text.Any(char.IsDigit) || text.StartsWith("0000", StringComparison.Ordinal))
        {
            return (null, PhotoReason.Blank);
        }

        return DateTime.TryParseExact(text, ["yyyy:MM:dd HH:mm:ss", "yyyy-MM-dd HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? (time.AddTicks(Ticks(tags.Text(subsecondTag))), default)
            : (null, PhotoReason.Malformed);
    }

    // The figures stand behind the decimal point: "5" and "50" are both half a second.
    private static long Ticks(string? subseconds)
    {
        var figures = string.Concat((subseconds ?? "").TakeWhile(char.IsAsciiDigit).Take(MostFigures));
        return figures.Length == 0 ? 0 : long.Parse(figures.PadRight(MostFigures, '0'), CultureInfo.InvariantCulture);
    }

    private static TimeSpan? Offset(string? text, List<PhotoNote> notes)
    {
        if (text == "Z")
        {
            return TimeSpan.Zero;
        }

        if (OffsetForm().Match(text ?? "") is { Success: true } match)
        {
            var minutes = (int.Parse(match.Groups["h"].Value, CultureInfo.InvariantCulture) * 60) + int.Parse(match.Groups["m"].Value, CultureInfo.InvariantCulture);
            if (minutes <= 14 * 60)
            {
                return TimeSpan.FromMinutes(match.Groups["sign"].Value == "-" ? -minutes : minutes);
            }
        }

        var isBlank = text is null || !text.Any(char.IsDigit);
        notes.Add(PhotoSubject.TimeOffset, isBlank ? PhotoReason.Missing : PhotoReason.Malformed,
            isBlank ? "The capture time has no offset from UTC." : "The offset of the capture time from UTC is written in a form that is none.");
        return null;
    }

    [GeneratedRegex(@"^(?<sign>[+-])(?<h>[0-9]{2}):(?<m>[0-5][0-9])\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OffsetForm();
}
