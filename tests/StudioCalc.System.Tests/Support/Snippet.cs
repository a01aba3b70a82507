using System.Diagnostics;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>The code of docs/other-languages.md, one file to a block.</summary>
internal static class Snippet
{
    /// <summary>Every file.</summary>
    public static IEnumerable<string> Files =>
        Directory.EnumerateFiles(Tool.Script("snippets")).Concat(Directory.EnumerateFiles(Tool.Script("node", "snippets")));

    /// <summary>Runs a file in the repository, against a host.</summary>
    public static async Task<string> RunAsync(HostProcess host, string program, params string[] file)
    {
        Assert.Equal(RepositoryRoot.At("artifacts", "studiocalc.binpb"), await ContractFile.GetAsync());
        var start = new ProcessStartInfo(program, [Tool.Script(file)]);
        start.Environment["STUDIOCALC_GRPC"] = host.Grpc.Authority;
        start.Environment["STUDIOCALC_GRPC_URL"] = host.Grpc.GetLeftPart(UriPartial.Authority);
        start.Environment["STUDIOCALC_HTTP"] = host.Http.GetLeftPart(UriPartial.Authority);
        return await Tool.RunAsync(start);
    }
}
