using Google.Api;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>A route for JSON callers, as the contract's <c>google.api.http</c> options name it.</summary>
internal sealed record HttpRoute(string Path, string Verb, MethodDescriptor Method)
{
    public static IReadOnlyList<HttpRoute> All { get; } = [.. Contract.Services.SelectMany(service => service.Methods).SelectMany(Of)];

    /// <summary>The routes of a call; none where it answers with a stream, which is for gRPC and gRPC-Web.</summary>
    public static IEnumerable<HttpRoute> Of(MethodDescriptor method)
    {
        var rule = method.GetOptions()?.GetExtension(AnnotationsExtensions.Http);
        if (method.IsServerStreaming)
        {
            return rule is null ? [] : throw new NotSupportedException($"{method.FullName}: a call that answers with a stream has no route for JSON callers.");
        }

        if (rule is null)
        {
            throw new NotSupportedException($"{method.FullName}: no route for JSON callers.");
        }

        return rule.AdditionalBindings.Prepend(rule).Select(binding => binding.PatternCase switch
        {
            HttpRule.PatternOneofCase.Post when binding.Body == "*" => new HttpRoute(Literal(binding.Post, method), HttpMethods.Post, method),
            HttpRule.PatternOneofCase.Get when binding.Body.Length == 0 => new HttpRoute(Literal(binding.Get, method), HttpMethods.Get, method),
            _ => throw new NotSupportedException($"{method.FullName}: only GET, and POST with the whole request as its body."),
        });
    }

    private static string Literal(string path, MethodDescriptor method) => path.AsSpan().ContainsAny('{', '}', '*')
        ? throw new NotSupportedException($"{method.FullName}: the path of a route is literal.")
        : path;
}
