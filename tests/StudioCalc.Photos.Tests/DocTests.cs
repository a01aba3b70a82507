using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>The page on photos names every column and every part of a code.</summary>
public sealed class DocTests
{
    private static readonly string Page = File.ReadAllText(RepositoryRoot.At("docs", "photos.md"));

    [Fact]
    public void Page_OfColumns_NamesEach() => Assert.All(PhotoColumn.All, column => Assert.Contains($"`{column.Name}`", Page, StringComparison.Ordinal));

    [Fact]
    public void Page_OfCodes_NamesEachPart()
    {
        Assert.All(Enum.GetValues<PhotoReason>(), reason => Assert.Contains($"`{PhotoNote.Kebab(reason.ToString())}`", Page, StringComparison.Ordinal));
        Assert.All(Enum.GetValues<PhotoSubject>(), subject => Assert.Contains($"`{PhotoNote.Kebab(subject.ToString())}`", Page, StringComparison.Ordinal));
    }
}
