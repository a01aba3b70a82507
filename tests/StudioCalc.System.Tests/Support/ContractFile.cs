using System.Diagnostics;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>The descriptor set that buf makes of the repository's .proto files, with everything that they import.</summary>
internal static class ContractFile
{
    private static readonly Lazy<Task<string>> Made = new(MakeAsync);

    /// <summary>Makes it as the documentation says, once, and gives the file.</summary>
    public static Task<string> GetAsync() => Made.Value;

    private static async Task<string> MakeAsync()
    {
        var start = new ProcessStartInfo("bash", ["-eu", Tool.Script("snippets", "descriptor-set.sh")]);
        start.Environment["PATH"] = Tool.Script("node", "node_modules", ".bin") + Path.PathSeparator + start.Environment["PATH"];
        await Tool.RunAsync(start);
        return RepositoryRoot.At("artifacts", "studiocalc.binpb");
    }
}
