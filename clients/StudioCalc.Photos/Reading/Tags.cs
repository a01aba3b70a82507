using System.Text;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using MetadataExtractor.Formats.Jpeg;
using Directory = MetadataExtractor.Directory;

namespace StudioCalc.Photos;

/// <summary>Looks up what a file says, past its thumbnail.</summary>
internal sealed class Tags(IReadOnlyList<Directory> directories)
{
    private const int LongestText = 256;

    private readonly List<ExifDirectoryBase> _exif =
    [
        .. directories.OfType<ExifSubIfdDirectory>(),
        .. directories.OfType<ExifIfd0Directory>(),
    ];

    public bool HasExif => _exif.Exists(directory => directory.TagCount > 0);

    public JpegDirectory? Jpeg => directories.OfType<JpegDirectory>().FirstOrDefault();

    public IEnumerable<string> Errors => directories.SelectMany(directory => directory.Errors);

    public object? Raw(int tag) => _exif.Find(directory => directory.ContainsTag(tag))?.GetObject(tag);

    public RawValue Number(int tag) => RawValue.Of(Raw(tag));

    /// <summary>A text in one line; null when there is none or it is blank.</summary>
    public string? Text(int tag)
    {
        var text = _exif.Find(directory => directory.ContainsTag(tag))?.GetString(tag);
        var plain = text is null ? "" : OneLine(text);
        return plain.Length == 0 ? null : plain;
    }

    // Fields may hold anything: control signs, half a surrogate pair, megabytes.
    private static string OneLine(string text)
    {
        var line = new StringBuilder();
        foreach (var rune in text.AsSpan(0, Math.Min(text.Length, LongestText)).EnumerateRunes())
        {
            line.Append(Rune.IsControl(rune) || rune.Value is 0xFFFE or 0xFFFF ? " " : rune.ToString());
        }

        return line.ToString().Trim();
    }
}
