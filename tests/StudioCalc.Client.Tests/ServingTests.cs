using Grpc.Core;
using Grpc.Health.V1;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using StudioCalc.Client.Embedded;

namespace StudioCalc.Client.Tests;

public class ServingTests
{
    [Fact]
    public async Task WaitUntilServing_OfAHostThatServesAtTheThirdAsking_ReturnsThen()
    {
        var health = new ScriptedHealth(asked => asked >= 3);
        await using var host = await StartAsync(health);
        await using var client = host.Connect();
        await client.WaitUntilServingAsync(TimeSpan.FromMinutes(1));
        Assert.Equal(3, health.Asked);
    }

    [Fact]
    public async Task WaitUntilServing_OfAHostThatStartsLater_ReturnsThen()
    {
        int port;
        await using (var probe = await StartAsync(new ScriptedHealth(_ => true)))
        {
            port = probe.Address.Port;
        }

        await using var client = StudioCalcClient.Connect(new Uri($"http://127.0.0.1:{port}"));
        var waiting = client.WaitUntilServingAsync(CancellationToken.None);
        Assert.False(waiting.IsCompleted);
        await using var host = await StartAsync(new ScriptedHealth(_ => true), port);
        await waiting;
    }

    [Fact]
    public async Task WaitUntilServing_OfAHostThatNeverServes_EndsWithWhatItSaid()
    {
        await using var host = await StartAsync(new ScriptedHealth(_ => false));
        await using var client = host.Connect();
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.WaitUntilServingAsync(TimeSpan.FromSeconds(0.75)));
        Assert.Equal(StatusCode.DeadlineExceeded, error.Code);
        Assert.Contains("within 0.75 s", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WaitUntilServing_Cancelled_IsCancelled()
    {
        await using var host = await StartAsync(new ScriptedHealth(_ => false));
        await using var client = host.Connect();
        using var cancellation = new CancellationTokenSource();
        var waiting = client.WaitUntilServingAsync(cancellation.Token);
        await cancellation.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
    }

    [Fact]
    public async Task WaitUntilServing_InProcessAndOfAHostWithoutHealth_ReturnsAtOnce()
    {
        await EmbeddedStudioCalc.Create().WaitUntilServingAsync(TimeSpan.FromMinutes(1));
        await using var host = await TestHost.StartAsync();
        await using var client = host.Connect();
        await client.WaitUntilServingAsync(TimeSpan.FromMinutes(1));
        var fake = new FakeStudioCalc();
        await fake.Client.WaitUntilServingAsync(TimeSpan.FromMinutes(1));
        Assert.Empty(fake.Requests);
    }

    private static Task<TestHost> StartAsync(ScriptedHealth health, int port = 0) => TestHost.StartAsync(
        HttpProtocols.Http2, app => app.MapGrpcService<ScriptedHealth>(), services => services.AddSingleton(health), port);

    private sealed class ScriptedHealth(Func<int, bool> serves) : Health.HealthBase
    {
        public int Asked { get; private set; }

        public override Task<HealthCheckResponse> Check(HealthCheckRequest request, ServerCallContext context) =>
            Task.FromResult(new HealthCheckResponse
            {
                Status = serves(++Asked) ? HealthCheckResponse.Types.ServingStatus.Serving : HealthCheckResponse.Types.ServingStatus.NotServing,
            });
    }
}
