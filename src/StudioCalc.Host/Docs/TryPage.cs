using Swashbuckle.AspNetCore.SwaggerUI;

namespace StudioCalc.Host;

/// <summary>The page that shows the OpenAPI document and tries calls against this service.</summary>
internal static class TryPage
{
    // The page draws its icons from data addresses and sets styles on elements; all else comes from this service.
    private const string Policy =
        "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static RequestDelegate Build(IApplicationBuilder app)
    {
        var branch = app.New();
        branch.UseSwaggerUI(page =>
        {
            page.RoutePrefix = "docs";
            page.DocumentTitle = "Try calls · StudioCalc";
            page.SwaggerEndpoint("/openapi.json", "StudioCalc");
            page.InjectStylesheet("try.css");
            page.DefaultModelsExpandDepth(0);
            page.DocExpansion(DocExpansion.List);
            page.EnableDeepLinking();
            page.ConfigObject.AdditionalItems["syntaxHighlight"] = false;
        });
        branch.Run(DocsPage.ServeMissingAsync);
        var serve = branch.Build();
        return context => ServeAsync(context, serve);
    }

    private static async Task ServeAsync(HttpContext context, RequestDelegate serve)
    {
        context.Response.OnStarting(SetHeaders, context.Response);
        var (endpoint, method) = (context.GetEndpoint(), context.Request.Method);
        // Files are served only where no endpoint is chosen yet.
        context.SetEndpoint(null);
        if (HttpMethods.IsHead(method))
        {
            // The page's own files know GET only; a HEAD is the same without the body.
            context.Request.Method = HttpMethods.Get;
            context.Response.Body = Stream.Null;
        }

        try
        {
            await serve(context);
        }
        finally
        {
            context.Request.Method = method;
            context.SetEndpoint(endpoint);
        }
    }

    private static Task SetHeaders(object state)
    {
        var response = (HttpResponse)state;
        if (response.StatusCode != StatusCodes.Status404NotFound)
        {
            DocsPage.SetHeaders(response, Policy);
        }

        if (response.ContentType is { } type && type.StartsWith("text/", StringComparison.Ordinal) && !type.Contains("charset", StringComparison.Ordinal))
        {
            response.ContentType = type + "; charset=utf-8";
        }

        return Task.CompletedTask;
    }
}
