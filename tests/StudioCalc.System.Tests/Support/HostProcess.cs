using System.Diagnostics;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>The host as it is shipped: a process of its own, on free loopback ports.</summary>
internal sealed partial class HostProcess : IAsyncDisposable
{
    private readonly Process _process;

    private HostProcess(Process process, Match ready)
    {
        _process = process;
        Grpc = new(ready.Groups["grpc"].Value);
        Http = new(ready.Groups["http"].Value);
    }

    /// <summary>Where gRPC is answered.</summary>
    public Uri Grpc { get; }

    /// <summary>Where JSON, gRPC-Web and the documentation are answered.</summary>
    public Uri Http { get; }

    /// <summary>Starts the host of this build with settings such as <c>Limits:CallsPerSecond=1</c>.</summary>
    public static Task<HostProcess> StartAsync(params IEnumerable<string> settings) => StartBuildAsync(
        RepositoryRoot.At(typeof(HostProcess).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(item => item.Key == "Host").Value!),
        settings);

    /// <summary>Starts the host of another build.</summary>
    public static async Task<HostProcess> StartBuildAsync(string dll, params IEnumerable<string> settings)
    {
        string[] all = ["Listen:GrpcPort=0", "Listen:HttpPort=0", "Listen:ManagementPort=0", .. settings];
        var process = Process.Start(new ProcessStartInfo(Tool.Dotnet, [dll, .. all.Select(setting => "--StudioCalc:" + setting)])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var ready = new TaskCompletionSource<Match>(TaskCreationOptions.RunContinuationsAsynchronously);
        var log = new StringBuilder();
        DataReceivedEventHandler read = (_, line) =>
        {
            lock (log)
            {
                log.AppendLine(line.Data);
            }

            if (Ready().Match(line.Data ?? "") is { Success: true } match)
            {
                ready.TrySetResult(match);
            }
        };
        process.OutputDataReceived += read;
        process.ErrorDataReceived += read;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        await Task.WhenAny(ready.Task, process.WaitForExitAsync());
        lock (log)
        {
            Assert.True(ready.Task.IsCompleted, "The host has ended:\n" + log);
        }

        return new(process, await ready.Task);
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    [GeneratedRegex("Ready: gRPC on (?<grpc>[^ ,]+), JSON and gRPC-Web on (?<http>[^ ,]+),", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Ready();
}
