using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace StudioCalc.Host;

/// <summary>Ready from start to stop. At stop it reports first, and waits for balancers to notice before the ports close.</summary>
internal sealed class Readiness(StudioCalcOptions options, IHostApplicationLifetime lifetime) : IHostedLifecycleService, IHealthCheck
{
    private volatile bool _ready;

    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(_ready ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy("Starting or stopping."));

    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartedAsync(CancellationToken cancellationToken)
    {
        _ready = true;
        lifetime.ApplicationStopping.Register(() => _ready = false);
        return Task.CompletedTask;
    }

    public Task StoppingAsync(CancellationToken cancellationToken)
    {
        _ready = false;
        return Task.Delay(options.Stop.NotReadyTime, cancellationToken);
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
