using System.Xml.Linq;
using StudioCalc.Tests;

namespace StudioCalc.Package.Tests;

public sealed class PackageTests(Packages packages) : IClassFixture<Packages>
{
    [Fact]
    public void Projects_ThatArePackable_AreTheOnesPackedHere()
    {
        var packable = new[] { "src", "clients", "tests" }
            .SelectMany(folder => Directory.EnumerateFiles(RepositoryRoot.At(folder), "*.csproj", SearchOption.AllDirectories))
            .Where(file => XDocument.Load(file).Descendants("IsPackable").Any(element => element.Value == "true"))
            .Select(Path.GetFileNameWithoutExtension);
        Assert.Equal(
            Packages.Projects.Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal), packable.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Pack_OfAll_MakesAPackageAndItsSymbolsForEach() => Assert.Equal(
        Packages.Projects.Select(Path.GetFileNameWithoutExtension)
            .SelectMany(name => new[] { $"{name}.{Packages.Version}.nupkg", $"{name}.{Packages.Version}.snupkg" }).Order(StringComparer.Ordinal),
        Directory.EnumerateFiles(packages.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Packages.Names), MemberType = typeof(Packages))]
    public void Package_OfAProject_TellsWhatItIs(string name)
    {
        var about = XDocument.Parse(packages.Text(name, $"{name}.nuspec")).Root!.Elements().Single();
        string Value(string element) => about.Elements().Single(child => child.Name.LocalName == element).Value;
        Assert.Equal(name, Value("id"));
        Assert.Equal("Apache-2.0", Value("license"));
        Assert.Equal("StudioCalc contributors", Value("authors"));
        Assert.Equal("README.md", Value("readme"));
        Assert.Contains("photography", Value("tags"), StringComparison.Ordinal);
        Assert.NotEqual("Package Description", Value("description"));
        Assert.True(packages.Text(name, "README.md").Length > 200);
    }

    [Theory]
    [MemberData(nameof(Packages.Names), MemberType = typeof(Packages))]
    public void Package_OfAProject_HasItsSymbols(string name) =>
        Assert.Contains(packages.Files(name, "snupkg"), file => file.EndsWith(".pdb", StringComparison.Ordinal));

    [Fact]
    public void Maths_HasNoDependencies() =>
        Assert.DoesNotContain("<dependency ", packages.Text("StudioCalc.Maths", "StudioCalc.Maths.nuspec"), StringComparison.Ordinal);

    [Fact]
    public void Contracts_HasEveryContractFileUnchanged()
    {
        var root = RepositoryRoot.At("protos");
        var files = Directory.EnumerateFiles(root, "*.proto", SearchOption.AllDirectories).ToList();
        Assert.NotEmpty(files);
        foreach (var file in files)
        {
            var path = Path.GetRelativePath(root, file).Replace('\\', '/');
            path = path.StartsWith("vendor/", StringComparison.Ordinal) ? path["vendor/".Length..] : path;
            Assert.Equal(File.ReadAllText(file), packages.Text("StudioCalc.Contracts", "protos/" + path));
        }
    }

    [Fact]
    public void CommandLine_IsATool()
    {
        Assert.Contains("DotnetTool", packages.Text("StudioCalc.Cli", "StudioCalc.Cli.nuspec"), StringComparison.Ordinal);
        var settings = packages.Files("StudioCalc.Cli").Single(file => file.EndsWith("DotnetToolSettings.xml", StringComparison.Ordinal));
        var command = XDocument.Parse(packages.Text("StudioCalc.Cli", settings)).Descendants("Command").Single();
        Assert.Equal("studiocalc", command.Attribute("Name")!.Value);
    }

    [Fact]
    public async Task CommandLine_Installed_Answers()
    {
        await Dotnet.RunAsync(packages.Root, "tool", "install", "StudioCalc.Cli", "--version", Packages.Version,
            "--tool-path", Path.Combine(packages.Root, "tools"), "--source", packages.Folder);
        var tool = Directory.EnumerateFiles(Path.Combine(packages.Root, "tools"), "studiocalc.dll", SearchOption.AllDirectories).Single();
        var answer = await Dotnet.RunAsync(packages.Root, tool, "lighting-ratio", "balance-fill", "--request",
            RepositoryRoot.At("docs", "examples", "balance-fill.json"));
        Assert.Contains("f/5.6", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Consumer_OfThePackagesAlone_BuildsAndAnswers()
    {
        var answers = await Consumer.RunAsync(packages);
        Assert.Equal(
            ["balance f/5.6 1/125 1/16 1.000", "exposure 7.8125 ms", "remote Unavailable 304.8"],
            answers.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
    }
}
