using System.Diagnostics;
using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

/// <summary>Runs lines in bash, where <c>studiocalc</c> is the built program.</summary>
internal static class Shell
{
    /// <summary>What the lines print, errors included, with line feeds.</summary>
    public static async Task<(int Code, string Output)> Run(string lines)
    {
        var start = new ProcessStartInfo("bash", ["--noprofile", "--norc", "-c", $"studiocalc() {{ dotnet '{Path.Combine(AppContext.BaseDirectory, "studiocalc.dll")}' \"$@\"; }}\nexec 2>&1\n{lines}"])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
            WorkingDirectory = RepositoryRoot.Directory,
        };
        using var process = Process.Start(start) ?? throw new InvalidOperationException("bash did not start.");
        process.StandardInput.Close();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output.ReplaceLineEndings("\n"));
    }
}
