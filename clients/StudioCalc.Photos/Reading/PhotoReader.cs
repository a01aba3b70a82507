using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using MetadataExtractor.Formats.Jpeg;
using MetadataExtractor.Util;
using Directory = MetadataExtractor.Directory;

namespace StudioCalc.Photos;

/// <summary>Reads what a photo says about itself. Only headers are read: a photo that is cut off within its picture passes as
/// whole.</summary>
public static class PhotoReader
{
    /// <summary>The most that is read of one file, in bytes.</summary>
    public const long MostBytes = 64L << 20;

    /// <summary>Reads a photo. Whatever the file holds, there is an answer; its notes say what could not be read.</summary>
    public static PhotoFacts Read(PhotoFile photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var notes = new List<PhotoNote>();
        Stream file;
        try
        {
            file = photo.Open();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            notes.Add(new(PhotoSubject.File, PhotoReason.Unreadable, error.Message));
            return new() { Notes = notes };
        }

        using var bounded = new BoundedStream(file, MostBytes);
        return Read(photo, bounded, notes);
    }

    private static PhotoFacts Read(PhotoFile photo, BoundedStream file, List<PhotoNote> notes)
    {
        string? format = null;
        IReadOnlyList<Directory> directories = [];
        try
        {
            var type = FileTypeDetector.DetectFileType(file);
            file.Position = 0;
            if (!PhotoFormats.IsRead(type))
            {
                notes.Add(file.Length == 0
                    ? new(PhotoSubject.File, PhotoReason.Truncated, "The file is empty.")
                    : new(PhotoSubject.File, PhotoReason.UnknownFormat, "The file begins like no JPEG, TIFF, HEIF or raw file that is read."));
                return new() { Notes = notes };
            }

            format = PhotoFormats.NameOf(type, photo.Extension);
            if (!PhotoFormats.GoesWith(type, photo.Extension))
            {
                notes.Add(new(PhotoSubject.File, PhotoReason.WrongExtension, $"The file is named {photo.Extension} and holds {format}; it is read as what it holds."));
            }

            directories = type == FileType.Jpeg
                ? JpegMetadataReader.ReadMetadata(file, [new JpegReader(), new ExifReader()])
                : ImageMetadataReader.ReadMetadata(file);
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            notes.Add(WhatFailed(file, error));
        }

        return Facts(new(directories), format, notes);
    }

    private static PhotoFacts Facts(Tags tags, string? format, List<PhotoNote> notes)
    {
        if (!tags.HasExif)
        {
            if (!notes.Exists(note => note.IsUnread))
            {
                notes.Add(format is "JPEG" or "HEIF"
                    ? new(PhotoSubject.File, PhotoReason.NoMetadata, "The file holds no Exif metadata.")
                    : new(PhotoSubject.File, PhotoReason.Damaged, "The file is cut off or broken: what every such file begins with is not there."));
            }

            return new() { Format = format, Notes = notes };
        }

        if (!notes.Exists(note => note.IsUnread) && tags.Errors.FirstOrDefault() is { } error)
        {
            notes.Add(new(PhotoSubject.File, PhotoReason.Damaged, $"Part of the metadata could not be read: {error}"));
        }

        var facts = new PhotoFacts { Format = format, Camera = Camera(tags), Lens = tags.Text(ExifDirectoryBase.TagLensModel) };
        facts = SettingsReader.Read(facts, tags, notes);
        facts = LensReader.Read(facts, tags, notes);
        facts = FrameReader.Read(facts, tags, notes);
        return CaptureTimeReader.Read(facts, tags, notes) with { Notes = notes };
    }

    private static string? Camera(Tags tags) => (tags.Text(ExifDirectoryBase.TagMake), tags.Text(ExifDirectoryBase.TagModel)) switch
    {
        (null, var model) => model,
        (var make, null) => make,
        var (make, model) => model.StartsWith(make, StringComparison.OrdinalIgnoreCase) ? model : $"{make} {model}",
    };

    private static PhotoNote WhatFailed(BoundedStream file, Exception error) => file switch
    {
        { SystemError: { } text } => new(PhotoSubject.File, PhotoReason.Unreadable, text),
        { HitLimit: true } => new(PhotoSubject.File, PhotoReason.TooLarge, $"The file has over {MostBytes >> 20} MiB of metadata; no more is read."),
        { HitEnd: true } => new(PhotoSubject.File, PhotoReason.Truncated, "The file ends within its metadata."),
        _ => new(PhotoSubject.File, PhotoReason.Damaged, $"The metadata could not be read: {error.Message}"),
    };
}
