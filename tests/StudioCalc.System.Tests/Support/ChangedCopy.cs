using System.Diagnostics;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>A copy of the repository with one more field and one more value in the contract and no other edit, built, with its host running.</summary>
public sealed class ChangedCopy : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("studiocalc-");
    private HostProcess? _host;

    internal HostProcess Host => _host!;

    public async Task InitializeAsync()
    {
        if (Machine.Lacks(Peer.Git) is not null)
        {
            return;
        }

        foreach (var file in (await Tool.RunAsync("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard")).Split('\0', StringSplitOptions.RemoveEmptyEntries))
        {
            if (File.Exists(RepositoryRoot.At(file)))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(At(file))!);
                File.Copy(RepositoryRoot.At(file), At(file));
            }
        }

        await InsertAsync("exposure.proto", "message EvaluateExposureRequest {\n", """
              // Optional. How high the shelf stands that holds the plate, from 100 to 3000. Unset means 750.
              optional double shelf_height_mm = 1000 [(buf.validate.field).double = {
                gte: 100
                lte: 3000
              }];

            """);
        await InsertAsync("lighting_ratio.proto", "  PLACED_LIGHT_FILL = 2;\n", """
              // The light under the shelf.
              PLACED_LIGHT_SHELF = 1000;

            """);
        await BuildAsync("src/StudioCalc.Host");
        await BuildAsync("clients/StudioCalc.Cli");
        _host = await HostProcess.StartBuildAsync(At("src", "StudioCalc.Host", "bin", "Debug", "net10.0", "StudioCalc.Host.dll"));
    }

    public async Task DisposeAsync()
    {
        if (_host is not null)
        {
            await _host.DisposeAsync();
        }

        _folder.Delete(recursive: true);
    }

    /// <summary>Runs the copy's command line.</summary>
    internal Task<(int ExitCode, string Output, string Errors)> CommandLineAsync(params string[] arguments) => Tool.TryAsync(new(
        Tool.Dotnet, [At("clients", "StudioCalc.Cli", "bin", "Debug", "net10.0", "studiocalc.dll"), .. arguments]));

    private string At(params ReadOnlySpan<string> parts) => Path.Combine([_folder.FullName, .. parts]);

    private async Task InsertAsync(string file, string after, string lines)
    {
        var path = At("protos", "studiocalc", "v1", file);
        var parts = (await File.ReadAllTextAsync(path)).Split(after);
        Assert.Equal(2, parts.Length);
        await File.WriteAllTextAsync(path, parts[0] + after + lines + parts[1]);
    }

    private async Task BuildAsync(string project)
    {
        var start = new ProcessStartInfo(Tool.Dotnet, ["build", project, "-c", "Debug", "-nodeReuse:false", "-p:RunAnalyzers=false"])
        {
            WorkingDirectory = _folder.FullName,
        };
        // What runs these tests may itself be a build, whose settings are not the copy's.
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
        {
            start.Environment.Remove(name);
        }

        await Tool.RunAsync(start);
    }
}
