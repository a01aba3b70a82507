namespace StudioCalc.Photos.Tests;

/// <summary>A folder that is gone after the test.</summary>
internal sealed class TestFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("studiocalc-photos-").FullName;

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public PhotoFile Add(string name, byte[] bytes)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(At(name))!);
        File.WriteAllBytes(At(name), bytes);
        return PhotoFolder.Files(Path).Single(photo => photo.Name == name);
    }

    public IEnumerable<string> Names => Directory.EnumerateFiles(Path).Select(file => System.IO.Path.GetFileName(file)!).Order(StringComparer.Ordinal);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
