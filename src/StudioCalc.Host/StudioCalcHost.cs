using Microsoft.Extensions.Logging.Console;
using StudioCalc.Services;

namespace StudioCalc.Host;

/// <summary>Puts the service together.</summary>
public static class StudioCalcHost
{
    /// <summary>Builds the service, ready to start.</summary>
    /// <param name="args">Settings as on the command line: <c>--StudioCalc:Listen:GrpcPort=0</c>.</param>
    /// <param name="configure">Changes the builder before the service is built.</param>
    /// <exception cref="ConfigurationException">A setting is not usable.</exception>
    /// <exception cref="NotSupportedException">The contract has a rule that the checks do not know.</exception>
    public static WebApplication Build(string[] args, Action<WebApplicationBuilder>? configure = null)
    {
        ContractInterceptor.BuildChecks();
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            Args = args,
            ContentRootPath = AppContext.BaseDirectory,
        });
        // The slim builder fixes the form of the log; this gives it back to the settings.
        builder.Services.Configure<ConsoleLoggerOptions>(builder.Configuration.GetSection("Logging:Console"));
        configure?.Invoke(builder);
        var options = OptionsReader.Read(builder.Configuration);
        builder.Services.AddSingleton(options).AddSingleton(TimeProvider.System).AddSingleton<MethodTable>();
        Ports.Add(builder, options.Listen);
        GrpcDoor.Add(builder.Services);
        Health.Add(builder.Services, options.Stop);
        Browsers.Add(builder.Services, options.Security);
        RateLimit.Add(builder.Services, options.Limits);
        Telemetry.Add(builder.Services, options.Telemetry);
        builder.Services.AddHostedService<StartLine>();

        var app = builder.Build();
        app.UseMiddleware<RequestId>();
        app.UseExceptionHandler(Replies.WriteUnexpected);
        app.MapWhen(Ports.IsManagement, Health.Use);
        CallNote.Use(app);
        app.UseMiddleware<CallTimes>();
        app.UseRouting();
        Browsers.Use(app, options.Security);
        app.UseGrpcWeb(new GrpcWebOptions { DefaultEnabled = true });
        app.UseMiddleware<CallMeter>();
        app.UseMiddleware<ApiKeys>();
        RateLimit.Use(app, options.Limits);
        app.UseMiddleware<UnreadableMessages>();
        GrpcDoor.Map(app);
        DocsDoor.Map(app, options);
        JsonDoor.Map(app);
        return app;
    }
}
