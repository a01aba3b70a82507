using StudioCalc.Contracts;
using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

public sealed class HelpTests
{
    public static TheoryData<string> Pages =>
    [
        "", "exposure", "lighting-ratio", "completion",
        .. Tool.Calls.Select(call => $"{Words.Kebab(Contracts.Contract.SubjectOf(call.Service))} {Words.Kebab(Contracts.Contract.VerbOf(call))}"),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_OfAnyCommand_FitsIntoAHundredColumnsWithoutColour(string command)
    {
        var run = await Tool.Run($"{command} --help");

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.NotEmpty(run.Output);
        Assert.DoesNotContain('\e', run.Output);

        // The path of a field deep in a plan may be longer by itself; nothing else stands on its line.
        Assert.All(run.Output.Split(Environment.NewLine), line => Assert.True(line.Length <= 100 || IsOneOption(line), line));
    }

    [Fact]
    public async Task FirstPage_TellsEveryCallOptionAndCode()
    {
        var page = (await Tool.Run("--help")).Output;

        Assert.All(Tool.Calls, call => Assert.Matches(
            $"(?m)^  {Words.Kebab(Contracts.Contract.SubjectOf(call.Service))} {Words.Kebab(Contracts.Contract.VerbOf(call))}( |$)", page));
        Assert.All(new BuiltIns([]).All, option => Assert.Contains(option.Name, page, StringComparison.Ordinal));
        Assert.All(ExitCode.Meanings, code => Assert.Contains(code.Meaning, page, StringComparison.Ordinal));
        Assert.All(UnitSuffix.Kinds, kind => Assert.Contains(kind.Choice, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task FirstPage_AndNothingElse_IsEnoughToBalanceTheFill()
    {
        var command = Example((await Tool.Run("--help")).Output);

        var run = await Tool.Run(command);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains(run.Output.ReplaceLineEndings("\n"), (await File.ReadAllTextAsync(RepositoryRoot.At("README.md"))).ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Example_OfACall_RunsAsItStands(string command)
    {
        var page = (await Tool.Run($"{command} --help")).Output;
        if (command.Length > 0 && page.Contains("\nExample" + Environment.NewLine, StringComparison.Ordinal))
        {
            Assert.Equal((ExitCode.Reached, "", ""), await Tool.Run(Example(page) + " --quiet"));
        }
        else
        {
            Assert.False(Asks(command), $"{command} has no example.");
        }
    }

    private static bool Asks(string command) => Contract.Services.SelectMany(service => service.Methods).Any(method =>
        command == $"{Words.Kebab(Contract.SubjectOf(method.Service))} {Words.Kebab(Contract.VerbOf(method))}"
        && method.InputType.Fields.InDeclarationOrder().Count > 0);

    [Fact]
    public async Task Page_OfACall_SaysWhatTheContractSays()
    {
        var page = (await Tool.Run("lighting-ratio balance-fill --help")).Output;
        var text = string.Join(' ', page.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains("--back-over-fill <stops> Required. The wanted difference: how far the back light stands over the fill, from -10 to 10.", text, StringComparison.Ordinal);
        Assert.Contains("--fill.power-scale whole|half|third|tenth Optional. The steps of the head's power. Unset means tenths of a stop.", text, StringComparison.Ordinal);
        Assert.Contains("--camera.sync-speed 1/125 Optional. The fastest shutter speed at which flash covers the whole frame.", text, StringComparison.Ordinal);
        Assert.Contains("--fill.distance <length> Optional. Distance from the flash to the plate, from 10 to 100000; remedies then tell the new one. Figures here are in mm.", text, StringComparison.Ordinal);
        Assert.Contains("One of continuous or flash.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("INVALID_ARGUMENT", text, StringComparison.Ordinal);
    }

    // The command stands indented under its heading; the next blank line ends it.
    private static string Example(string page)
    {
        var lines = page.ReplaceLineEndings("\n").Split('\n').ToList();
        var command = lines.Skip(lines.IndexOf("Example")).SkipWhile(line => !line.StartsWith("  studiocalc ", StringComparison.Ordinal)).TakeWhile(line => line.Length > 0);
        return string.Join('\n', command).Trim()["studiocalc ".Length..];
    }

    private static bool IsOneOption(string line) => line.TrimStart() is var text && text.StartsWith("--", StringComparison.Ordinal) && !text.Contains("  ", StringComparison.Ordinal);
}
