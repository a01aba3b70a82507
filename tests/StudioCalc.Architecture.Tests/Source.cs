using StudioCalc.Tests;

namespace StudioCalc.Architecture.Tests;

/// <summary>The projects that ship, and their hand-written files.</summary>
internal static class Source
{
    public static IReadOnlyList<(string Name, string File)> Projects { get; } =
    [
        .. new[] { "src", "clients" }.Select(folder => RepositoryRoot.At(folder)).Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.csproj", SearchOption.AllDirectories))
            .Select(file => (Path.GetFileNameWithoutExtension(file), file)),
    ];

    public static string Project(string name) => Projects.Single(project => project.Name == name).File;

    public static IEnumerable<string> Files(string projectFile) =>
        Directory.EnumerateFiles(Path.GetDirectoryName(projectFile)!, "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin"));
}
