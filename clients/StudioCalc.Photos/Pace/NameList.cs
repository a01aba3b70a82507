namespace StudioCalc.Photos;

/// <summary>Names of photos as people list them: with or without the folder, with or without the extension.</summary>
/// <param name="names">The names.</param>
public sealed class NameList(IEnumerable<string> names)
{
    private readonly HashSet<string> _names = [.. names.Select(Plain).Where(name => name.Length > 0)];

    /// <summary>How many names there are.</summary>
    public int Count => _names.Count;

    /// <summary>Whether a photo is named.</summary>
    public bool Has(string name) => FormsOf(name).Any(_names.Contains);

    /// <summary>Whether a frame is named, by any of its files.</summary>
    internal bool Has(PhotoFrame frame) => frame.Forms.Any(_names.Contains);

    /// <summary>The names that name none of some frames.</summary>
    internal IReadOnlyList<string> NotAmong(IEnumerable<PhotoFrame> frames) => NotAmong(_names, frames);

    internal static IReadOnlyList<string> NotAmong(IEnumerable<string> names, IEnumerable<PhotoFrame> frames) =>
        [.. names.Except(frames.SelectMany(frame => frame.Forms), StringComparer.Ordinal)];

    /// <summary>The forms in which a photo may be named, the most exact first.</summary>
    internal static IEnumerable<string> FormsOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var plain = Plain(name);
        var file = plain[(plain.LastIndexOf('/') + 1)..];
        return [plain, Path.ChangeExtension(plain, null), file, Path.ChangeExtension(file, null)];
    }

    internal static string Plain(string name) => name.Trim().Replace('\\', '/');
}
