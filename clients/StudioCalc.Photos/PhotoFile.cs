namespace StudioCalc.Photos;

/// <summary>A photo that may be opened for reading. Nothing here ever writes to it.</summary>
/// <param name="Name">Its path from the folder that is read, with slashes.</param>
/// <param name="Open">Opens it from its start; each caller closes what it has opened.</param>
public sealed record PhotoFile(string Name, Func<Stream> Open)
{
    /// <summary>Where it lies on disk; null when it comes from elsewhere.</summary>
    public string? FullPath { get; init; }

    /// <summary>Whether another photo in its folder has the same name but for the extension.</summary>
    public bool SharesStem { get; init; }

    /// <summary>The extension in small letters with its dot.</summary>
    public string Extension => Path.GetExtension(Name).ToLowerInvariant();

    /// <summary>The name without its extension: photos that share it are one frame in several forms.</summary>
    public string Stem => Path.ChangeExtension(Name, null);
}
