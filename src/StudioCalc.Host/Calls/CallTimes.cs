using System.Globalization;
using Microsoft.Extensions.Primitives;

namespace StudioCalc.Host;

/// <summary>Caps the time that a caller allows, for every way in, by rewriting the header that carries it.</summary>
internal sealed class CallTimes(RequestDelegate next, StudioCalcOptions options)
{
    private const string Header = "grpc-timeout";

    private readonly TimeSpan _max = options.Limits.MaxCallTime;
    private readonly StringValues _maxText = options.Limits.MaxCallTime.TotalMilliseconds.ToString("0", CultureInfo.InvariantCulture) + "m";

    public Task InvokeAsync(HttpContext context)
    {
        var headers = context.Request.Headers;
        if (Parse(headers[Header]) is not { } time || time > _max)
        {
            headers[Header] = _maxText;
        }

        return next(context);
    }

    /// <summary>The time allowed for a call whose header was capped.</summary>
    public static TimeSpan Of(HttpRequest request) => Parse(request.Headers[Header]) ?? TimeSpan.Zero;

    // At most eight digits and a unit, as gRPC over HTTP/2 writes it.
    private static TimeSpan? Parse(string? text)
    {
        if (text is not { Length: >= 2 and <= 9 }
            || !long.TryParse(text.AsSpan(0, text.Length - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var count))
        {
            return null;
        }

        return text[^1] switch
        {
            'H' => TimeSpan.FromHours(count),
            'M' => TimeSpan.FromMinutes(count),
            'S' => TimeSpan.FromSeconds(count),
            'm' => TimeSpan.FromMilliseconds(count),
            'u' => TimeSpan.FromMicroseconds(count),
            'n' => TimeSpan.FromTicks(count * TimeSpan.TicksPerMicrosecond / 1000),
            _ => null,
        };
    }
}
