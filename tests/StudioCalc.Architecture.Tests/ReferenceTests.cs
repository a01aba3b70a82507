using System.Xml.Linq;
using StudioCalc.Tests;

namespace StudioCalc.Architecture.Tests;

/// <summary>Who may know whom, read from the project files.</summary>
public sealed class ReferenceTests
{
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["StudioCalc.Maths"] = [],
        ["StudioCalc.Planning"] = ["StudioCalc.Maths"],
        ["StudioCalc.Contracts"] = [],
        ["StudioCalc.Drawing"] = ["StudioCalc.Contracts"],
        ["StudioCalc.Services"] = ["StudioCalc.Contracts", "StudioCalc.Maths", "StudioCalc.Planning", "StudioCalc.Drawing"],
        ["StudioCalc.Host"] = ["StudioCalc.Services"],
        ["StudioCalc.Client"] = ["StudioCalc.Contracts"],
        ["StudioCalc.Client.Embedded"] = ["StudioCalc.Services", "StudioCalc.Client"],
        ["StudioCalc.Photos"] = ["StudioCalc.Client"],
        ["StudioCalc.Cli"] = ["StudioCalc.Client", "StudioCalc.Client.Embedded", "StudioCalc.Photos"],
    };

    // Without these a project would have no reason to exist.
    private static readonly Dictionary<string, string[]> Needed = new(StringComparer.Ordinal)
    {
        ["StudioCalc.Planning"] = ["StudioCalc.Maths"],
        ["StudioCalc.Drawing"] = ["StudioCalc.Contracts"],
        ["StudioCalc.Services"] = ["StudioCalc.Contracts", "StudioCalc.Maths"],
        ["StudioCalc.Host"] = ["StudioCalc.Services"],
        ["StudioCalc.Client"] = ["StudioCalc.Contracts"],
        ["StudioCalc.Client.Embedded"] = ["StudioCalc.Services"],
        ["StudioCalc.Photos"] = ["StudioCalc.Client"],
        ["StudioCalc.Cli"] = ["StudioCalc.Client", "StudioCalc.Client.Embedded"],
    };

    public static TheoryData<string> Projects => [.. Source.Projects.Select(project => project.Name)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_ReferencesOnlyWhatItMayKnow(string name)
    {
        Assert.True(Allowed.ContainsKey(name), $"{name} is a project that this test does not know.");
        var references = References(name).ToList();
        Assert.Empty(references.Except(Allowed[name], StringComparer.Ordinal));
        Assert.Empty(Needed.GetValueOrDefault(name, []).Except(references, StringComparer.Ordinal));
    }

    [Fact]
    public void Maths_HasNoPackageButAnalyzers() =>
        Assert.Equal(["Microsoft.CodeAnalysis.PublicApiAnalyzers"], Items("StudioCalc.Maths", "PackageReference"));

    [Theory]
    [InlineData("StudioCalc.Maths")]
    [InlineData("StudioCalc.Contracts")]
    [InlineData("StudioCalc.Services")]
    public void Project_BelowTheHost_HasNoWebServer(string name)
    {
        var xml = XDocument.Load(Source.Project(name));
        Assert.Equal("Microsoft.NET.Sdk", xml.Root!.Attribute("Sdk")!.Value);
        Assert.Empty(Items(name, "FrameworkReference"));
        Assert.DoesNotContain(Items(name, "PackageReference"), package => package.Contains("AspNetCore", StringComparison.Ordinal));
    }

    [Fact]
    public void NoProject_SilencesWarningsOrSetsItsOwnVersions()
    {
        foreach (var project in Source.Projects)
        {
            var xml = XDocument.Load(project.File);
            Assert.Empty(xml.Descendants("PackageReference").Attributes("Version"));
            Assert.Empty(xml.Descendants("TreatWarningsAsErrors"));
        }
    }

    private static IEnumerable<string> References(string name) =>
        Items(name, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')));

    private static List<string> Items(string name, string kind) =>
        [.. XDocument.Load(Source.Project(name)).Descendants(kind).Select(item => item.Attribute("Include")!.Value)];
}
