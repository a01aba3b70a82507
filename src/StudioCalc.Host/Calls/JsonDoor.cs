using Microsoft.AspNetCore.Routing.Patterns;
using StudioCalc.Contracts;
using StudioCalc.Services;

namespace StudioCalc.Host;

/// <summary>The way in for JSON callers.</summary>
internal static class JsonDoor
{
    public static void Map(WebApplication app)
    {
        var methods = app.Services.GetRequiredService<MethodTable>();
        foreach (var path in HttpRoute.All.ToLookup(route => route.Path, StringComparer.Ordinal))
        {
            var calls = path.ToDictionary(route => route.Verb, route => new JsonCall(route.Method, methods), StringComparer.Ordinal);
            app.Map(RoutePatternFactory.Parse(path.Key), context => AnswerAsync(context, calls)).WithMetadata(path.First().Method);
        }

        app.MapFallback("{**path}", context => Replies.WriteAsync(context, Refusal.UnknownPath()));
    }

    private static Task AnswerAsync(HttpContext context, Dictionary<string, JsonCall> calls) =>
        calls.TryGetValue(context.Request.Method, out var call)
            ? call.AnswerAsync(context)
            : Replies.WriteWrongMethodAsync(context, calls.Keys);
}
