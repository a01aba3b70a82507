using StudioCalc.Maths;

namespace StudioCalc.Host;

/// <summary>Says in one line where the service listens and which models it runs.</summary>
internal sealed partial class StartLine(Ports ports, ILogger<StartLine> logger) : IHostedLifecycleService
{
    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartedAsync(CancellationToken cancellationToken)
    {
        LogStart(ports.Grpc, ports.Http, ports.Management, ModelRevision.Current);
        return Task.CompletedTask;
    }

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(
        Level = LogLevel.Information,
        Message = "Ready: gRPC on {Grpc}, JSON and gRPC-Web on {Http}, health on {Management}, model revision {Revision}")]
    private partial void LogStart(Uri grpc, Uri http, Uri management, string revision);
}
