using System.Diagnostics;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>Programs that run to their end.</summary>
internal static class Tool
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    /// <summary>The dotnet that runs this.</summary>
    public static string Dotnet => Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";

    /// <summary>Runs a program and gives what it prints; fails when it fails.</summary>
    public static Task<string> RunAsync(string program, params IEnumerable<string> arguments) => RunAsync(new ProcessStartInfo(program, arguments));

    /// <summary>Runs a script of the folder <c>node</c>.</summary>
    public static Task<string> NodeAsync(string script, IEnumerable<string> arguments, string input = "") =>
        RunAsync(new ProcessStartInfo("node", [Script("node", script), .. arguments]), input);

    /// <summary>A file of this project.</summary>
    public static string Script(params string[] parts) => RepositoryRoot.At(["tests", "StudioCalc.System.Tests", .. parts]);

    /// <summary>Runs a program in the repository unless told otherwise; its errors are the failure's text.</summary>
    public static async Task<string> RunAsync(ProcessStartInfo start, string input = "")
    {
        var (exitCode, output, errors) = await TryAsync(start, input);
        Assert.True(exitCode == 0, $"{start.FileName} {string.Join(' ', start.ArgumentList)} ended with {exitCode}.\n{errors}\n{output}");
        return output;
    }

    /// <summary>Runs a program whose failure is of interest.</summary>
    public static async Task<(int ExitCode, string Output, string Errors)> TryAsync(ProcessStartInfo start, string input = "")
    {
        start.UseShellExecute = false;
        start.RedirectStandardInput = start.RedirectStandardOutput = start.RedirectStandardError = true;
        start.WorkingDirectory = start.WorkingDirectory.Length > 0 ? start.WorkingDirectory : RepositoryRoot.Directory;
        using var process = Process.Start(start)!;
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            var output = process.StandardOutput.ReadToEndAsync(patience.Token);
            var errors = process.StandardError.ReadToEndAsync(patience.Token);
            await process.StandardInput.WriteAsync(input);
            process.StandardInput.Close();
            await process.WaitForExitAsync(patience.Token);
            return (process.ExitCode, await output, await errors);
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill(entireProcessTree: true);
            }
        }
    }
}
