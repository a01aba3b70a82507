using StudioCalc.Tests;
using StudioCalc.V1;

namespace StudioCalc.Contracts.Tests;

/// <summary>Each reason and each advisory of the contract has one page and one row in the overview, and nothing else has.</summary>
public sealed class RefusalPageTests
{
    public static TheoryData<string, string, string> Pages => new()
    {
        { "refusals", "RefusalReason", "REFUSAL_REASON_" },
        { "advisories", "AdvisoryCode", "ADVISORY_CODE_" },
    };

    [Theory]
    [MemberData(nameof(Pages))]
    public void Folder_HasAPageForEachNameAndNoOther(string folder, string type, string prefix) => Assert.Equal(
        Names(type, prefix).Select(Kebab).Order(StringComparer.Ordinal),
        Directory.EnumerateFiles(RepositoryRoot.At("docs", folder)).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_IsHeadedByItsName(string folder, string type, string prefix) => Assert.All(
        Names(type, prefix),
        name => Assert.Equal("# " + name, File.ReadLines(RepositoryRoot.At("docs", folder, Kebab(name))).First()));

    [Theory]
    [MemberData(nameof(Pages))]
    public void Overview_HasARowForEachNameAndNoOther(string folder, string type, string prefix) => Assert.Equal(
        Names(type, prefix).Select(name => $"| [`{name}`]({folder}/{Kebab(name)}) ").Order(StringComparer.Ordinal),
        File.ReadLines(RepositoryRoot.At("docs", folder + ".md")).Where(line => line.StartsWith("| [", StringComparison.Ordinal))
            .Select(line => line[..line.IndexOf('|', 1)]).Order(StringComparer.Ordinal));

    private static IEnumerable<string> Names(string type, string prefix) =>
        AnswerReflection.Descriptor.EnumTypes.Single(candidate => candidate.Name == type).Values
            .Where(value => value.Number != 0).Select(value => value.Name[prefix.Length..]);

    private static string Kebab(string name) => name.ToLowerInvariant().Replace('_', '-') + ".md";
}
