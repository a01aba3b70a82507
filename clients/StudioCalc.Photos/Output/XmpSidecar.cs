using System.Text;

namespace StudioCalc.Photos;

/// <summary>Writes worked-out values beside photos, as sidecar files. The photos are never touched.</summary>
public static class XmpSidecar
{
    private const int MostBytes = 16 << 20;
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Where the sidecar of a photo lies.</summary>
    /// <exception cref="ArgumentException">The photo does not lie on disk.</exception>
    public static string PathOf(PhotoFile photo, SidecarName name)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var path = photo.FullPath ?? throw new ArgumentException("The photo does not lie on disk.", nameof(photo));
        return name == SidecarName.Stem ? Path.ChangeExtension(path, ".xmp") : path + ".xmp";
    }

    /// <summary>Writes the sidecar of an answer, or merges into the one that is there.</summary>
    /// <returns>What was done, and why when it was refused.</returns>
    public static SidecarResult Write(PhotoAnswer answer, SidecarName name)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var path = PathOf(answer.Photo, name);
        if (name == SidecarName.Stem && answer.Photo.SharesStem)
        {
            return Refused(PhotoReason.Shared, "Another photo in the folder has the same name but for the extension, and would share the sidecar.");
        }

        try
        {
            var old = new FileInfo(path);
            return old switch
            {
                { LinkTarget: not null } => Refused(PhotoReason.Link, "The sidecar is a link; it is left alone."),
                { Exists: false } when answer is { Sensor: null, Exposure: null, DepthOfField: null } => new(SidecarOutcome.None, null),
                { Exists: false } => Create(path, answer),
                { IsReadOnly: true } => Refused(PhotoReason.ReadOnly, "The sidecar may not be written; it is left alone."),
                { Length: > MostBytes } => Refused(PhotoReason.TooLarge, $"The sidecar has over {MostBytes >> 20} MiB; it is left alone."),
                _ => Merge(old, answer),
            };
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Refused(PhotoReason.Unreadable, $"The sidecar could not be written: {error.Message}");
        }
        catch (Exception error) when (error is FormatException or DecoderFallbackException)
        {
            return Refused(PhotoReason.Malformed, $"The sidecar that is there is left alone. {error.Message}");
        }
    }

    private static SidecarResult Create(string path, PhotoAnswer answer)
    {
        using var file = new WholeFile(path);
        file.Text.Write(XmpPacket.New(answer));
        file.Keep(replace: false);
        return new(SidecarOutcome.Written, null);
    }

    private static SidecarResult Merge(FileInfo old, PhotoAnswer answer)
    {
        var (time, length) = (old.LastWriteTimeUtc, old.Length);
        var bytes = File.ReadAllBytes(old.FullName);
        var text = Strict.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(Encoding.UTF8.Preamble.Length) : bytes);
        var merged = XmpPacket.Merge(text, answer);
        if (merged == text)
        {
            return new(SidecarOutcome.Unchanged, null);
        }

        using var file = new WholeFile(old.FullName);
        file.Text.Write(merged);
        old.Refresh();
        if (!old.Exists || old.LastWriteTimeUtc != time || old.Length != length)
        {
            return Refused(PhotoReason.Changed, "Another program has changed the sidecar meanwhile; it is left as that left it.");
        }

        file.Keep(replace: true);
        return new(SidecarOutcome.Merged, null);
    }

    private static SidecarResult Refused(PhotoReason reason, string text) => new(SidecarOutcome.Refused, new(PhotoSubject.Sidecar, reason, text));
}

/// <summary>How sidecars are named.</summary>
public enum SidecarName
{
    /// <summary>After the whole name: <c>photo.jpg.xmp</c>. Two photos never share one.</summary>
    FullName,

    /// <summary>After the name without its extension: <c>photo.xmp</c>. Refused for photos that would share one.</summary>
    Stem,
}

/// <summary>What was done with a sidecar.</summary>
public enum SidecarOutcome
{
    /// <summary>There was none, and one was written.</summary>
    Written,

    /// <summary>Our properties were put into the one that was there.</summary>
    Merged,

    /// <summary>Nothing is worked out, and there is no sidecar that says otherwise.</summary>
    None,

    /// <summary>The one that was there says the same already.</summary>
    Unchanged,

    /// <summary>Nothing was written.</summary>
    Refused,
}

/// <summary>What was done with one sidecar, and why when it was refused.</summary>
/// <param name="Outcome">What was done.</param>
/// <param name="Note">Why nothing was written; null otherwise.</param>
public sealed record SidecarResult(SidecarOutcome Outcome, PhotoNote? Note);
