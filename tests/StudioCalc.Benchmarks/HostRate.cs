using System.Diagnostics;
using System.Globalization;
using Grpc.Health.V1;
using Grpc.Net.Client;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using StudioCalc.Host;
using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>Calls a host over real sockets on this machine as fast as it answers, against the health check as the empty call.</summary>
internal static class HostRate
{
    private const int Callers = 64;
    private const int WarmUpCalls = 400_000;
    private const int Rounds = 5;
    private static readonly TimeSpan Round = TimeSpan.FromSeconds(3);

    public static async Task RunAsync()
    {
        await using var host = StudioCalcHost.Build(
            ["--StudioCalc:Listen:GrpcPort=0", "--StudioCalc:Listen:HttpPort=0", "--StudioCalc:Listen:ManagementPort=0"],
            builder => builder.Logging.ClearProviders());
        await host.StartAsync();
        using var channel = GrpcChannel.ForAddress(host.Services.GetRequiredService<Ports>().Grpc);
        var health = new Health.HealthClient(channel);
        var exposure = new ExposureService.ExposureServiceClient(channel);
        var ratio = new LightingRatioService.LightingRatioServiceClient(channel);
        (string Name, Func<Task> Call)[] calls =
        [
            ("health check, the nearest to an empty call (baseline)", async () => await health.CheckAsync(new())),
            ("evaluate exposure", async () => await exposure.EvaluateExposureAsync(Requests.Exposure())),
            ("balance fill, two ways", async () => await ratio.BalanceFillAsync(Requests.Balance())),
        ];

        foreach (var (_, call) in calls)
        {
            await CallAsync(call, made => made >= WarmUpCalls / Callers);
        }

        // Rounds in turn, so that what else the machine does falls on all alike; the median counts.
        var rates = calls.ToDictionary(call => call.Name, _ => new List<double>());
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var (name, call) in calls)
            {
                var clock = Stopwatch.StartNew();
                var done = await CallAsync(call, _ => clock.Elapsed >= Round);
                rates[name].Add(done / clock.Elapsed.TotalSeconds);
            }
        }

        var baseline = Median(rates[calls[0].Name]);
        foreach (var (name, _) in calls)
        {
            var rate = Median(rates[name]);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {rate / baseline:0.00} | {rate:0} calls/s |"));
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"working set of host and client: {Environment.WorkingSet / 1048576.0:0} MiB"));
        await host.StopAsync();
    }

    private static async Task<long> CallAsync(Func<Task> call, Func<long, bool> isOver)
    {
        var counts = await Task.WhenAll(Enumerable.Range(0, Callers).Select(_ => Task.Run(async () =>
        {
            long calls = 0;
            while (!isOver(calls))
            {
                await call();
                calls++;
            }

            return calls;
        })));
        return counts.Sum();
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
