namespace StudioCalc.Photos;

/// <summary>The photos of a folder and the folders in it.</summary>
public static class PhotoFolder
{
    private static readonly EnumerationOptions Visible = new()
    {
        AttributesToSkip = FileAttributes.System,
        IgnoreInaccessible = false,
        RecurseSubdirectories = false,
    };

    /// <summary>Lists the photos one by one, each folder's own before those of its folders, in the order of their names' code
    /// points. Names that begin with a dot and links to folders are passed over. A folder that cannot be read is listed as a
    /// file that cannot be opened.</summary>
    /// <param name="path">A folder, or one photo.</param>
    /// <exception cref="FileNotFoundException">There is neither a folder nor a file.</exception>
    public static IEnumerable<PhotoFile> Files(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Directory.Exists(path) ? Walk(new(path), "")
            : File.Exists(path) ? [Of(path, Path.GetFileName(path), sharesStem: false)]
            : throw new FileNotFoundException($"There is no folder and no file {path}.", path);
    }

    private static IEnumerable<PhotoFile> Walk(DirectoryInfo folder, string prefix)
    {
        var (files, folders, error) = List(folder);
        if (error is not null)
        {
            yield return new(prefix, () => throw new IOException(error));
        }

        var stems = files.GroupBy(file => Path.GetFileNameWithoutExtension(file.Name), StringComparer.OrdinalIgnoreCase)
            .Where(group => group.Skip(1).Any())
            .Select(group => group.Key)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var file in files)
        {
            yield return Of(file.FullName, prefix + file.Name, stems.Contains(Path.GetFileNameWithoutExtension(file.Name)));
        }

        foreach (var photo in folders.SelectMany(inner => Walk(inner, $"{prefix}{inner.Name}/")))
        {
            yield return photo;
        }
    }

    private static (List<FileInfo> Files, List<DirectoryInfo> Folders, string? Error) List(DirectoryInfo folder)
    {
        try
        {
            var entries = folder.EnumerateFileSystemInfos("*", Visible).Where(entry => entry.Name[0] != '.')
                .OrderBy(entry => entry.Name, StringComparer.Ordinal)
                .ToList();
            return (
                [.. entries.OfType<FileInfo>().Where(file => PhotoFormats.IsPhoto(file.Extension))],
                [.. entries.OfType<DirectoryInfo>().Where(inner => inner.LinkTarget is null)],
                null);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return ([], [], error.Message);
        }
    }

    private static PhotoFile Of(string path, string name, bool sharesStem) =>
        new(name, () => new FileStream(path, new FileStreamOptions { Share = FileShare.ReadWrite | FileShare.Delete, BufferSize = 1 << 14 }))
        {
            FullPath = Path.GetFullPath(path),
            SharesStem = sharesStem,
        };
}
