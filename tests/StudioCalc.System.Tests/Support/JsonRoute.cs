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
        using var content = new StringContent(sample.Json, Encoding.UTF8, "application/json");
        using var reply = isPost ? await Http.PostAsync(new Uri(host.Http, path), content) : await Http.GetAsync(new Uri(host.Http, path));
        var text = await reply.Content.ReadAsStringAsync();
        Assert.True(reply.IsSuccessStatusCode, text);
        return Read(sample.Method.OutputType, text);
    }

    /// <summary>Reads an answer.</summary>
    public static IMessage Read(MessageDescriptor type, string json) => Normal(Parser.Parse(json, type));

    /// <summary>Reads a refusal.</summary>
    public static Refused Refused(string json) => Tests.Refused.Of(Parser.Parse<Google.Rpc.Status>(json));

    /// <summary>The wire drops a minus zero where zeros are not written; messages tell the two apart.</summary>
    public static IMessage Normal(IMessage message) => message.Descriptor.Parser.ParseFrom(message.ToByteString());
}
