using Grpc.Core;

namespace StudioCalc.Client.Tests;

public class SeveralHostsTests
{
    [Fact]
    public async Task Calls_ToTwoAddresses_ReachBothInTurn()
    {
        var (first, second) = (Answering(), Answering());
        await using var one = await TestHost.StartAsync(first);
        await using var two = await TestHost.StartAsync(second);
        await using var client = Connect(one.Address, two.Address);
        await AnswersAsync(client, until: () => first.Calls > 0 && second.Calls > 0);
        var before = (first.Calls, second.Calls);
        await AnswersAsync(client, times: 10);
        Assert.Equal((5, 5), (first.Calls - before.Item1, second.Calls - before.Item2));
    }

    [Fact]
    public async Task Calls_WhenOneOfTwoHostsStops_AreAllAnswered()
    {
        var (first, second) = (Answering(), Answering());
        await using var one = await TestHost.StartAsync(first);
        var two = await TestHost.StartAsync(second);
        await using var client = Connect(one.Address, two.Address);
        await AnswersAsync(client, until: () => first.Calls > 0 && second.Calls > 0);
        var calls = AnswersAsync(client, times: 200);
        await two.DisposeAsync();
        await calls;
        await AnswersAsync(client, times: 20);
        Assert.True(first.Calls > 20);
    }

    [Fact]
    public async Task Calls_WhenOneOfTwoHostsNeverStarted_AreAllAnswered()
    {
        Uri gone;
        await using (var host = await TestHost.StartAsync())
        {
            gone = host.Address;
        }

        var script = Answering();
        await using var there = await TestHost.StartAsync(script);
        await using var client = Connect(gone, there.Address);
        await AnswersAsync(client, times: 10);
        Assert.Equal(10, script.Calls);
    }

    [Fact]
    public async Task Calls_ToANameByDns_ReachTheHostBehindIt()
    {
        var script = Answering();
        await using var host = await TestHost.StartAsync(script);
        await using var client = StudioCalcClient.Connect(new StudioCalcClientOptions
        {
            Address = new($"dns:///localhost:{host.Address.Port}"),
            DnsTls = false,
            DnsRefresh = TimeSpan.FromSeconds(1),
        });
        await AnswersAsync(client, times: 5);
        Assert.Equal(5, script.Calls);
    }

    [Fact]
    public async Task Calls_WhenAllHostsAreAway_FailAsUnavailable()
    {
        Uri gone;
        await using (var host = await TestHost.StartAsync())
        {
            gone = host.Address;
        }

        await using var client = Connect(gone, gone);
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(StatusCode.Unavailable, error.Code);
    }

    private static ScriptedExposure Answering() => new((_, _) => Task.CompletedTask);

    private static StudioCalcClient Connect(params Uri[] addresses)
    {
        var options = new StudioCalcClientOptions { Timeout = TimeSpan.FromMinutes(1) };
        foreach (var address in addresses)
        {
            options.Addresses.Add(address);
        }

        return StudioCalcClient.Connect(options);
    }

    private static async Task AnswersAsync(StudioCalcClient client, Func<bool> until)
    {
        while (!until())
        {
            await AnswersAsync(client, times: 1);
        }
    }

    private static async Task AnswersAsync(StudioCalcClient client, int times)
    {
        for (var i = 0; i < times; i++)
        {
            Assert.Equal("scripted", (await client.Exposure.EvaluateExposureAsync(Samples.Exposure())).ModelRevision);
        }
    }
}
