using System.IO.Compression;
using System.Reflection;
using System.Xml.Linq;

namespace StudioCalc.Package.Tests;

/// <summary>All packages, made once of what is built, in a folder of their own.</summary>
public sealed class Packages : IAsyncLifetime
{
    /// <summary>The projects that are packed.</summary>
    public static IReadOnlyList<string> Projects { get; } = Metadata("Packed").Split(';');

    /// <summary>The names of the packages.</summary>
    public static TheoryData<string> Names => [.. Projects.Select(project => Path.GetFileNameWithoutExtension(project))];

    /// <summary>The version of all packages.</summary>
    public static string Version { get; } = Metadata("Version");

    /// <summary>Where the packages of others are on this machine.</summary>
    public static string PackagesOfOthers { get; } = Metadata("PackagesFolder");

    /// <summary>A temporary folder for these tests.</summary>
    public string Root { get; } = Directory.CreateTempSubdirectory("studiocalc-packages-").FullName;

    /// <summary>Where the packages are.</summary>
    public string Folder => Path.Combine(Root, "packages");

    public async Task InitializeAsync()
    {
        var file = Path.Combine(Root, "pack.proj");
        new XElement(
            "Project",
            new XElement("ItemGroup", Projects.Select(project => new XElement("Packed", new XAttribute("Include", project)))),
            new XElement("Target", new XAttribute("Name", "Pack"), new XElement("MSBuild",
                new XAttribute("Projects", "@(Packed)"),
                new XAttribute("Targets", "Pack"),
                new XAttribute("Properties", $"NoBuild=true;Configuration={Metadata("Configuration")};PackageOutputPath={Folder};NuspecOutputPath={Root}/nuspec/"))))
            .Save(file);
        await Dotnet.RunAsync(Root, "msbuild", file, "-t:Pack", "-nologo", "-v:minimal", "-nodeReuse:false");
    }

    public Task DisposeAsync()
    {
        Directory.Delete(Root, recursive: true);
        return Task.CompletedTask;
    }

    /// <summary>Opens a package.</summary>
    public ZipArchive Open(string name, string extension = "nupkg") =>
        ZipFile.OpenRead(Path.Combine(Folder, $"{name}.{Version}.{extension}"));

    /// <summary>The names of the files in a package.</summary>
    public IReadOnlyList<string> Files(string name, string extension = "nupkg")
    {
        using var package = Open(name, extension);
        return [.. package.Entries.Select(entry => entry.FullName)];
    }

    /// <summary>The text of a file in a package.</summary>
    public string Text(string name, string file)
    {
        using var package = Open(name);
        using var reader = new StreamReader(package.GetEntry(file)!.Open());
        return reader.ReadToEnd();
    }

    private static string Metadata(string key) => typeof(Packages).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>().Single(attribute => attribute.Key == key).Value!;
}
