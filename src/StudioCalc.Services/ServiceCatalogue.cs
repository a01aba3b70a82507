using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Every service of the contract with the adapter that answers it.</summary>
/// <remarks>A new subject is added here once; the host, the JSON side and the in-process client take it from here.</remarks>
public static class ServiceCatalogue
{
    /// <summary>The types of the adapters.</summary>
    public static IReadOnlyList<Type> AdapterTypes { get; } =
        
    [
        typeof(CapabilitiesAdapter), typeof(DepthOfFieldAdapter), typeof(ExposureAdapter), typeof(FillPlacementAdapter),
        typeof(FreshnessAdapter), typeof(LightingRatioAdapter), typeof(PlateViewAdapter),
        typeof(ShootPlanAdapter),
    ];

    /// <summary>Binds every service to a new adapter.</summary>
    public static void Bind(ServiceBinderBase binder)
    {
        CapabilitiesService.BindService(binder, new CapabilitiesAdapter());
        DepthOfFieldService.BindService(binder, new DepthOfFieldAdapter());
        ExposureService.BindService(binder, new ExposureAdapter());
        FillPlacementService.BindService(binder, new FillPlacementAdapter());
        FreshnessService.BindService(binder, new FreshnessAdapter());
        LightingRatioService.BindService(binder, new LightingRatioAdapter());
        PlateViewService.BindService(binder, new PlateViewAdapter());
        ShootPlanService.BindService(binder, new ShootPlanAdapter());
    }
}
