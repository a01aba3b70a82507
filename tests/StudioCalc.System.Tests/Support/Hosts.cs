namespace StudioCalc.System.Tests;

/// <summary>The hosts that all tests here call: one that asks for nothing, and one that asks for a key.</summary>
public sealed class Hosts : IAsyncLifetime
{
    /// <summary>The key that the second host asks for.</summary>
    public const string Key = "noodles-and-mezze-1";

    private HostProcess? _open;
    private HostProcess? _locked;

    internal HostProcess Open => _open!;

    internal HostProcess Locked => _locked!;

    public async Task InitializeAsync()
    {
        _open = await HostProcess.StartAsync();
        _locked = await HostProcess.StartAsync("Security:ApiKeys:0=" + Key);
    }

    public async Task DisposeAsync()
    {
        if (_open is not null)
        {
            await _open.DisposeAsync();
        }

        if (_locked is not null)
        {
            await _locked.DisposeAsync();
        }
    }
}

/// <summary>One pair of hosts for the whole project.</summary>
[CollectionDefinition(Name)]
public sealed class HostsGroup : ICollectionFixture<Hosts>
{
    /// <summary>The name of the collection.</summary>
    public const string Name = "hosts";
}
