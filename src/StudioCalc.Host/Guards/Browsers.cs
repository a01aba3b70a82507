namespace StudioCalc.Host;

/// <summary>Lets web pages of the configured origins call, and see why a call was refused.</summary>
internal static class Browsers
{
    public static void Add(IServiceCollection services, StudioCalcOptions.SecurityOptions security)
    {
        if (security.CorsOrigins.Count > 0)
        {
            services.AddCors(cors => cors.AddDefaultPolicy(policy => policy
                .WithOrigins([.. security.CorsOrigins])
                .WithMethods(HttpMethods.Get, HttpMethods.Post)
                .WithHeaders("authorization", "content-type", "grpc-timeout", "x-grpc-web", "x-user-agent", RequestId.Header)
                .WithExposedHeaders(
                    "grpc-status", "grpc-message", "grpc-status-details-bin", "grpc-encoding", "grpc-accept-encoding", "retry-after", RequestId.Header)));
        }
    }

    public static void Use(IApplicationBuilder app, StudioCalcOptions.SecurityOptions security)
    {
        if (security.CorsOrigins.Count > 0)
        {
            app.UseCors();
        }
    }
}
