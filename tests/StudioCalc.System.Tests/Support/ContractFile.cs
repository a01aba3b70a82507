namespace StudioCalc.System.Tests;

/// <summary>The descriptor set that buf makes of the repository's .proto files, with everything that they import.</summary>
public sealed class ContractFile : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("studiocalc-");

    /// <summary>The file.</summary>
    public string Path => global::System.IO.Path.Combine(_folder.FullName, "studiocalc.binpb");

    public async Task InitializeAsync()
    {
        if (Machine.Lacks(Peer.Node) is null)
        {
            await Tool.RunAsync(Tool.Script("node", "node_modules", ".bin", "buf"), "build", "protos", "-o", Path);
        }
    }

    public Task DisposeAsync()
    {
        _folder.Delete(recursive: true);
        return Task.CompletedTask;
    }
}
