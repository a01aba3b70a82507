using System.Net;
using System.Net.Sockets;
using System.Xml.Linq;
using StudioCalc.Tests;

namespace StudioCalc.Package.Tests;

/// <summary>An application outside the repository that knows nothing but the packages.</summary>
internal static class Consumer
{
    /// <summary>Builds it, runs it, and gives what it printed.</summary>
    public static async Task<string> RunAsync(Packages packages)
    {
        var source = Path.Combine(AppContext.BaseDirectory, "Consumer");
        var folder = Path.Combine(packages.Root, "consumer");
        foreach (var file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(folder, Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target.EndsWith(".txt", StringComparison.Ordinal) ? target[..^".txt".Length] : target);
        }

        // Only our packages come from the folder and only they go into its cache; those of others are taken where they are.
        new XElement("Project", new XElement("PropertyGroup",
            new XElement("RestoreAdditionalProjectSources", packages.Folder),
            new XElement("RestorePackagesPath", Path.Combine(packages.Root, "cache")),
            new XElement("RestoreFallbackFolders", Packages.PackagesOfOthers),
            new XElement("NuGetAudit", false),
            new XElement("StudioCalcVersion", Packages.Version),
            new XElement("ProtobufVersion", VersionOf("Google.Protobuf")),
            new XElement("GrpcVersion", VersionOf("Grpc.Tools")))).Save(Path.Combine(folder, "Directory.Build.props"));

        var app = Path.Combine(folder, "App");
        await Dotnet.RunAsync(app, "build", "-nologo", "-v:minimal", "-nodeReuse:false", "--output", Path.Combine(folder, "out"));
        return await Dotnet.RunAsync(app, Path.Combine(folder, "out", "App.dll"), Path.Combine(app, "balance-fill.json"), ClosedPort());
    }

    private static string VersionOf(string package) => XDocument.Load(RepositoryRoot.At("Directory.Packages.props"))
        .Descendants("PackageVersion").Single(version => version.Attribute("Include")!.Value == package).Attribute("Version")!.Value;

    private static string ClosedPort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return $"http://{listener.LocalEndpoint}";
    }
}
