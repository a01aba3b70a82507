using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using StudioCalc.Services;

namespace StudioCalc.Client.Embedded;

/// <summary>The client with the services in process: the same checks, answers and refusals as a host's, without a network.</summary>
/// <remarks>A call computes on the thread that makes it and is done when it returns. Requests go by reference: do not change one
/// before its call is over.</remarks>
public static class EmbeddedStudioCalc
{
    /// <summary>Makes a client. It holds nothing that needs closing.</summary>
    /// <param name="timeout">The time allowed for each call; no limit unless given.</param>
    public static StudioCalcClient Create(TimeSpan? timeout = null) =>
        new(new InProcessCallInvoker(), timeout ?? Timeout.InfiniteTimeSpan);

    /// <summary>Registers one <see cref="StudioCalcClient"/> with the services in process.</summary>
    public static IServiceCollection AddEmbeddedStudioCalc(this IServiceCollection services)
    {
        services.TryAddSingleton(_ => Create());
        return services;
    }

    /// <summary>Registers one <see cref="StudioCalcClient"/> with the services in process under a name, which is its service
    /// key.</summary>
    public static IServiceCollection AddEmbeddedStudioCalc(this IServiceCollection services, string name)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        services.TryAddKeyedSingleton(name, (_, _) => Create());
        return services;
    }
}
