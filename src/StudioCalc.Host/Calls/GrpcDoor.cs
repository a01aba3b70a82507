using System.Reflection;
using Grpc.AspNetCore.Server;
using Microsoft.AspNetCore.Authorization;
using StudioCalc.Services;

namespace StudioCalc.Host;

/// <summary>The way in for gRPC and gRPC-Web callers.</summary>
internal static class GrpcDoor
{
    // Above the contract's limit, so that the contract's own refusal is what a caller sees first.
    private const int MaxMessageBytes = 8 * 1024 * 1024;

    private const BindingFlags Own = BindingFlags.NonPublic | BindingFlags.Static;

    public static void Add(IServiceCollection services)
    {
        var grpc = services.AddGrpc(options => options.MaxReceiveMessageSize = MaxMessageBytes);
        services.AddGrpcReflection();
        foreach (var adapter in ServiceCatalogue.AdapterTypes)
        {
            services.AddSingleton(adapter);
            typeof(GrpcDoor).GetMethod(nameof(Check), Own)!.MakeGenericMethod(adapter).Invoke(null, [grpc]);
        }
    }

    public static void Map(IEndpointRouteBuilder routes)
    {
        foreach (var adapter in ServiceCatalogue.AdapterTypes)
        {
            typeof(GrpcDoor).GetMethod(nameof(MapAdapter), Own)!.MakeGenericMethod(adapter).Invoke(null, [routes]);
        }

        routes.MapGrpcReflectionService();
        routes.MapGrpcHealthChecksService().WithMetadata(new AllowAnonymousAttribute());
    }

    // Only the contract's own services: health and reflection have messages of their own.
    private static void Check<TAdapter>(IGrpcServerBuilder grpc)
        where TAdapter : class => grpc.AddServiceOptions<TAdapter>(options =>
        {
            options.Interceptors.Add<UnreadableMessages.Note>();
            options.Interceptors.Add<ContractInterceptor>();
        });

    private static void MapAdapter<TAdapter>(IEndpointRouteBuilder routes)
        where TAdapter : class => routes.MapGrpcService<TAdapter>();
}
