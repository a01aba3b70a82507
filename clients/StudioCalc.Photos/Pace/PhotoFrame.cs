namespace StudioCalc.Photos;

/// <summary>One press of the shutter: a photo, or the several files that a camera wrote of it.</summary>
/// <param name="Name">The name of its first file.</param>
/// <param name="CapturedAt">When it was taken, by the camera's clock.</param>
/// <param name="TimeOffset">The offset of that time from UTC; null when it is not known.</param>
public sealed record PhotoFrame(string Name, DateTime CapturedAt, TimeSpan? TimeOffset)
{
    // Filled while the photos after the first file are read; no part of what makes two frames equal.
    private readonly List<string> _otherNames = [];

    /// <summary>The forms in which a list may name the frame, by any of its files.</summary>
    internal IEnumerable<string> Forms => _otherNames.Prepend(Name).SelectMany(NameList.FormsOf);

    /// <summary>Reads the frames of photos. Files that differ by their extension only and were taken within two seconds are one
    /// frame.</summary>
    /// <param name="photos">The photos.</param>
    /// <param name="left">Told of each photo that is left out, with why.</param>
    public static IEnumerable<PhotoFrame> Of(IEnumerable<PhotoFile> photos, Action<PhotoFile, PhotoNote> left)
    {
        ArgumentNullException.ThrowIfNull(photos);
        ArgumentNullException.ThrowIfNull(left);
        var seen = new Dictionary<string, PhotoFrame>(StringComparer.OrdinalIgnoreCase);
        foreach (var photo in photos)
        {
            var facts = PhotoReader.Read(photo);
            if (facts.CapturedAt is not { } time)
            {
                left(photo, facts.Notes.FirstOrDefault(note => note.IsUnread) ?? facts.Notes.FirstOrDefault(note => note.Subject == PhotoSubject.CaptureTime)
                    ?? new(PhotoSubject.CaptureTime, PhotoReason.Missing, "The file has no capture time."));
                continue;
            }

            var frame = new PhotoFrame(photo.Name, time, facts.TimeOffset);
            if (photo.SharesStem)
            {
                if (seen.TryGetValue(photo.Stem, out var first) && (time - first.CapturedAt).Duration() <= SameFrame)
                {
                    first._otherNames.Add(photo.Name);
                    continue;
                }

                seen[photo.Stem] = frame;
            }

            yield return frame;
        }
    }

    /// <inheritdoc/>
    public bool Equals(PhotoFrame? other) => other is not null && (Name, CapturedAt, TimeOffset) == (other.Name, other.CapturedAt, other.TimeOffset);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, CapturedAt, TimeOffset);

    private static readonly TimeSpan SameFrame = TimeSpan.FromSeconds(2);
}
