using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Tells whether the service lives and is ready: over HTTP on the management port, and over gRPC by service name.</summary>
internal static class Health
{
    public static void Add(IServiceCollection services, StudioCalcOptions.StopOptions stop)
    {
        services.Configure<HostOptions>(host => host.ShutdownTimeout = stop.NotReadyTime + stop.Timeout);
        services.AddSingleton<Readiness>();
        services.AddHostedService(provider => provider.GetRequiredService<Readiness>());
        services.AddGrpcHealthChecks(health =>
        {
            foreach (var service in Contract.Services)
            {
                health.Services.Map(service.FullName, _ => true);
            }
        }).AddCheck<Readiness>("ready");
        services.Configure<HealthCheckPublisherOptions>(publisher =>
            (publisher.Delay, publisher.Period) = (TimeSpan.Zero, TimeSpan.FromSeconds(1)));
    }

    public static void Use(IApplicationBuilder app)
    {
        app.UseHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.UseHealthChecks("/health/ready");
        app.Run(context => Replies.WriteAsync(context, Replies.NoSuchPath()));
    }
}
