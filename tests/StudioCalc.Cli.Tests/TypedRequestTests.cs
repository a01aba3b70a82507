namespace StudioCalc.Cli.Tests;

/// <summary>Requests by typed options, alone and over a file.</summary>
public sealed class TypedRequestTests
{
    private const string Balance =
        "lighting-ratio balance-fill --back-light.continuous.settings.aperture f/8 --back-light.continuous.settings.shutter-speed 1/125 "
        + "--back-light.continuous.settings.iso 100 --fill.reading.flash.settings.aperture f/5.6 --fill.reading.flash.settings.iso 100 "
        + "--fill.power 1/8 --back-over-fill \"2 stops\" --placement.light fill --placement.over-setting \"-1 stop\" --camera.sync-speed 1/200";

    [Fact]
    public async Task TypedOptions_OfTheWholeSample_GiveTheSamplesAnswer()
    {
        var typed = await Tool.Run(Balance);

        Assert.Empty(typed.Errors);
        Assert.Equal(await Tool.Run($"lighting-ratio balance-fill -r \"{Tool.Sample("balance-fill")}\""), typed);
    }

    [Fact]
    public async Task TypedOption_OverAFile_ChangesThatFieldOnly()
    {
        var run = await Tool.Run($"lighting-ratio balance-fill --request \"{Tool.Sample("balance-fill")}\" --back-over-fill \"3 stops\"");

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("Power               1/32", run.Output, StringComparison.Ordinal);
        Assert.Contains("8:1 key to fill", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TypedOption_ForAnotherMemberOfAChoice_TakesThePlaceOfTheFiles()
    {
        var file = (V1.BalanceFillRequest)Samples.Of(Tool.Call("BalanceFill"))!;

        var (request, refusals) = Tool.Read(Tool.Call("BalanceFill"), ["--back-light.continuous.illuminance", "2500 lx"], file);

        Assert.Empty(refusals);
        var light = ((V1.BalanceFillRequest)request).BackLight.Continuous;
        Assert.Null(light.Settings);
        Assert.Equal(2500, light.IlluminanceLx);
    }

    [Fact]
    public void Shape_OverAFile_TakesThePlaceOfTheWholeShape()
    {
        var file = V1.ConvertMarkRequest.Parser.ParseJson("""{"aperture": {"mark": "5.6", "tenths": 7}}""");

        var (request, _) = Tool.Read(Tool.Call("ConvertMark"), ["--aperture", "f/8"], file);

        Assert.Equal(V1.Aperture.At("f/8"), ((V1.ConvertMarkRequest)request).Aperture);
    }

    [Fact]
    public void Parts_BesideAShape_AreAdded()
    {
        var (request, refusals) = Tool.Read(Tool.Call("ConvertMark"), ["--aperture.scale", "half", "--aperture", "f/13"]);

        Assert.Empty(refusals);
        Assert.Equal(new() { Mark = "f/13", Scale = V1.StopScale.Half }, ((V1.ConvertMarkRequest)request).Aperture);
    }

    [Fact]
    public void Lists_OfPlainValues_KeepTheirOrderAndReplaceTheFiles()
    {
        var file = (V1.BalanceFillRequest)Samples.Of(Tool.Call("BalanceFill"))!;

        var (request, _) = Tool.Read(Tool.Call("BalanceFill"), ["--preference", "shutter-speed", "--preference", "flash-power"], file);

        Assert.Equal([V1.BalanceVariable.ShutterSpeed, V1.BalanceVariable.FlashPower], ((V1.BalanceFillRequest)request).Preference);
    }

    [Fact]
    public void Items_OfAFilesList_AreChangedAndFollowedByTheNext()
    {
        var file = (V1.CombineReadingsRequest)Samples.Of(Tool.Call("CombineReadings"))!;
        var count = file.Lights.Count;

        var (request, refusals) = Tool.Read(
            Tool.Call("CombineReadings"), ["--lights.0.name", "door", $"--lights.{count}.name", "lamp"], file);

        Assert.Empty(refusals);
        var lights = ((V1.CombineReadingsRequest)request).Lights;
        Assert.Equal("door", lights[0].Name);
        Assert.NotNull(lights[0].Reading);
        Assert.Equal("lamp", lights[count].Name);
    }

    [Theory]
    [InlineData("--with-flash", true)]
    [InlineData("--with-flash true", true)]
    [InlineData("--with-flash false", false)]
    public void Flag_WithOrWithoutItsWord_IsRead(string line, bool expected)
    {
        var (request, refusals) = Tool.Read(Tool.Call("ListEquivalentSettings"), [.. Tool.Words(line)]);

        Assert.Empty(refusals);
        Assert.Equal(expected, ((V1.ListEquivalentSettingsRequest)request).WithFlash);
        Assert.True(((V1.ListEquivalentSettingsRequest)request).HasWithFlash);
    }

    [Theory]
    [InlineData("ConvertMark", "--aperture f/8 --aperture.mark f/11", "--aperture.mark: Says the same as --aperture; write one of the two.")]
    [InlineData("ConvertMark", "--aperture f/8 --aperture.f-number 8", "--aperture.f-number: Cannot stand beside --aperture: ")]
    [InlineData("ConvertMark", "--aperture f/8 --iso 100", "--iso: Cannot stand beside --aperture: ")]
    [InlineData("ConvertMark", "--aperture-value \"5 stops\" --iso.speed 100", "--aperture-value: Cannot stand beside --iso.speed: ")]
    [InlineData("ConvertMark", "--aperture f/8 --aperture f/11", "--aperture: Given more than once; write it once.")]
    [InlineData("ConvertMark", "--aperture", "--aperture: Has no value; write f/5.6 behind it.")]
    [InlineData("ConvertMark", "--aperture.scale halves", "--aperture.scale: \"halves\" is none of its values; write whole, half, third or tenth.")]
    [InlineData("ConvertMark", "--aperture.tenths 1.5", "--aperture.tenths: \"1.5\" is not a whole number from 0; write one such as 3.")]
    [InlineData("BalanceFill", "--back-over-fill 2", "--back-over-fill: 2 has no unit; write \"2 stops\".")]
    [InlineData("BalanceFill", "--filters-at-hand.1.loss \"1 stop\"", "--filters-at-hand.1.loss: The list has 0 items before it; the next is --filters-at-hand.0.")]
    [InlineData("ListEquivalentSettings", "--with-flash yes", "--with-flash: \"yes\" is neither true nor false")]
    [InlineData("BalanceFill", "--back-light.continuous.settings.iso 100 --back-light.flash.settings.iso 100", "--back-light.flash.settings.iso: Cannot stand beside --back-light.continuous.settings.iso: ")]
    public void Options_ThatCannotBeTaken_AreRefusedByName(string call, string line, string expected)
    {
        var (name, text) = Assert.Single(Tool.Read(Tool.Call(call), [.. Tool.Words(line)]).Refusals);

        Assert.StartsWith(expected, $"{name}: {text}", StringComparison.Ordinal);
    }

    [Fact]
    public void Item_BeyondAFilesListPlusOne_IsRefused()
    {
        var file = (V1.CombineReadingsRequest)Samples.Of(Tool.Call("CombineReadings"))!;

        var (name, text) = Assert.Single(Tool.Read(Tool.Call("CombineReadings"), ["--lights.4.name", "lamp"], file).Refusals);

        Assert.Equal("--lights.4.name", name);
        Assert.Equal("The list has 3 items before it; the next is --lights.3.", text);
    }
}
