using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace StudioCalc.Host;

/// <summary>Sends traces and metrics to a collector where one is configured; tracing costs throughput, so otherwise it is off.</summary>
internal static class Telemetry
{
    public static void Add(IServiceCollection services, StudioCalcOptions.TelemetryOptions telemetry)
    {
        services.AddMetrics();
        if (telemetry.OtlpEndpoint is not { } endpoint)
        {
            return;
        }

        services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("studiocalc"))
            .WithTracing(traces => traces
                .AddAspNetCoreInstrumentation()
                .AddOtlpExporter(exporter => exporter.Endpoint = new(endpoint)))
            .WithMetrics(metrics => metrics
                .AddAspNetCoreInstrumentation()
                .AddMeter(CallMeter.Name)
                .AddOtlpExporter(exporter => exporter.Endpoint = new(endpoint)));
    }
}
