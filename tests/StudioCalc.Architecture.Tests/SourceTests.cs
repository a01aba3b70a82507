using System.Text.RegularExpressions;
using StudioCalc.Tests;

namespace StudioCalc.Architecture.Tests;

/// <summary>How hand-written files are laid out.</summary>
public sealed partial class SourceTests
{
    private const int MostLines = 250;

    public static TheoryData<string> Projects => ReferenceTests.Projects;

    [Fact]
    public void SourceFiles_AreFound() => Assert.True(Source.Projects.Sum(project => Source.Files(project.File).Count()) > 40);

    [Theory]
    [MemberData(nameof(Projects))]
    public void File_IsInTheNamespaceOfItsProject(string name)
    {
        // The contract may have hand-written parts beside its generated types; a program of top-level statements has no namespace.
        string[] allowed = name == "StudioCalc.Contracts" ? [name, "StudioCalc.V1"] : [name];
        foreach (var file in Source.Files(Source.Project(name)))
        {
            var found = Namespace().Matches(File.ReadAllText(file)).Select(match => match.Groups["name"].Value).ToList();
            if (Path.GetFileName(file) is not ("Program.cs" or "AssemblyInfo.cs" or "GlobalUsings.cs"))
            {
                Assert.True(found.Count == 1, $"{file} needs one namespace.");
            }

            Assert.All(found, one => Assert.Contains(one, allowed));
        }
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Type_NeverSharesTheLastNameOfItsNamespace(string name)
    {
        var last = name[(name.LastIndexOf('.') + 1)..];
        foreach (var file in Source.Files(Source.Project(name)))
        {
            var types = Type().Matches(File.ReadAllText(file)).Select(match => match.Groups["name"].Value);
            Assert.True(!types.Contains(last, StringComparer.Ordinal), $"{file} has a type that is named as its namespace.");
        }
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void File_IsOneIdeaLong(string name)
    {
        foreach (var file in Source.Files(Source.Project(name)))
        {
            var lines = File.ReadLines(file).Count();
            Assert.True(lines <= MostLines, $"{file} has {lines} lines.");
        }
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void File_SilencesNoWarningAndLeavesNothingToDo(string name)
    {
        foreach (var file in Source.Files(Source.Project(name)))
        {
            Assert.True(!Silenced().IsMatch(File.ReadAllText(file)), file);
        }
    }

    [Fact]
    public void TopLevelFolders_AreTheKnownOnes()
    {
        string[] known = ["protos", "src", "clients", "tests", "deploy", "docs", "artifacts", "TestResults", "BenchmarkDotNet.Artifacts", "StrykerOutput"];
        var found = Directory.EnumerateDirectories(RepositoryRoot.Directory).Select(folder => Path.GetFileName(folder)!);
        Assert.Empty(found.Where(folder => folder[0] != '.').Except(known, StringComparer.Ordinal));
    }

    [Fact]
    public void TopLevelFiles_AreTheKnownOnes()
    {
        string[] known =
        [
            "README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "StudioCalc.sln", "Directory.Build.props", "Directory.Build.targets",
            "Directory.Packages.props", "global.json", "nuget.config",

            // What the README's first command writes.
            "call-sheet.html",
        ];
        var found = Directory.EnumerateFiles(RepositoryRoot.Directory).Select(file => Path.GetFileName(file)!);
        Assert.Empty(found.Where(file => file[0] != '.').Except(known, StringComparer.Ordinal));
    }

    [Fact]
    public void TestProjects_AreNamedAfterAProject()
    {
        string[] own = ["StudioCalc.Architecture.Tests", "StudioCalc.Benchmarks", "StudioCalc.Contracts.Evaluated", "StudioCalc.Package.Tests", "StudioCalc.System.Tests"];
        var known = Source.Projects.Select(project => project.Name + ".Tests").Concat(own);
        var found = Directory.EnumerateFiles(RepositoryRoot.At("tests"), "*.csproj", SearchOption.AllDirectories).Select(Path.GetFileNameWithoutExtension);
        Assert.Empty(found.Except(known, StringComparer.Ordinal));
    }

    [GeneratedRegex(@"^namespace (?<name>[\w.]+)", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"\b(class|struct|record|interface|enum) (?<name>[A-Z]\w*)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Type();

    [GeneratedRegex(@"#pragma warning disable|SuppressMessage|\bTODO\b|NotImplementedException", RegexOptions.None, 1000)]
    private static partial Regex Silenced();
}
