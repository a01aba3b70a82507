using System.Net;
using System.Text;
using Google.Api;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.System.Tests;

/// <summary>The JSON side of a host.</summary>
internal static class JsonRoute
{
    private static readonly HttpClient Http = new();
    private static readonly JsonParser Parser = new(new JsonParser.Settings(64, Refusal.Details));

    /// <summary>The path of a call, with whether it takes POST.</summary>
    public static (string Path, bool IsPost) Of(MethodDescriptor method)
    {
        var rule = method.GetOptions().GetExtension(AnnotationsExtensions.Http);
        return rule.Post.Length > 0 ? (rule.Post, true) : (rule.Get, false);
    }

    /// <summary>The answer to a sample.</summary>
    public static async Task<IMessage> AnswerAsync(HostProcess host, Sample sample)
    {
        var (path, isPost) = Of(sample.Method);
        if (!isPost)
        {
            return Read(sample.Method.OutputType, await TextAsync(host, path));
        }

        var (status, text) = await PostAsync(host, path, sample.Json);
        Assert.True(status == HttpStatusCode.OK, text);
        return Read(sample.Method.OutputType, text);
    }

    /// <summary>What a path holds.</summary>
    public static Task<string> TextAsync(HostProcess host, string path) => Http.GetStringAsync(new Uri(host.Http, path));

    /// <summary>The reply to a body.</summary>
    public static async Task<(HttpStatusCode Status, string Text)> PostAsync(HostProcess host, string path, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var reply = await Http.PostAsync(new Uri(host.Http, path), content);
        return (reply.StatusCode, await reply.Content.ReadAsStringAsync());
    }

    /// <summary>Reads an answer.</summary>
    public static IMessage Read(MessageDescriptor type, string json) => Normal(Parser.Parse(json, type));

    /// <summary>Reads a refusal.</summary>
    public static Refused Refused(string json) => Tests.Refused.Of(Parser.Parse<Google.Rpc.Status>(json));

    /// <summary>The wire drops a minus zero where zeros are not written; messages tell the two apart.</summary>
    public static IMessage Normal(IMessage message) => message.Descriptor.Parser.ParseFrom(message.ToByteString());
}
