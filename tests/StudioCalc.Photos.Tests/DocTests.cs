using StudioCalc.Client.Embedded;
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

    [Fact]
    public async Task Page_OfCode_ShowsWhatRunsHere()
    {
        using var files = new TestFolder();
        files.Add("photo.jpg", ExifFields.Usual().Jpeg());
        using var output = new StringWriter();
        var folder = files.Path;
        // snippet
        using var client = EmbeddedStudioCalc.Create();
        var evaluator = new PhotoEvaluator(client, new() { PermittedBlur = new() { DiameterUm = 30 } });
        await foreach (var answer in evaluator.EvaluateAsync(PhotoFolder.Files(folder)))
        {
            output.Write(PhotoCsv.Line(answer));
        }

        // end
        Assert.StartsWith("photo.jpg,JPEG,", output.ToString(), StringComparison.Ordinal);
        var source = await File.ReadAllTextAsync(RepositoryRoot.At("tests", "StudioCalc.Photos.Tests", "DocTests.cs"));
        Assert.Equal(Between(source, "// snippet", "// end"), Between(Page, "```csharp", "```"));
    }

    private static string[] Between(string text, string start, string end)
    {
        var from = text.IndexOf(start, StringComparison.Ordinal) + start.Length;
        return text[from..text.IndexOf(end, from, StringComparison.Ordinal)].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
    }
}
