using System.Net;
using Microsoft.AspNetCore.Authorization;

namespace StudioCalc.Host;

/// <summary>The way in for readers: the OpenAPI document, a page to try calls, and pages from contract and files.</summary>
internal static class DocsDoor
{
    private static readonly string[] Allowed = [HttpMethods.Get, HttpMethods.Head];

    public static void Map(WebApplication app, StudioCalcOptions options)
    {
        if (!(options.Docs.Enabled ?? IPAddress.IsLoopback(IPAddress.Parse(options.Listen.Address))))
        {
            return;
        }

        void MapAt(string path, RequestDelegate serve)
        {
            var endpoint = app.Map(path, context => Allowed.Contains(context.Request.Method)
                ? serve(context)
                : Replies.WriteWrongMethodAsync(context, Allowed)).WithMetadata(new Mark());
            if (options.Docs.WithoutKey)
            {
                endpoint.WithMetadata(new AllowAnonymousAttribute());
            }
        }

        void MapPage(string path, string contentType, Func<string> make) => MapAt(path, new DocsPage(contentType, make).ServeAsync);

        var tryPage = TryPage.Build(app);
        MapAt("/", context => RedirectAsync(context, "docs/index.html"));
        MapAt("/docs", context => RedirectAsync(context, context.Request.Path.Value!.EndsWith('/') ? "index.html" : "docs/index.html"));
        MapAt("/docs/{**path}", tryPage);
        MapPage("/openapi.json", "application/json; charset=utf-8", () => OpenApiText.Write(options));
        MapPage("/docs/docs.css", "text/css; charset=utf-8", () => EmbeddedDocs.Text("docs.css")!);
        MapPage("/docs/try.css", "text/css; charset=utf-8", () => EmbeddedDocs.Text("try.css")!);
        MapPage("/docs/contract", DocsPage.Html, ContractPage.Write);
        foreach (var page in EmbeddedDocs.Pages)
        {
            MapPage(EmbeddedDocs.Address(page), DocsPage.Html, () => MarkdownText.Page(EmbeddedDocs.Text(page)!));
        }
    }

    private static Task RedirectAsync(HttpContext context, string target)
    {
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Redirect(target);
        return Task.CompletedTask;
    }

    /// <summary>Marks what is documentation and no call.</summary>
    internal sealed class Mark;
}
