using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

public sealed class CommandLineTests
{
    private static readonly string Example = Tool.Sample("balance-fill");

    [Fact]
    public async Task BalanceFill_OfTheExample_PrintsWhatAPhotographerSets()
    {
        var run = await Tool.Run(["lighting-ratio", "balance-fill", "--request", Example]);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("f/5.6", run.Output, StringComparison.Ordinal);
        Assert.Contains("1/125 s", run.Output, StringComparison.Ordinal);
        Assert.Contains("1/16", run.Output, StringComparison.Ordinal);
        Assert.Contains("+1.32 stops", run.Output, StringComparison.Ordinal);
        Assert.Contains("4:1 key to fill; 5:1 key and fill to fill", run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Errors);
    }

    [Fact]
    public async Task Readme_ShowsHowTheAnswerOfItsFirstCommandBegins_AndTheCommandWritesTheSheet()
    {
        var readme = (await File.ReadAllTextAsync(RepositoryRoot.At("README.md"))).ReplaceLineEndings("\n");
        var shown = readme.Split("```text\n").Skip(1).Take(2).Select(part => part.Split("```", 2)[0]).ToList();
        var (page, calendar) = (Path.GetTempFileName(), Path.GetTempFileName());
        try
        {
            var run = await Tool.Run(
                ["shoot-plan", "render-call-sheet", "--request", Tool.Sample("render-call-sheet"), "--html", page, "--calendar", calendar]);

            Assert.Equal(ExitCode.Reached, run.Code);
            Assert.Empty(run.Errors);
            Assert.StartsWith(shown[0], run.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
            Assert.Contains(shown[1], run.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
            Assert.StartsWith("<!DOCTYPE html>", await File.ReadAllTextAsync(page), StringComparison.Ordinal);
            Assert.StartsWith("BEGIN:VCALENDAR\r\n", await File.ReadAllTextAsync(calendar), StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(page);
            File.Delete(calendar);
        }
    }

    [Fact]
    public async Task Stream_ShowsItsProgress_AndPrintsItsLastMessage()
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var terminal = new Terminal(TextReader.Null, output, errors, ShowsProgress: true);

        var code = await new CommandLine(terminal).RunAsync(["shoot-plan", "stream-plan", "--request", Tool.Sample("stream-plan"), "--output", "json"]);

        Assert.Equal(ExitCode.Reached, code);
        Assert.Matches(@"\rSetups 0 %.*\rShots \d+ %.*\rOrder 30 %.*\rSimulation \d+ %.*\r +\r\z", errors.ToString());
        Assert.Contains("\"plan\"", output.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("progress", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Readme_ShowsWhatItsCommandForOneNumberPrints()
    {
        var readme = await File.ReadAllTextAsync(RepositoryRoot.At("README.md"));

        var run = await Tool.Run(["lighting-ratio", "balance-fill", "--request", Example]);

        Assert.Contains(run.Output.ReplaceLineEndings("\n"), readme.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task BalanceFill_WithWorking_WritesTheSum()
    {
        var run = await Tool.Run(["lighting-ratio", "balance-fill", "-r", Example, "-o", "working"]);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("wanted = E + Log2(t) - F - k = -1 stops", run.Output, StringComparison.Ordinal);
        Assert.Contains("-> solution.back_over_fill_stops", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BalanceFill_AsJson_IsTheContractsJson()
    {
        var run = await Tool.Run(["lighting-ratio", "balance-fill", "-r", Example, "-o", "json"]);

        using var answer = System.Text.Json.JsonDocument.Parse(run.Output);
        var solution = answer.RootElement.GetProperty("ways")[1].GetProperty("solution");
        Assert.Equal("1/60", solution.GetProperty("shutterSpeed").GetProperty("mark").GetString());
    }

    [Fact]
    public async Task Evaluate_FromStandardInput_Answers()
    {
        const string request = """
            {"settings": {"aperture": {"mark": "16"}, "shutterSpeed": {"mark": "1/125"}, "iso": {"mark": "100"}}}
            """;

        var run = await Tool.Run(["exposure", "evaluate", "--request", "-"], request);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("15.00", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sheet_OfADayThatCannotBeKept_ExitsNotReached()
    {
        var request = (await File.ReadAllTextAsync(Tool.Sample("render-call-sheet")))
            .Replace("\"840s\"", "\"100s\"", StringComparison.Ordinal)
            .Replace("\"1080s\"", "\"120s\"", StringComparison.Ordinal)
            .Replace("\"1320s\"", "\"140s\"", StringComparison.Ordinal);

        var run = await Tool.Run(["shoot-plan", "render-call-sheet", "--request", "-"], request);

        Assert.Equal(ExitCode.NotReached, run.Code);
        Assert.Contains("THIS PLAN CANNOT BE KEPT", run.Output, StringComparison.Ordinal);
        Assert.Contains("dressed leaves", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BalanceFill_BehindTheSyncSpeed_ExitsNotReached()
    {
        var request = (await File.ReadAllTextAsync(Example))
            .Replace("\"backOverFillStops\": 2", "\"backOverFillStops\": -2", StringComparison.Ordinal)
            .Replace("\"BALANCE_VARIABLE_FLASH_POWER\", ", "", StringComparison.Ordinal);

        var run = await Tool.Run(["lighting-ratio", "balance-fill", "-r", "-"], request);

        Assert.Equal(ExitCode.NotReached, run.Code);
        Assert.Contains("sync speed", run.Output, StringComparison.Ordinal);
        Assert.Contains("raise flash power", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Refusal_NamesTheFieldAndTheNearestMarks()
    {
        var request = (await File.ReadAllTextAsync(Example)).Replace("f/5.6", "f/5.7", StringComparison.Ordinal);

        var run = await Tool.Run(["lighting-ratio", "balance-fill", "-r", "-"], request);

        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("fill.reading.flash.settings.aperture.mark: Not a mark", run.Errors, StringComparison.Ordinal);
        Assert.Contains("f/5.6 and f/6.3", run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Theory]
    [InlineData("""{"settngs": {}}""", "settngs")]
    [InlineData("""{"lensLossStops": "1,5"}""", "lensLossStops: Write the number with a point")]
    [InlineData("""{"scale": 3, "scale": 2}""", "scale: Given twice")]
    [InlineData("""{"settings": """, "not JSON")]
    public async Task RequestFile_ThatDoesNotFit_IsRefusedByField(string request, string expected)
    {
        var run = await Tool.Run(["exposure", "evaluate", "-r", "-"], request);

        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("exposure", "evaluate")]
    [InlineData("exposure", "evaluate", "--request", "/no/such/file.json")]
    [InlineData("exposure", "evaluate", "--request", "-", "--output", "picture")]
    [InlineData("exposure", "guess")]
    [InlineData("exposure", "evaluate", "@arguments")]
    [InlineData("capabilities", "get", "--deadline", "2")]
    [InlineData("capabilities", "get", "--deadline", "-1 s")]
    [InlineData("capabilities", "get", "--units", "yards")]
    [InlineData("capabilities", "get", "--output", "json", "--output", "table")]
    [InlineData("capabilities", "get", "--server", "nonsense")]
    [InlineData("capabilities", "get", "--server", "ftp://127.0.0.1")]
    [InlineData("capabilities", "get", "--server", "127.0.0.1:8081")]
    [InlineData("capabilities", "get", "--server-key", "a-key-without-a-server")]
    [InlineData("capabilities", "get", "--server", "http://studio.example:8081", "--server-key", "a-key-in-clear-text")]
    public async Task CommandLine_ThatIsWrong_ExitsUsage(params string[] args)
    {
        var run = await Tool.Run(args);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.NotEmpty(run.Errors);
    }

    [Fact]
    public async Task Server_ThatIsNotThere_ExitsNoConnection()
    {
        var run = await Tool.Run(["capabilities", "get", "--server", "http://127.0.0.1:1"]);

        Assert.Equal(ExitCode.NoConnection, run.Code);
        Assert.Contains("127.0.0.1:1", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_TellsTheCallsFromTheContract()
    {
        var run = await Tool.Run(["lighting-ratio", "--help"]);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("Balances a flash fill against a continuous back light", run.Output, StringComparison.Ordinal);
    }
}
