using StudioCalc.Tests;
using StudioCalc.V1;

namespace StudioCalc.Contracts.Tests;

/// <summary>docs/refusals.md tells every reason and every advisory of the contract.</summary>
public sealed class RefusalPageTests
{
    private static readonly string Page = File.ReadAllText(RepositoryRoot.At("docs", "refusals.md"));

    public static TheoryData<RefusalReason> Reasons => [.. Enum.GetValues<RefusalReason>().Where(reason => reason != RefusalReason.Unspecified)];

    public static TheoryData<string> Codes =>
    [
        .. AnswerReflection.Descriptor.EnumTypes.Single(type => type.ClrType == typeof(AdvisoryCode)).Values
            .Where(value => value.Number != 0)
            .Select(value => value.Name["ADVISORY_CODE_".Length..]),
    ];

    [Theory]
    [MemberData(nameof(Reasons))]
    public void Page_TellsTheReason(RefusalReason reason) =>
        Assert.Contains($"| `{Refusal.NameOf(reason)}` |", Page, StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(Codes))]
    public void Page_TellsTheAdvisory(string code) => Assert.Contains($"| `{code}` |", Page, StringComparison.Ordinal);
}
