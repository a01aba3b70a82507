using System.Buffers;

namespace StudioCalc.Host;

/// <summary>Gives every request an id, the caller's own where it is fit, in the reply's headers and in the log.</summary>
internal sealed class RequestId(RequestDelegate next, ILogger<RequestId> logger)
{
    public const string Header = "x-request-id";

    private const int MaxLength = 64;

    private static readonly SearchValues<char> Letters =
        SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789._-");

    public async Task InvokeAsync(HttpContext context)
    {
        string? given = context.Request.Headers[Header];
        var id = given is { Length: > 0 and <= MaxLength } && !given.AsSpan().ContainsAnyExcept(Letters)
            ? given
            : Guid.CreateVersion7().ToString("N");
        context.TraceIdentifier = id;
        // At the last moment, because an error handler clears the headers.
        context.Response.OnStarting(static state =>
        {
            var response = (HttpResponse)state;
            response.Headers[Header] = response.HttpContext.TraceIdentifier;
            return Task.CompletedTask;
        }, context.Response);
        using (logger.BeginScope("request {RequestId}", id))
        {
            await next(context);
        }
    }
}
