namespace StudioCalc.Tests;

/// <summary>Finds files of the repository from a test's build output.</summary>
internal static class RepositoryRoot
{
    public static string Directory { get; } = Find();

    public static string At(params ReadOnlySpan<string> parts) => Path.Combine([Directory, .. parts]);

    private static string Find()
    {
        var directory = new DirectoryInfo(AppContext.BaseDirectory);
        while (directory is not null && !File.Exists(Path.Combine(directory.FullName, "StudioCalc.sln")))
        {
            directory = directory.Parent;
        }

        return directory?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
