using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace StudioCalc.Client;

/// <summary>Registers clients of remote hosts.</summary>
public static class StudioCalcServiceCollectionExtensions
{
    /// <summary>Registers one <see cref="StudioCalcClient"/> for the whole application, which configures
    /// <see cref="StudioCalcClientOptions"/> elsewhere. They are checked when the client is first asked for.</summary>
    public static IServiceCollection AddStudioCalcClient(this IServiceCollection services) =>
        AddStudioCalcClient(services, static _ => { });

    /// <summary>Registers one <see cref="StudioCalcClient"/> for the whole application. Its options are checked when it is first
    /// asked for.</summary>
    public static IServiceCollection AddStudioCalcClient(
        this IServiceCollection services, Action<StudioCalcClientOptions> configure)
    {
        AddOptions(services, Options.DefaultName, configure);
        services.TryAddSingleton(provider => Connect(provider, Options.DefaultName));
        return services;
    }

    /// <summary>Registers one <see cref="StudioCalcClient"/> under a name, which is its service key. The application configures
    /// <see cref="StudioCalcClientOptions"/> of that name elsewhere.</summary>
    public static IServiceCollection AddStudioCalcClient(this IServiceCollection services, string name) =>
        AddStudioCalcClient(services, name, static _ => { });

    /// <summary>Registers one <see cref="StudioCalcClient"/> under a name, which is its service key.</summary>
    public static IServiceCollection AddStudioCalcClient(
        this IServiceCollection services, string name, Action<StudioCalcClientOptions> configure)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        AddOptions(services, name, configure);
        services.TryAddKeyedSingleton(name, (provider, _) => Connect(provider, name));
        return services;
    }

    private static void AddOptions(IServiceCollection services, string name, Action<StudioCalcClientOptions> configure)
    {
        services.AddOptions<StudioCalcClientOptions>(name).Configure(configure);
        services.TryAddEnumerable(ServiceDescriptor.Singleton<IValidateOptions<StudioCalcClientOptions>, Validation>());
    }

    private static StudioCalcClient Connect(IServiceProvider provider, string name) => RemoteHost.Connect(
        provider.GetRequiredService<IOptionsMonitor<StudioCalcClientOptions>>().Get(name),
        provider.GetService<ILoggerFactory>());

    private sealed class Validation : IValidateOptions<StudioCalcClientOptions>
    {
        public ValidateOptionsResult Validate(string? name, StudioCalcClientOptions options)
        {
            var faults = options.Faults().ToList();
            return faults.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(faults);
        }
    }
}
