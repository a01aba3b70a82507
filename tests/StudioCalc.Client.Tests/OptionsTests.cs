using Grpc.Core;

namespace StudioCalc.Client.Tests;

public class OptionsTests
{
    private const string Key = "k3y-of-the-test";

    [Fact]
    public async Task Connect_WithAKey_SendsItWithEveryCall()
    {
        var script = new ScriptedExposure((call, _) => call == 1
            ? throw new RpcException(new(StatusCode.Unavailable, "")) : Task.CompletedTask);
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect(options => options.ApiKey = Key);
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.Equal(Enumerable.Repeat($"Bearer {Key}", 3), script.Headers.Select(headers => headers.GetValue("authorization")));
    }

    [Fact]
    public void Connect_WithAKeyInClearTextToAnotherMachine_IsRefusedWithoutTellingTheKey()
    {
        var error = Assert.Throws<ArgumentException>(() => Connect("http://studio.example:5001", options => options.ApiKey = Key));
        Assert.Contains("clear text", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Key, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://studio.example", false)]
    [InlineData("http://localhost:5001", false)]
    [InlineData("http://127.0.0.1:5001", false)]
    [InlineData("http://[::1]:5001", false)]
    [InlineData("http://studio.example:5001", true)]
    public void Connect_WithAKeyThatIsSafeOrAllowed_MakesAClient(string address, bool allow)
    {
        using var client = Connect(address, options => (options.ApiKey, options.AllowApiKeyInClearText) = (Key, allow));
        Assert.NotNull(client.Exposure);
    }

    public static TheoryData<string, Action<StudioCalcClientOptions>> Faults => new()
    {
        { "Address", options => options.Address = null },
        { "Address", options => options.Address = new("ftp://localhost") },
        { "Address", options => options.Address = new("/path", UriKind.Relative) },
        { "Address", options => options.Address = new("dns:///") },
        { "Addresses", options => options.Addresses.Add(new("http://localhost:5002")) },
        { "Addresses", options => (options.Address, _) = (null, Add(options, "http://localhost:1", "https://localhost:2")) },
        { "Addresses", options => (options.Address, _) = (null, Add(options, "dns:///studio:1")) },
        { "ApiKey", options => (options.Address, options.ApiKey, _) = (null, Key, Add(options, "http://localhost:1", "http://studio.example:2")) },
        { "ApiKey", options => (options.Address, options.ApiKey, options.DnsTls) = (new("dns:///studio.example:1"), Key, false) },
        { "DnsRefresh", options => options.DnsRefresh = TimeSpan.Zero },
        { "Timeout", options => options.Timeout = TimeSpan.Zero },
        { "Timeout", options => options.Timeout = TimeSpan.FromDays(2) },
        { "MaxAttempts", options => options.MaxAttempts = 0 },
        { "MaxAttempts", options => options.MaxAttempts = 6 },
        { "ApiKey", options => options.ApiKey = "" },
        { "ApiKey", options => options.ApiKey = "a\r\nb" },
        { "KeepAliveDelay", options => options.KeepAliveDelay = TimeSpan.Zero },
        { "KeepAliveTimeout", options => options.KeepAliveTimeout = TimeSpan.FromMilliseconds(1) },
        { "IdleTimeout", options => options.IdleTimeout = TimeSpan.FromDays(-1) },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Connect_WithABadOption_NamesIt(string name, Action<StudioCalcClientOptions> spoil) =>
        Assert.Contains(name, Assert.Throws<ArgumentException>(() => Connect("http://localhost:5001", spoil)).Message, StringComparison.Ordinal);

    [Fact]
    public async Task Dispose_OfAConnectedClient_EndsItsUse()
    {
        await using var host = await TestHost.StartAsync();
        var client = host.Connect();
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        client.Dispose();
        await Assert.ThrowsAsync<ObjectDisposedException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
    }

    private static bool Add(StudioCalcClientOptions options, params string[] addresses)
    {
        foreach (var address in addresses)
        {
            options.Addresses.Add(new(address));
        }

        return true;
    }

    private static StudioCalcClient Connect(string address, Action<StudioCalcClientOptions> configure)
    {
        var options = new StudioCalcClientOptions { Address = new(address) };
        configure(options);
        return StudioCalcClient.Connect(options);
    }
}
