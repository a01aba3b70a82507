using System.Text.Json;
using Google.Protobuf;

namespace StudioCalc.System.Tests;

/// <summary>A call for a script to make: the request as a message's bytes and as JSON, whichever the script takes.</summary>
internal sealed record Call(string Path, string Bytes, string Json)
{
    private static readonly JsonSerializerOptions Names = new(JsonSerializerDefaults.Web);

    public Dictionary<string, string> Headers { get; } = new(StringComparer.Ordinal);

    public int? DeadlineMs { get; init; }

    public static Call Of(Sample sample) => new(sample.Path, sample.Request.ToByteString().ToBase64(), sample.Json);

    public static Call Of(string method, IMessage request) => new(
        Sample.Of(method).Path, request.ToByteString().ToBase64(), JsonFormatter.Default.Format(request));

    public Call WithKey(string key)
    {
        Headers.Add("authorization", "Bearer " + key);
        return this;
    }

    /// <summary>Has a script of the folder <c>node</c> make calls, and reads what became of each.</summary>
    public static async Task<IReadOnlyList<Outcome>> MakeAsync(string script, IEnumerable<string> arguments, params IEnumerable<Call> calls)
    {
        var lines = calls.Select(call => JsonSerializer.Serialize(call, Names)).ToList();
        var output = await Tool.NodeAsync(script, arguments, string.Join('\n', lines) + "\n");
        var outcomes = output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonSerializer.Deserialize<Outcome>(line, Names)!).ToList();
        Assert.Equal(lines.Count, outcomes.Count);
        return outcomes;
    }
}

/// <summary>What became of a call: the answer's bytes, or the refusal.</summary>
internal sealed record Outcome(string? Answer, Refused? Refusal)
{
    /// <summary>The call got the very answer that the JSON side gives.</summary>
    public async Task IsAnswerToAsync(HostProcess host, Sample sample)
    {
        Assert.True(Answer is not null, $"{sample.Path} is refused: {Refusal?.Reason} {string.Join(", ", Refusal?.Fields ?? [])}");
        Assert.Equal(await JsonRoute.AnswerAsync(host, sample), sample.Method.OutputType.Parser.ParseFrom(ByteString.FromBase64(Answer)));
    }
}
