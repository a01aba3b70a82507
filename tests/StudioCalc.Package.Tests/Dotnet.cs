using System.Collections;
using System.Diagnostics;

namespace StudioCalc.Package.Tests;

/// <summary>Runs the dotnet command apart from the build that runs the tests.</summary>
internal static class Dotnet
{
    /// <summary>Runs the command to its end and gives what it wrote.</summary>
    public static async Task<string> RunAsync(string directory, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", arguments)
        {
            WorkingDirectory = directory,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var name in Environment.GetEnvironmentVariables().Cast<DictionaryEntry>().Select(entry => (string)entry.Key)
            .Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase) || name.StartsWith("VSTEST", StringComparison.OrdinalIgnoreCase)))
        {
            start.Environment.Remove(name);
        }

        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        var text = await output + await errors;
        Assert.True(process.ExitCode == 0, $"dotnet {string.Join(' ', arguments)} ended with {process.ExitCode}:\n{text}");
        return text;
    }
}
