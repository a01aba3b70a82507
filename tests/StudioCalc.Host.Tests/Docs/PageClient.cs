using System.Text;
using Google.Api;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Host.Tests;

/// <summary>Sends what documentation pages show.</summary>
internal static class PageClient
{
    /// <summary>The calls that have a route for JSON callers: all that do not answer with a stream.</summary>
    public static IReadOnlyDictionary<string, MethodDescriptor> Methods { get; } =
        Contract.Services.SelectMany(service => service.Methods).Where(method => !method.IsServerStreaming).ToDictionary(method => method.Name, StringComparer.Ordinal);

    public static string PostPath(string call) => Methods[call].GetOptions().GetExtension(AnnotationsExtensions.Http).Post;

    /// <summary>Posts a JSON body to a call by its name.</summary>
    public static async Task<string> PostAsync(HttpClient http, string call, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var reply = await http.PostAsync(new Uri(PostPath(call), UriKind.Relative), content);
        return await reply.Content.ReadAsStringAsync();
    }

    /// <summary>Sends a request line, header lines and, after an empty line, a body.</summary>
    public static async Task<string> SendAsync(HttpClient http, string text)
    {
        var parts = text.Split("\n\n", 2);
        var lines = parts[0].Split('\n');
        var first = lines[0].Split(' ');
        using var request = new HttpRequestMessage(new(first[0]), first[1]);
        if (parts.Length > 1)
        {
            request.Content = new ByteArrayContent(Encoding.UTF8.GetBytes(parts[1]));
        }

        foreach (var header in lines.Skip(1).Select(line => line.Split(": ", 2)))
        {
            if (!request.Headers.TryAddWithoutValidation(header[0], header[1]))
            {
                request.Content!.Headers.TryAddWithoutValidation(header[0], header[1]);
            }
        }

        using var reply = await http.SendAsync(request);
        return await reply.Content.ReadAsStringAsync();
    }
}
