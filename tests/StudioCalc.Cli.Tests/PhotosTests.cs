using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

/// <summary>The commands that read photos, on photos that the tests make.</summary>
public sealed class PhotosTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("studiocalc-photos-").FullName;

    public PhotosTests()
    {
        Add("a.jpg", ExifFields.Usual().Jpeg());
        Add("inner/b.jpg", ExifFields.Usual().Rational(ExifFields.FNumber, 0, 0).Text(ExifFields.TakenAt, "2026:11:25 10:17:30").Jpeg());
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Evaluate_AFolder_PrintsALineForEachPhotoAndCountsTheNotes()
    {
        var run = await Tool.Run(["photos", "evaluate", _folder, "--permitted-blur.diameter", "30 µm"]);
        Assert.Equal(ExitCode.Reached, run.Code);
        var lines = run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("a.jpg                         f/5.6     1/125 s    100     12.0    90 mm     600 mm     36x24 mm ", lines[1], StringComparison.Ordinal);
        Assert.EndsWith("f-number:zero-over-zero", lines[2], StringComparison.Ordinal);
        Assert.Contains("2 photos, all read", run.Errors, StringComparison.Ordinal);
        Assert.Contains("1  f-number:zero-over-zero", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evaluate_WithoutPermittedBlur_SaysSoInTheColumn() =>
        Assert.Contains("no blur given", (await Tool.Run(["photos", "evaluate", _folder, "-q"])).Output, StringComparison.Ordinal);

    [Fact]
    public async Task Evaluate_APhotoThatCannotBeRead_EndsWithItsOwnCode()
    {
        Add("c.jpg", ExifFields.Usual().Jpeg()[..150]);
        var run = await Tool.Run(["photos", "evaluate", _folder]);
        Assert.Equal(ExitCode.Unread, run.Code);
        Assert.Contains("3 photos, 1 not read", run.Errors, StringComparison.Ordinal);
        Assert.Contains("file:truncated", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("csv", "file,format,")]
    [InlineData("json-lines", "{\"file\":\"a.jpg\"")]
    public async Task Evaluate_ToANewFile_WritesItWholeAndNeverOverAnother(string form, string start)
    {
        var file = Path.Combine(_folder, "out.txt");
        string[] line = ["photos", "evaluate", _folder, "-o", form, "--to", file, "--quiet"];
        Assert.Equal((ExitCode.Reached, "", ""), await Tool.Run(line));
        var text = await File.ReadAllTextAsync(file);
        Assert.StartsWith(start, text, StringComparison.Ordinal);
        Assert.Equal(text, (await Tool.Run(line[..5])).Output);
        var again = await Tool.Run(line);
        Assert.Equal(ExitCode.Usage, again.Code);
        Assert.Contains("--to", again.Errors, StringComparison.Ordinal);
        Assert.Equal(text, await File.ReadAllTextAsync(file));
    }

    [Fact]
    public async Task Evaluate_IntoSidecars_WritesThemOnceAndReportsWhatItLeavesAlone()
    {
        string[] line = ["photos", "evaluate", _folder, "-o", "sidecars"];
        Assert.Contains("2 written", (await Tool.Run(line)).Errors, StringComparison.Ordinal);
        Assert.Contains("2 unchanged", (await Tool.Run(line)).Errors, StringComparison.Ordinal);
        await File.WriteAllTextAsync(Path.Combine(_folder, "a.jpg.xmp"), "mine");
        var run = await Tool.Run(line);
        Assert.Equal(ExitCode.Unread, run.Code);
        Assert.Contains("sidecar:malformed", run.Errors, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(Path.Combine(_folder, "a.jpg.xmp")));
    }

    [Theory]
    [InlineData("--sensor 36", "--sensor")]
    [InlineData("--sensor 36x2,4", "--sensor")]
    [InlineData("--permitted-blur.diameter 30", "no unit")]
    [InlineData("--permitted-blur.named diagonal-2", "diagonal-1500")]
    [InlineData("--permitted-blur.named diagonal-1500 --permitted-blur.diameter 30um", "one of the two")]
    [InlineData("-o xml", "json-lines")]
    [InlineData("-o sidecars --to x.csv", "leave it out")]
    [InlineData("--server ftp://host", "http")]
    public async Task Evaluate_WithABadOption_SaysWhatToWrite(string options, string expected)
    {
        var run = await Tool.Run(["photos", "evaluate", _folder, .. Tool.Words(options)]);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evaluate_AFolderThatIsNotThere_IsRefused()
    {
        var run = await Tool.Run(["photos", "evaluate", Path.Combine(_folder, "none")]);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("There is no folder", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evaluate_WithoutAHostAtTheAddress_EndsAsCallsDo() =>
        Assert.Equal(ExitCode.NoConnection, (await Tool.Run(["photos", "evaluate", _folder, "--server", "http://127.0.0.1:1", "-q"])).Code);

    [Fact]
    public async Task Pace_OfAFolder_PrintsDishesAndSpread()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "kept.txt"), "b\n");
        var run = await Tool.Run(["photos", "pace", _folder, "--kept", Path.Combine(_folder, "kept.txt")]);
        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Matches(@"(?m)^dish 1 +11-25 10:15 +2\.0 +- +2 +1 +0\.50$", run.Output);
        Assert.Matches(@"(?m)^kept frames an hour +30\.0$", run.Output);
        var finer = await Tool.Run(["photos", "pace", _folder, "--gap", "1 min", "-o", "csv", "-q"]);
        Assert.Equal(3, finer.Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Equal("", finer.Errors);
    }

    [Theory]
    [InlineData("table", "")]
    [InlineData("json", "")]
    [InlineData("csv", "kept-list:unmatched  Names in the list that belong to no frame: 1, such as mistyped.jpg.")]
    public async Task Pace_WithAKeptNameOfNoPhoto_SaysSoInTheExitCode(string output, string told)
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "kept.txt"), "b\nmistyped.jpg\n");
        var run = await Tool.Run(["photos", "pace", _folder, "--kept", Path.Combine(_folder, "kept.txt"), "-o", output]);
        Assert.Equal(ExitCode.Unread, run.Code);
        Assert.Contains(told, run.Errors, StringComparison.Ordinal);
        Assert.Equal(output != "csv", run.Output.Contains("kept-list:unmatched", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("--gap 10", "no unit")]
    [InlineData("--gap \"1 min\" --dishes x.csv", "cannot stand beside")]
    [InlineData("--dishes no-such.csv", "no-such.csv")]
    public async Task Pace_WithABadOption_SaysWhatToWrite(string options, string expected)
    {
        var run = await Tool.Run(["photos", "pace", _folder, .. Tool.Words(options)]);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("evaluate", "--permitted-blur.named")]
    [InlineData("pace", "--dishes")]
    public async Task Help_OfACommand_ListsItsOptions(string command, string option)
    {
        var run = await Tool.Run(["photos", command, "--help"]);
        Assert.Contains($"  studiocalc photos {command} <folder> [options]", run.Output, StringComparison.Ordinal);
        Assert.Contains(option, run.Output, StringComparison.Ordinal);
    }

    private void Add(string name, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(_folder, name))!);
        File.WriteAllBytes(Path.Combine(_folder, name), bytes);
    }
}
