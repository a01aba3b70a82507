using System.Buffers;
using Microsoft.Net.Http.Headers;

namespace StudioCalc.Host;

/// <summary>Reads a JSON body as UTF-8 text, up to a size.</summary>
internal static class JsonText
{
    /// <summary>Whether the body says that it is JSON in UTF-8, not compressed.</summary>
    public static bool IsJson(HttpRequest request) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase))
        && request.Headers.ContentEncoding is [] or ["identity"];

    /// <summary>The text, or null when it is larger than <paramref name="maxBytes"/>.</summary>
    public static async Task<ReadOnlyMemory<byte>?> ReadAsync(HttpContext context, int maxBytes)
    {
        if (context.Request.ContentLength > maxBytes)
        {
            return null;
        }

        var reader = context.Request.BodyReader;
        while (true)
        {
            var result = await reader.ReadAsync(context.RequestAborted);
            if (result.Buffer.Length > maxBytes)
            {
                reader.AdvanceTo(result.Buffer.End);
                return null;
            }

            if (result.IsCompleted)
            {
                var text = result.Buffer.ToArray();
                reader.AdvanceTo(result.Buffer.End);
                return text;
            }

            reader.AdvanceTo(result.Buffer.Start, result.Buffer.End);
        }
    }
}
