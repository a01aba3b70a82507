using MetadataExtractor.Util;

namespace StudioCalc.Photos;

/// <summary>Kinds of photo files, and which extensions go with them.</summary>
internal static class PhotoFormats
{
    private static readonly string[] TiffLike = [".tif", ".tiff", ".dng", ".nef", ".nrw", ".pef", ".srw", ".arw", ".sr2", ".3fr", ".fff", ".iiq", ".erf", ".mef", ".mos", ".kdc", ".dcr", ".raw"];

    private static readonly Dictionary<FileType, string[]> Extensions = new()
    {
        [FileType.Jpeg] = [".jpg", ".jpeg", ".jpe"],
        [FileType.Tiff] = TiffLike,
        [FileType.Nef] = TiffLike, // plain TIFF files may begin like these two
        [FileType.Arw] = TiffLike,
        [FileType.Cr2] = [".cr2"],
        [FileType.Crx] = [".cr3"],
        [FileType.Crw] = [".crw"],
        [FileType.Orf] = [".orf"],
        [FileType.Raf] = [".raf"],
        [FileType.Rw2] = [".rw2"],
        [FileType.QuickTime] = [".heic", ".heif", ".hif", ".cr3"],
        [FileType.Mp4] = [".heic", ".heif", ".hif"],
    };

    private static readonly HashSet<string> All = [.. Extensions.Values.SelectMany(list => list)];

    public static bool IsPhoto(string extension) => All.Contains(extension.ToLowerInvariant());

    public static bool GoesWith(FileType type, string extension) => Extensions.TryGetValue(type, out var list) && list.Contains(extension);

    /// <summary>Whether photos of this kind can be read at all.</summary>
    public static bool IsRead(FileType type) => Extensions.ContainsKey(type);

    /// <summary>What a file of this kind is called in answers.</summary>
    public static string NameOf(FileType type, string extension) => type switch
    {
        FileType.QuickTime or FileType.Mp4 => "HEIF",
        FileType.Tiff or FileType.Nef or FileType.Arw => extension is not (".tif" or ".tiff") && TiffLike.Contains(extension) ? extension[1..].ToUpperInvariant() : "TIFF",
        FileType.Crx => "CR3",
        _ => type.ToString().ToUpperInvariant(),
    };
}
