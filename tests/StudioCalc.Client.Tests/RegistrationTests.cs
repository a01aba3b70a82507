using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using StudioCalc.Client.Embedded;

namespace StudioCalc.Client.Tests;

public class RegistrationTests
{
    [Fact]
    public async Task AddStudioCalcClient_Resolved_IsOneWorkingClientThatTheContainerCloses()
    {
        await using var host = await TestHost.StartAsync();
        var provider = new ServiceCollection()
            .AddStudioCalcClient(options => options.Address = host.Address)
            .BuildServiceProvider(validateScopes: true);
        var client = provider.GetRequiredService<StudioCalcClient>();
        using (var scope = provider.CreateScope())
        {
            Assert.Same(client, scope.ServiceProvider.GetRequiredService<StudioCalcClient>());
        }

        Assert.NotNull((await client.Exposure.EvaluateExposureAsync(Samples.Exposure())).Settings);
        await provider.DisposeAsync();
        await Assert.ThrowsAsync<ObjectDisposedException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
    }

    [Fact]
    public async Task AddStudioCalcClient_UnderTwoNames_GivesTwoClientsWithTheirOwnOptions()
    {
        var script = new ScriptedExposure((_, _) => Task.CompletedTask);
        await using var scripted = await TestHost.StartAsync(script);
        await using var host = await TestHost.StartAsync();
        await using var provider = new ServiceCollection()
            .AddStudioCalcClient("scripted", options => (options.Address, options.ApiKey) = (scripted.Address, "first"))
            .AddStudioCalcClient("real", options => options.Address = host.Address)
            .BuildServiceProvider();
        var first = await provider.GetRequiredKeyedService<StudioCalcClient>("scripted").Exposure.EvaluateExposureAsync(Samples.Exposure());
        var second = await provider.GetRequiredKeyedService<StudioCalcClient>("real").Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.Equal("scripted", first.ModelRevision);
        Assert.NotEqual("scripted", second.ModelRevision);
        Assert.Equal("Bearer first", script.Headers.Single().GetValue("authorization"));
        Assert.Null(provider.GetService<StudioCalcClient>());
    }

    [Fact]
    public async Task AddStudioCalcClient_WithBadOptions_FailsWithEveryFault()
    {
        await using var provider = new ServiceCollection()
            .AddStudioCalcClient(options => options.MaxAttempts = 9)
            .BuildServiceProvider();
        var error = Assert.Throws<OptionsValidationException>(provider.GetRequiredService<StudioCalcClient>);
        Assert.Equal(2, error.Failures.Count());
    }

    [Fact]
    public async Task AddStudioCalcClient_WithOptionsOfAConfiguration_ReadsThemAll()
    {
        var script = new ScriptedExposure((_, _) => Task.CompletedTask);
        await using var host = await TestHost.StartAsync(script);
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>(StringComparer.Ordinal)
        {
            ["StudioCalc:Addresses:0"] = host.Address.ToString(),
            ["StudioCalc:Timeout"] = "00:01:00",
            ["StudioCalc:ApiKey"] = "from-the-file",
            ["Named:Address"] = "dns:///studio.example:5001",
            ["Named:DnsRefresh"] = "00:00:00.5",
        }).Build();
        await using var provider = new ServiceCollection()
            .Configure<StudioCalcClientOptions>(configuration.GetSection("StudioCalc"))
            .Configure<StudioCalcClientOptions>("second", configuration.GetSection("Named"))
            .AddStudioCalcClient()
            .AddStudioCalcClient("second")
            .BuildServiceProvider();
        await provider.GetRequiredService<StudioCalcClient>().Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.Equal("Bearer from-the-file", script.Headers.Single().GetValue("authorization"));
        var error = Assert.Throws<OptionsValidationException>(() => provider.GetRequiredKeyedService<StudioCalcClient>("second"));
        Assert.Contains("DnsRefresh", Assert.Single(error.Failures), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AddEmbeddedStudioCalc_UnderAName_IsAKeyedClient()
    {
        await using var provider = new ServiceCollection().AddEmbeddedStudioCalc("own").BuildServiceProvider();
        var client = provider.GetRequiredKeyedService<StudioCalcClient>("own");
        Assert.NotNull((await client.Exposure.EvaluateExposureAsync(Samples.Exposure())).Settings);
        Assert.Null(provider.GetService<StudioCalcClient>());
    }

    [Fact]
    public async Task AddEmbeddedStudioCalc_Resolved_AnswersWithoutAHost()
    {
        await using var provider = new ServiceCollection().AddEmbeddedStudioCalc().BuildServiceProvider();
        var client = provider.GetRequiredService<StudioCalcClient>();
        Assert.Same(client, provider.GetRequiredService<StudioCalcClient>());
        Assert.NotNull((await client.Exposure.EvaluateExposureAsync(Samples.Exposure())).Settings);
    }
}
