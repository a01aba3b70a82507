using System.Reflection;
using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>CapabilitiesService</c>.</summary>
public sealed class CapabilitiesAdapter : CapabilitiesService.CapabilitiesServiceBase
{
    private static readonly string Build =
        typeof(CapabilitiesAdapter).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <inheritdoc/>
    public override Task<GetCapabilitiesResponse> GetCapabilities(GetCapabilitiesRequest request, ServerCallContext context) =>
        Task.FromResult(new GetCapabilitiesResponse
        {
            ModelRevision = ModelRevision.Current,
            Build = Build,
            Limits = new() { MaxRequestBytes = ContractInterceptor.MaxRequestBytes, MaxRefusalBytes = Refusal.MaxBytes },
            Catalogues =
            {
                new Catalogue { Name = "holding profiles", Version = HoldingProfiles.Version },
                new Catalogue { Name = "marks", Version = Marks.CatalogueVersion },
                new Catalogue { Name = "safety regimes", Version = SafetyRegimes.Version },
                new Catalogue { Name = "sensor formats", Version = SensorFormats.Version },
            },
            Services = { Contract.Services.Select(service => service.FullName) },
        });
}
