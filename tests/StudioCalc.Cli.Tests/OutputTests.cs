namespace StudioCalc.Cli.Tests;

public sealed class OutputTests
{
    private static readonly string NotReached =
        $"lighting-ratio balance-fill -r \"{Tool.Sample("balance-fill")}\" --back-over-fill \"-4 stops\" --fill.distance \"8 ft\" ";

    [Fact]
    public async Task Remedies_OfAWayThatIsNotReached_TakeOneLineEach()
    {
        var run = await Tool.Run(NotReached);

        Assert.Equal(ExitCode.NotReached, run.Code);
        var lines = run.Output.Split(Environment.NewLine);
        Assert.Contains(lines, line => line.EndsWith("dim back light, -2.00 stops: f/22, 1/125 s, ISO 100, power 1/1", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.EndsWith("faster shutter speed, -0.67 stops, shortfall 1.33 stops, obstacle full power", StringComparison.Ordinal));
        Assert.DoesNotContain("unspecified", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "distance 1.219 m")]
    [InlineData("--units metric", "distance 1.219 m")]
    [InlineData("--units imperial", "distance 4 ft")]
    public async Task Units_AsAsked_ShowLengths(string units, string expected)
    {
        var run = await Tool.Run(NotReached + units);

        Assert.Contains(expected, string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mm", 299, "299 mm", "299 mm")]
    [InlineData("mm", 300, "300 mm", "11.8 in")]
    [InlineData("mm", 999, "999 mm", "3 ft 3.3 in")]
    [InlineData("mm", 1701.8, "1.702 m", "5 ft 7 in")]
    [InlineData("mm", 1828.7, "1.829 m", "6 ft")]
    [InlineData("mm", -1219.2, "-1.219 m", "-4 ft")]
    [InlineData("mm", -1.1e-13, "0 mm", "0 mm")]
    [InlineData("um", 12, "12 µm", "12 µm")]
    [InlineData("celsius", 60, "60 °C", "140 °F")]
    [InlineData("celsius", -40, "-40 °C", "-40 °F")]
    [InlineData("g", 400, "400 g", "400 g")]
    [InlineData("k", 5600, "5600 K", "5600 K")]
    [InlineData("stops_per_h", 0.5, "0.5 stops an hour", "0.5 stops an hour")]
    public void Number_InEitherSystem_ShowsLengthsAndTemperaturesOfThatSystem(string suffix, double value, string metric, string imperial) =>
        DecimalComma.UnderEach(() =>
        {
            Assert.Equal(metric, Units.Show(Fields.Counted(suffix), value, UnitSystem.Metric));
            Assert.Equal(imperial, Units.Show(Fields.Counted(suffix), value, UnitSystem.Imperial));
        });

    [Fact]
    public void Moment_IsShownAsATime() => Assert.Equal(
        "2026-06-21 12:05:30 UTC", ShortForms.Of(Google.Protobuf.WellKnownTypes.Timestamp.FromDateTime(new(2026, 6, 21, 12, 5, 30, DateTimeKind.Utc))));

    [Fact]
    public async Task Quiet_OfAnAnswer_PrintsNothingAndTellsByTheCode()
    {
        Assert.Equal((ExitCode.NotReached, "", ""), await Tool.Run(NotReached + "--quiet"));

        var run = await Tool.Run("exposure convert-mark --aperture f/5.7 --quiet");
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.NotEmpty(run.Errors);
    }

    [Fact]
    public async Task Colour_OnATerminal_IsForHeadingsAndCautionsOnly()
    {
        var run = await Tool.Run(NotReached, colour: true);

        var coloured = run.Output.Split(Environment.NewLine).Where(line => line.Contains('\e', StringComparison.Ordinal)).ToList();
        Assert.Contains(coloured, line => line.Contains("Way 1: flash power", StringComparison.Ordinal));
        Assert.Contains(coloured, line => line.Contains("Caution", StringComparison.Ordinal));
        Assert.DoesNotContain(coloured, line => line.Contains("Remedy", StringComparison.Ordinal) || line.Contains("Warning", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("--no-colour", true)]
    [InlineData("", false)]
    public async Task Colour_ThatIsNotWanted_IsLeftOut(string option, bool terminal)
    {
        var run = await Tool.Run(NotReached + option, colour: terminal);

        Assert.DoesNotContain('\e', run.Output);
    }

    [Fact]
    public async Task Example_OfACall_IsARequestThatItTakes()
    {
        var example = await Tool.Run("exposure solve-flash --example");

        Assert.Equal(ExitCode.Reached, example.Code);
        Assert.Equal(ExitCode.Reached, (await Tool.Run("exposure solve-flash -r - -q", example.Output)).Code);
    }

    [Fact]
    public async Task File_WithAByteOrderMark_IsRead()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, await File.ReadAllTextAsync(Tool.Sample("convert-mark")), new System.Text.UTF8Encoding(true));

        var run = await Tool.Run($"exposure convert-mark -r \"{file}\"");

        File.Delete(file);
        Assert.Equal(ExitCode.Reached, run.Code);
    }
}
