namespace StudioCalc.Cli.Tests;

/// <summary>The program as a process: completion in bash, pipes, bytes.</summary>
public sealed class ShellTests
{
    [Theory]
    [InlineData("studiocalc lighting-ratio bal", "balance-fill")]
    [InlineData("studiocalc lighting-ratio balance-fill --camera.sync", "--camera.sync-speed")]
    [InlineData("studiocalc exposure convert-mark --aperture f/8 --aperture.scale ha", "half")]
    [InlineData("studiocalc lighting-ratio combine-readings --lights.0.name window --lights.1.na", "--lights.1.name")]
    [InlineData("studiocalc exposure evaluate --output j", "json")]
    public async Task Bash_WithTheScript_Completes(string line, string expected)
    {
        var (code, output) = await Shell.Run($$"""
            eval "$(studiocalc completion bash)"
            COMP_LINE='{{line}}' COMP_POINT={{line.Length}}
            _studiocalc
            printf '%s\n' "$(complete -p studiocalc)" "${COMPREPLY[@]}"
            """);

        Assert.Equal(0, code);
        Assert.Contains("complete -F _studiocalc studiocalc", output, StringComparison.Ordinal);
        Assert.Contains(expected, output.Split('\n'));
    }

    [Theory]
    [InlineData("bash", "complete -F _studiocalc studiocalc")]
    [InlineData("zsh", "compdef _studiocalc studiocalc")]
    [InlineData("fish", "complete -c studiocalc")]
    [InlineData("powershell", "Register-ArgumentCompleter -Native -CommandName studiocalc")]
    public async Task Script_OfAShell_AsksTheProgramItself(string shell, string expected)
    {
        var run = await Tool.Run($"completion {shell}");

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains(expected, run.Output, StringComparison.Ordinal);
        Assert.Contains("[suggest:", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pipe_ThatCloses_EndsQuietly()
    {
        var (code, output) = await Shell.Run("studiocalc lighting-ratio balance-fill --help | head -n 1; exit ${PIPESTATUS[0]}");

        Assert.Equal(0, code);
        Assert.Equal("Balances a flash fill against a continuous back light, one variable at a time.\n", output);
    }

    [Fact]
    public async Task Output_InAPlainLocale_IsUtf8WithoutAMark()
    {
        var (_, output) = await Shell.Run("LC_ALL=C studiocalc exposure evaluate --settings.aperture f/8 --settings.shutter-speed 1/125 --settings.iso 100 | od -v -An -c | head -n 1000 | tr -d ' \\n'");

        Assert.StartsWith("Settings", output, StringComparison.Ordinal);
        Assert.Contains("cd/m302262", output, StringComparison.Ordinal);
    }
}
