namespace StudioCalc.Cli.Tests;

/// <summary>What a person reads when something cannot be taken: the option or the place in the file, and what to write.</summary>
public sealed class RefusalTests
{
    private static readonly string Balance = $"lighting-ratio balance-fill --request \"{Tool.Sample("balance-fill")}\" ";

    [Theory]
    [InlineData("exposure convert-mark --aperture f/5.7", "  --aperture: Not a mark on the third-stop scale; the nearest are f/5.6 and f/6.3. An f-number that is no mark goes into --aperture.f-number.")]
    [InlineData("exposure convert-mark --aperture.mark f/5.7", "  --aperture.mark: Not a mark")]
    [InlineData("exposure convert-mark --aperture.scale half", "  --aperture: Give one of --aperture.mark or --aperture.f-number.")]
    [InlineData("exposure evaluate --settings.aperture f/8", "  --settings.shutter-speed: Must be given.")]
    [InlineData("exposure freeze-motion --motion.magnification 0.2", "  --motion.permitted-blur: Must be given.")]
    [InlineData("exposure match-colour --from \"500 K\" --to \"5600 K\"", "  --from: Must be a number from 1000 to 40000. The figures are in K.")]
    [InlineData("exposure match-colour --to \"5600 K\"", "  --from: Must be given.")]
    [InlineData("lighting-ratio combine-readings --lights.0.name window --settings.iso 100", "  --lights.0.reading.*: Must be given, with one of --lights.0.reading.")]
    [InlineData("depth-of-field place-focus --direction.elevation \"30°\" --permitted-blur.diameter \"30 µm\" --camera.closeness.magnification 0.1", "  --camera.lens.*: Must be given, with any of --camera.lens.focal-length, --camera.lens.pupil-magnification, --camera.lens.principal-separation.")]
    [InlineData("depth-of-field evaluate --aperture.set f/8", "  --permitted-blur.*: Must be given, with one of --permitted-blur.diameter, --permitted-blur.named, --permitted-blur.print.*, --permitted-blur.pixels.")]
    [InlineData("lighting-ratio separate-flash --scale third", "  --total-aperture: Must be given.")]
    [InlineData("exposure evaluate --scale third", "  --settings.*: Give settings, a light, or both.")]
    public async Task Refusal_OfTypedOptions_NamesThem(string line, string expected)
    {
        var run = await Tool.Run(line);

        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task Refusal_OverAFile_NamesOptionsAndPlacesInTheFile()
    {
        var file = (await File.ReadAllTextAsync(Tool.Sample("balance-fill"))).Replace("f/5.6", "f/5.7", StringComparison.Ordinal);

        var run = await Tool.Run("lighting-ratio balance-fill -r - --camera.sync-speed 1/201", file);

        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("  fill.reading.flash.settings.aperture.mark: Not a mark", run.Errors, StringComparison.Ordinal);
        Assert.Contains("  --camera.sync-speed: Not a mark", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"backLight\": {\"flsh\": {}}}", "  back_light.flsh: Not a field")]
    [InlineData("{\"fill\": {\"powerScale\": \"TENTHS\"}}", "  fill.powerScale: Must be one of whole, half, third or tenth.")]
    [InlineData("{\"backOverFillStops\": \"2\"}", "  backOverFillStops: Must be a number")]
    public async Task Refusal_OfAFile_NamesThePlaceInIt(string file, string expected)
    {
        var run = await Tool.Run("lighting-ratio balance-fill -r -", file);

        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--bak-over-fill \"2 stops\"", "--bak-over-fill: there is no such option; did you mean --back-over-fill?")]
    [InlineData("--back-over-fill-stops 2", "--back-over-fill-stops: there is no such option; did you mean --back-over-fill?")]
    [InlineData("--sync-speed 1/100", "--sync-speed: there is no such option; write --camera.sync-speed.")]
    [InlineData("--camera x", "--camera: takes no value itself; write --camera.scale, --camera.sync-speed,")]
    [InlineData("--further-fills.power 1/8", "did you mean --further-fills.0.power?")]
    [InlineData("--further-fills 1/8", "--further-fills: is a list, counted from 0; write for its first item --further-fills.0.reading.*, --further-fills.0.power,")]
    [InlineData("--back-over-fill 2 stops", "\"stops\" belongs to no option; put a value with spaces between quotes")]
    [InlineData("--completely-different", "--completely-different: there is no such option; --help lists them all.")]
    [InlineData("--include-working --nothing-like-it", "--nothing-like-it: there is no such option")]
    public async Task Line_WithAnUnknownOption_SaysWhichToWrite(string line, string expected)
    {
        var run = await Tool.Run(Balance + line);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lighting balance-fill", "lighting: there is no such command; write ")]
    [InlineData("exposure guess", "guess: there is no such command; write evaluate, solve,")]
    [InlineData("exposure evaluate", "Nothing is asked yet: write the request as options")]
    [InlineData("exposure evaluate -r /no/such/file", "--request: there is no file /no/such/file; check the name")]
    [InlineData("capabilities get --output picture", "--output: \"picture\" is none of its values; write table, json or working.")]
    [InlineData("capabilities get --deadline 2", "--deadline: 2 has no unit; write \"2 s\".")]
    [InlineData("capabilities get --deadline \"0 s\"", "--deadline: \"0 s\" cannot be waited for")]
    public async Task Line_ThatIsNoCall_SaysWhatToWrite(string line, string expected)
    {
        var run = await Tool.Run(line);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_LargerThanARequestMayBe_IsRefusedAsTheServiceDoes()
    {
        var file = "{\"scale\": 3" + new string(' ', 1024 * 1024) + "}";

        var run = await Tool.Run("exposure evaluate -r -", file);

        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains("more than 1048576 bytes", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Deadline_ThatIsOver_SaysHowToGiveMore()
    {
        var run = await Tool.Run(Balance + "--deadline \"1 us\"");

        Assert.Equal(ExitCode.Deadline, run.Code);
        Assert.Contains("--deadline \"30 s\"", run.Errors, StringComparison.Ordinal);
    }
}
