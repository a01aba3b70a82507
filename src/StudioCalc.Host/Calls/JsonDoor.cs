using Google.Api;
using Google.Protobuf.Reflection;
using Microsoft.AspNetCore.Routing.Patterns;
using StudioCalc.Contracts;
using StudioCalc.Services;

namespace StudioCalc.Host;

/// <summary>The way in for JSON callers: the routes that the contract's <c>google.api.http</c> options name.</summary>
internal static class JsonDoor
{
    public static void Map(WebApplication app)
    {
        var methods = app.Services.GetRequiredService<MethodTable>();
        var routes = Contract.Services.SelectMany(service => service.Methods).SelectMany(Routes).ToLookup(route => route.Path, StringComparer.Ordinal);
        foreach (var path in routes)
        {
            var calls = path.ToDictionary(route => route.Verb, route => new JsonCall(route.Method, methods), StringComparer.Ordinal);
            app.Map(RoutePatternFactory.Parse(path.Key), context => AnswerAsync(context, calls)).WithMetadata(path.First().Method);
        }

        app.MapFallback("{**path}", context => Replies.WriteAsync(context, Replies.NoSuchPath()));
    }

    private static Task AnswerAsync(HttpContext context, Dictionary<string, JsonCall> calls)
    {
        if (calls.TryGetValue(context.Request.Method, out var call))
        {
            return call.AnswerAsync(context);
        }

        context.Response.Headers.Allow = string.Join(", ", calls.Keys);
        return Replies.WriteAsync(context, Replies.WrongVerb(), StatusCodes.Status405MethodNotAllowed);
    }

    private static IEnumerable<(string Path, string Verb, MethodDescriptor Method)> Routes(MethodDescriptor method)
    {
        var rule = method.GetOptions()?.GetExtension(AnnotationsExtensions.Http)
            ?? throw new NotSupportedException($"{method.FullName}: no route for JSON callers.");
        return rule.AdditionalBindings.Prepend(rule).Select(binding => binding.PatternCase switch
        {
            HttpRule.PatternOneofCase.Post when binding.Body == "*" => (Literal(binding.Post, method), HttpMethods.Post, method),
            HttpRule.PatternOneofCase.Get when binding.Body.Length == 0 => (Literal(binding.Get, method), HttpMethods.Get, method),
            _ => throw new NotSupportedException($"{method.FullName}: only GET, and POST with the whole request as its body."),
        });
    }

    private static string Literal(string path, MethodDescriptor method) => path.AsSpan().ContainsAny('{', '}', '*')
        ? throw new NotSupportedException($"{method.FullName}: the path of a route is literal.")
        : path;
}
