using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;

namespace StudioCalc.Host;

/// <summary>A page that never changes while the service runs: made at its first reading, then kept.</summary>
internal sealed class DocsPage(string contentType, Func<string> make)
{
    public const string Html = "text/html; charset=utf-8";

    private const string OwnOnly = "default-src 'none'; style-src 'self'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private readonly Lazy<(byte[] Bytes, EntityTagHeaderValue Tag)> _content = new(() =>
    {
        var bytes = Encoding.UTF8.GetBytes(make());
        return (bytes, new('"' + Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 12)) + '"'));
    });

    public Task ServeAsync(HttpContext context)
    {
        SetHeaders(context.Response, OwnOnly);
        var (bytes, tag) = _content.Value;
        return TypedResults.Bytes(bytes, contentType, entityTag: tag).ExecuteAsync(context);
    }

    /// <summary>Replies with a page of its own for an address that is none.</summary>
    public static async Task ServeMissingAsync(HttpContext context)
    {
        SetHeaders(context.Response, OwnOnly);
        var bytes = Encoding.UTF8.GetBytes(PageFrame.Around("No such page", "<h1>No such page</h1>\n<p>The links above lead to all pages.</p>\n"));
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        context.Response.ContentType = Html;
        context.Response.ContentLength = bytes.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
        }
    }

    /// <summary>What every reply of the documentation says: look again each time, and take nothing from elsewhere.</summary>
    public static void SetHeaders(HttpResponse response, string policy)
    {
        response.Headers.CacheControl = "no-cache";
        response.Headers.ContentSecurityPolicy = policy;
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers["referrer-policy"] = "no-referrer";
    }
}
